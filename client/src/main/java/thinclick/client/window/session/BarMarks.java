package thinclick.client.window.session;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.BarMark.Kind;
import thinclick.protocol.music.StepGrid;

/**
 * Holds the attacks of one bar against what is written in it. For the stand only, and against the
 * written grid: the review judges against the pulse that the band shares.
 */
public final class BarMarks {
  /** An attack within so much of its place is called neither early nor late, milliseconds. */
  public static final double PLAIN_MILLIS = 15;

  private BarMarks() {}

  /**
   * The marks of a bar, in order.
   *
   * @param written the part's steps, ascending
   * @param attacksMicros room times of all attacks so far, ascending
   * @param bar the bar, from 0
   * @param plainMillis how far from its place an attack is neither early nor late
   */
  public static List<BarMark> of(
      StepGrid grid, List<Integer> written, List<Long> attacksMicros, int bar, double plainMillis) {
    int first = bar * grid.stepsPerBar();
    List<BarMark> marks = new ArrayList<>();
    for (int step = first; step < first + grid.stepsPerBar(); step++) {
      List<Long> near = within(attacksMicros, edgeMicros(grid, step), edgeMicros(grid, step + 1));
      double placeMicros = grid.microsAt(step);
      Long answer = null;
      if (written.contains(step)) {
        answer = nearest(near, placeMicros);
        marks.add(
            answer == null
                ? new BarMark(Kind.DROPPED, step, 0, 0)
                : judged(grid, step, answer - placeMicros, plainMillis));
      }
      for (Long attack : near) {
        if (!attack.equals(answer)) {
          marks.add(mark(Kind.ADDED, grid, step, attack - placeMicros));
        }
      }
    }
    return List.copyOf(marks);
  }

  /** When the marks of a bar can be known: half a step after it, room time. */
  public static long overMicros(StepGrid grid, int bar) {
    return (long) edgeMicros(grid, (bar + 1L) * grid.stepsPerBar());
  }

  /** True for what was tapped along with the count-in: it is no bar's. */
  static boolean beforeBarOne(StepGrid grid, long micros) {
    return micros < edgeMicros(grid, 0);
  }

  private static BarMark judged(StepGrid grid, int step, double offMicros, double plainMillis) {
    if (Math.abs(offMicros) <= plainMillis * 1e3) {
      return mark(Kind.PLACED, grid, step, offMicros);
    }
    return mark(offMicros < 0 ? Kind.EARLY : Kind.LATE, grid, step, offMicros);
  }

  private static BarMark mark(Kind kind, StepGrid grid, int step, double offMicros) {
    return new BarMark(kind, step, offMicros / 1e3, offMicros / grid.stepMicros());
  }

  /** Half way from the step before: what is played from here on belongs to the step. */
  private static double edgeMicros(StepGrid grid, long step) {
    return (grid.microsAt(step - 1) + grid.microsAt(step)) / 2;
  }

  private static List<Long> within(List<Long> ascending, double from, double to) {
    return ascending.stream().filter(micros -> micros >= from && micros < to).toList();
  }

  private static @Nullable Long nearest(List<Long> attacks, double placeMicros) {
    Long best = null;
    for (Long attack : attacks) {
      if (best == null || Math.abs(attack - placeMicros) < Math.abs(best - placeMicros)) {
        best = attack;
      }
    }
    return best;
  }
}
