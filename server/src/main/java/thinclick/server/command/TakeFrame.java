package thinclick.server.command;

import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.server.gathering.Seating;

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
    Take earlier = InputFile.read(Path.of(drill), FileCodec::readTake);
    return again(earlier, players, tempo, startMicros);
  }

  private static Take again(
      Take earlier, List<String> players, @Nullable Double tempo, long startMicros) {
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        earlier.title(),
        earlier.meter(),
        tempo == null ? earlier.tempo() : tempo,
        earlier.stepsPerBeat(),
        earlier.swing(),
        startMicros,
        earlier.toleranceMillis(),
        earlier.stages(),
        Seating.seat(earlier.parts(), players),
        List.of(),
        null,
        List.of());
  }
}
