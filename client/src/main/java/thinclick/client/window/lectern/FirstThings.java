package thinclick.client.window.lectern;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Rung;
import thinclick.server.words.Advice;

/**
 * What has to be mended before the click changes, as a plan and a tempo of the same drill. Where
 * the advice is about something else (who has which part, another drill, a pad), both stay.
 *
 * @param plan the click plan
 * @param tempo beats a minute
 */
record FirstThings(List<Stage> plan, double tempo) {
  private static final double SLOWER = 0.9;

  /**
   * Sets it up.
   *
   * @param plan that was played
   * @param tempo that was played, beats a minute
   */
  static FirstThings of(@Nullable Advice advice, Drill drill, List<Stage> plan, double tempo) {
    int bars = plan.stream().mapToInt(Stage::bars).sum();
    if (advice == null) {
      return new FirstThings(plan, tempo);
    }
    return switch (advice) {
      case COUNT_ALOUD -> new FirstThings(under(Rung.ALL_BEATS, drill, half(drill, bars)), tempo);
      case SING -> new FirstThings(under(Rung.EVERY_SECOND_BAR, drill, bars), tempo);
      case ISLANDS -> new FirstThings(under(Rung.ISLANDS, drill, bars), slower(drill, tempo));
      case SLOWER -> new FirstThings(plan, slower(drill, tempo));
      default -> new FirstThings(plan, tempo);
    };
  }

  /** A tenth slower, but never slower than the drill is played. */
  static double slower(Drill drill, double tempo) {
    return Math.min(tempo, Math.max(drill.tempo().from(), Math.rint(tempo * SLOWER)));
  }

  /** Half as many bars, whole periods, one at least. */
  private static int half(Drill drill, int bars) {
    int period = drill.periodBars();
    return Math.max(Math.min(period, bars), bars / 2 / period * period);
  }

  private static List<Stage> under(Rung rung, Drill drill, int bars) {
    return List.of(rung.stage(drill.meter(), drill.stepsPerBeat(), drill.groups(), bars, 0));
  }
}
