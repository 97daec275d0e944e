package thinclick.server.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.StepGrid;
import thinclick.server.dealing.Dealer;
import thinclick.server.dealing.Dealing;
import thinclick.server.gathering.Seating;
import thinclick.server.material.Stock;

/** A take without attacks: what was to be played, by whom, and when bar 1 was. */
final class TakeFrame {
  private TakeFrame() {}

  /**
   * Finds what was played and seats the players in it.
   *
   * @param drill a drill's title, a drill file or a take file
   * @param tempo beats a minute; null for the drill's or the take's own
   * @param seed which deal; null for the drill's own
   */
  static Take of(
      String drill,
      List<String> players,
      @Nullable Double tempo,
      @Nullable Long seed,
      long startMicros) {
    Path file = Path.of(drill);
    if (!Files.exists(file) && !looksLikeAFile(drill)) {
      return dealt(Stock.find(drill), players, tempo, seed, startMicros);
    }
    Record read =
        InputFile.read(
            file,
            bytes ->
                FileCodec.formatOf(bytes).equals(Drill.FORMAT)
                    ? FileCodec.readDrill(bytes)
                    : FileCodec.readTake(bytes));
    return read instanceof Drill drillFile
        ? dealt(drillFile, players, tempo, seed, startMicros)
        : again((Take) read, players, tempo, startMicros);
  }

  private static boolean looksLikeAFile(String drill) {
    return drill.endsWith(".json") || drill.contains("/") || drill.contains("\\");
  }

  private static Take dealt(
      Drill drill,
      List<String> players,
      @Nullable Double tempo,
      @Nullable Long seed,
      long startMicros) {
    double beatsAMinute = tempo == null ? drill.tempo().start() : tempo;
    long deal = seed == null ? drill.deal().seed() : seed;
    Dealing dealing = Dealer.deal(drill, players, deal, beatsAMinute, drill.stages());
    StepGrid grid =
        new StepGrid(drill.meter(), drill.stepsPerBeat(), beatsAMinute, drill.swing(), startMicros);
    return Take.written(
        drill.title(), grid, dealing.toleranceMillis(), drill.stages(), dealing.parts());
  }

  private static Take again(
      Take earlier, List<String> players, @Nullable Double tempo, long startMicros) {
    return earlier
        .edited()
        .tempo(tempo == null ? earlier.tempo() : tempo)
        .startMicros(startMicros)
        .parts(Seating.seat(earlier.parts(), players))
        .attacks(List.of())
        .endMicros(null)
        .clickInterrupted(List.of())
        .take();
  }
}
