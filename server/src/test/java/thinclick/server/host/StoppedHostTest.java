package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews;
import thinclick.server.store.Store;

/** {@code serve} told to stop while a take is being played. */
class StoppedHostTest {
  private static final String NAME = "Mina\u00e9 of the band room";

  @TempDir Path folder;

  @Test
  void takeIsSealedEverybodyToldAndTheProcessGoneSoonAfterTerm() throws Exception {
    Path database = folder.resolve("room.db");
    AtomicBoolean playing = new AtomicBoolean(true);
    Path copies = Files.createDirectory(folder.resolve("copies"));
    try (HostProcess host = HostProcess.serve(database, "--backup-to", copies.toString());
        WireClient leader = WireClient.connect(host.port());
        WireClient mina = WireClient.connect(host.port())) {
      leader.send(new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
      ServerMessage.Welcome opened = leader.expect(ServerMessage.Welcome.class);
      String word = opened.room();
      long revision = opened.revision();
      mina.send(new ClientMessage.Join(1, 1, word, NAME, Role.PLAYER, null, null, false));
      mina.expect(ServerMessage.Welcome.class);
      leader.send(new LeaderCommand.Material(1, revision, TestDrill.BEATS_AND_ANDS, null));
      revision = leader.expect(ServerMessage.Done.class).revision();
      leader.send(new LeaderCommand.Deal(2, revision, 1, List.of()));
      revision = leader.expect(ServerMessage.Done.class).revision();
      String dealId = leader.expect(ServerMessage.Dealt.class).dealId();
      leader.send(new LeaderCommand.Start(3, revision, dealId, 2_000, 1));
      TakeNews.Announced take = leader.expect(TakeNews.Announced.class);
      Thread hands = new Thread(() -> play(mina, take, playing));
      hands.start();
      mina.expect(TakeNews.Stored.class);

      long began = System.nanoTime();
      int code = host.stop();
      long millis = (System.nanoTime() - began) / 1_000_000;
      playing.set(false);
      hands.join();

      assertThat(code).as("killed by TERM, 128 + 15").isEqualTo(143);
      assertThat(millis).as("milliseconds to the end").isLessThan(10_000);
      assertThat(mina.expect(TakeNews.Stopped.class).reason()).isEqualTo(TakeNews.StopReason.HOST);
      assertThat(mina.expect(ServerMessage.Goodbye.class).reason()).contains("going");
      assertThat(mina.closeCode()).isEqualTo(CloseCode.GOING.number());
      List<String> log = Files.readAllLines(Path.of(database + ".log"));
      assertThat(log).allMatch(line -> line.startsWith("time="), "one event a line");
      assertThat(log).anyMatch(line -> line.contains("says=\"stopped\""));
      assertThat(String.join("\n", log)).doesNotContain("Mina", "Ott", word);
    }
    backupIsADatabaseOfItsOwn(copies);
  }

  /** Made by the schedule at the start, before anybody played. */
  private static void backupIsADatabaseOfItsOwn(Path copies) throws Exception {
    try (Stream<Path> files = Files.list(copies)) {
      List<Path> made = files.toList();
      assertThat(made).hasSize(1);
      try (Store store = Store.open(made.get(0), InstantSource.system(), available -> {})) {
        assertThat(store.takes().join()).isEmpty();
      }
    }
  }

  private static void play(WireClient player, TakeNews.Announced take, AtomicBoolean playing) {
    long seq = 1;
    while (playing.get() && player.open()) {
      WireAttack attack =
          new WireAttack(take.startMicros() + seq * 1_000, null, null, null, null, null, false);
      try {
        player.send(new TakeMessage.Attacks(take.takeId(), take.epoch(), seq, List.of(attack)));
      } catch (RuntimeException closed) {
        return;
      }
      seq++;
    }
  }
}
