package thinclick.server.load;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Random;

/**
 * A power cut leaves what was synced and nothing else. With every commit synced nothing that was
 * acknowledged is lost; where the journal's syncs are left out, as with synchronous=NORMAL, this
 * very check must find a loss.
 */
final class PowerCut {
  private static final int CUTS = 5;

  private PowerCut() {}

  static String compare(Path folder, Path library) throws IOException {
    long full = 0;
    long lazy = 0;
    for (int cut = 0; cut < CUTS; cut++) {
      full += lost(Files.createDirectories(folder.resolve("full" + cut)), library, false, cut);
      lazy += lost(Files.createDirectories(folder.resolve("lazy" + cut)), library, true, cut);
    }
    return "power cut: "
        + CUTS
        + " cuts lost "
        + full
        + " acknowledged attacks; with the journal not synced "
        + lazy
        + (full == 0 && lazy > 0 ? "" : " - NOT AS IT SHOULD BE");
  }

  private static long lost(Path folder, Path library, boolean lazy, long seed) throws IOException {
    Path database = folder.resolve("room.db");
    FaultPlayer player;
    Files.createFile(folder.resolve("copy"));
    try (FaultyHost host = FaultyHost.start(Fault.KILL, folder, library)) {
      player = new FaultPlayer(Orchestra.play(host.port(), 1).get(0), host::port);
      player.play(20, new Random(seed));
      FaultPlayer.pause(1_000);
      if (lazy) {
        Files.createFile(folder.resolve("lazy"));
      }
      player.play(60, new Random(seed));
      FaultPlayer.pause(1_000);
      host.kill();
    }
    long acknowledged = player.acknowledged();
    Path after = folder.resolve("after.db");
    Files.copy(Path.of(database + ".synced"), after, StandardCopyOption.REPLACE_EXISTING);
    Path journal = Path.of(database + "-wal.synced");
    if (Files.exists(journal)) {
      Files.copy(journal, Path.of(after + "-wal"), StandardCopyOption.REPLACE_EXISTING);
    }
    return acknowledged
        - Ledger.storedUpTo(after, player.takeId(), player.playerId(), acknowledged);
  }
}
