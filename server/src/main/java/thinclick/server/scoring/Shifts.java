package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The whole-step shifts that can be told apart on one part: up to its figure's period or a bar,
 * whichever is longer, either way, without those that look like a smaller one.
 *
 * @param period after how many steps the figure repeats; null where it does not inside the part
 * @param shifts the shifts to look for, ascending, 0 among them
 */
@SuppressWarnings("ArrayRecordComponent") // columns of numbers, never compared or changed
record Shifts(@Nullable Integer period, int[] shifts) {
  /** Longest period looked for, bars; a longer line is taken as one that does not repeat. */
  private static final int MAX_PERIOD_BARS = 4;

  static Shifts of(int[] steps, int stepsPerBar) {
    if (steps.length < 2) {
      return new Shifts(null, new int[] {0});
    }
    Integer period = period(steps, MAX_PERIOD_BARS * stepsPerBar);
    int reach = Math.max(stepsPerBar, period == null ? 0 : period);
    List<Integer> kept = new ArrayList<>();
    for (int shift = -reach; shift <= reach; shift++) {
      boolean smallest = period == null || 2 * Math.abs(shift) <= period;
      boolean twin = period != null && 2 * shift == -period; // its late twin stands for both
      if (smallest && !twin) {
        kept.add(shift);
      }
    }
    return new Shifts(period, kept.stream().mapToInt(Integer::intValue).toArray());
  }

  /** The smallest shift that maps the part onto itself wherever both places fall inside it. */
  private static @Nullable Integer period(int[] steps, int longest) {
    int first = steps[0];
    int last = steps[steps.length - 1];
    for (int period = 1; period <= longest && 2 * period <= last - first + 1; period++) {
      if (repeats(steps, period, first, last)) {
        return period;
      }
    }
    return null;
  }

  private static boolean repeats(int[] steps, int period, int first, int last) {
    for (int step : steps) {
      if (step + period <= last && Arrays.binarySearch(steps, step + period) < 0) {
        return false;
      }
      if (step - period >= first && Arrays.binarySearch(steps, step - period) < 0) {
        return false;
      }
    }
    return true;
  }

  int zero() {
    return Arrays.binarySearch(shifts, 0);
  }
}
