package thinclick.client.window.lectern;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Rung;
import thinclick.server.material.Stock;
import thinclick.server.words.Advice;

/**
 * What has to be mended before the click changes, as a drill, a plan and a tempo. Where the advice
 * is about something else (who has which part, a pad), all of them stay.
 *
 * @param drill the drill that was played, or the one of the stock that the advice names
 * @param plan the click plan
 * @param tempo beats a minute
 */
record FirstThings(Drill drill, List<Stage> plan, double tempo) {
  private static final double SLOWER = 0.9;

  /** Even eighths are advised at this, beats a minute. */
  private static final double CALM = 60;

  /**
   * Sets it up.
   *
   * @param plan that was played
   * @param tempo that was played, beats a minute
   */
  static FirstThings of(@Nullable Advice advice, Drill drill, List<Stage> plan, double tempo) {
    int bars = bars(plan);
    FirstThings same = new FirstThings(drill, plan, tempo);
    if (advice == null) {
      return same;
    }
    return switch (advice) {
      case COUNT_ALOUD -> same.under(Rung.ALL_BEATS, half(drill, bars));
      case SING -> same.under(Rung.EVERY_SECOND_BAR, bars);
      case ISLANDS -> same.under(Rung.ISLANDS, bars).at(slower(drill, tempo));
      case SLOWER -> same.at(slower(drill, tempo));
      case BAR_NUMBERS -> another("Short threes", tempo);
      case PUSH_ONLY -> another("Push only", tempo);
      case GAPPED_ANDS -> another("Gapped ands", tempo);
      case ANDS_ALONE -> {
        FirstThings ands = another("Ands alone", tempo);
        yield ands.under(Rung.GROUP_LASTS, bars(ands.plan));
      }
      case TWO_AND_FOUR_AND -> another("Two-and four-and", tempo * SLOWER);
      case EVEN_EIGHTHS -> another("Even eighths", CALM);
      default -> same;
    };
  }

  /** Another drill of the stock as it is written, as near this tempo as it is played. */
  private static FirstThings another(String title, double tempo) {
    Drill other = Stock.find(title);
    double near = Math.max(other.tempo().from(), Math.min(Math.rint(tempo), other.tempo().to()));
    return new FirstThings(other, other.stages(), near);
  }

  private FirstThings at(double another) {
    return new FirstThings(drill, plan, another);
  }

  private FirstThings under(Rung rung, int bars) {
    Stage stage = rung.stage(drill.meter(), drill.stepsPerBeat(), drill.groups(), bars, 0);
    return new FirstThings(drill, List.of(stage), tempo);
  }

  private static int bars(List<Stage> plan) {
    return plan.stream().mapToInt(Stage::bars).sum();
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
}
