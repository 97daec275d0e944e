package thinclick.server.scoring;

import org.apache.commons.math3.util.ArithmeticUtils;

/**
 * Settles which step the pulse is on. Where everybody sits off the part by the same shift nobody is
 * displaced against the others: in silence the band has drifted, and under a click the nearer of
 * the two readings holds.
 */
final class Gauge {
  private static final int LONGEST_PERIOD_BARS = 4;

  private Gauge() {}

  /** Takes shared shifts back into the phases; true where anything changed. */
  static boolean settle(Sheet sheet, Places places, Reading[] readings) {
    int bars = sheet.steps / sheet.stepsPerBar;
    int[] shared = new int[bars];
    int[][] first = new int[readings.length][];
    for (int i = 0; i < readings.length; i++) {
      first[i] = firstOfBars(sheet, readings[i], bars);
    }
    boolean any = false;
    for (int bar = 0; bar < bars; bar++) {
      shared[bar] = sharedShift(readings, first, bar);
      any |= shared[bar] != 0;
    }
    if (!any) {
      return false;
    }
    boolean changed = false;
    for (int bar = 0; bar < bars; bar++) {
      int by = shared[bar];
      if (by == 0) {
        continue;
      }
      if (sheet.stageClicks[sheet.stageOf(bar * sheet.stepsPerBar)]) {
        double now = offClick(places, readings, first, bar);
        by = nearestToClick(by, sharedPeriod(sheet, readings, first, bar), now / sheet.stepMillis);
        if (by == 0 || Math.abs(now + by * sheet.stepMillis) >= Math.abs(now)) {
          continue;
        }
      }
      changed = true;
      for (int i = 0; i < readings.length; i++) {
        Reading reading = readings[i];
        for (int k = first[i][bar]; k < first[i][bar + 1]; k++) {
          int step = reading.chair.steps[k];
          reading.phase[k] += places.at(step + by) - places.at(step);
          reading.shift[k] = 0;
        }
      }
    }
    return changed;
  }

  private static int[] firstOfBars(Sheet sheet, Reading reading, int bars) {
    int[] first = new int[bars + 1];
    int k = 0;
    for (int bar = 0; bar <= bars; bar++) {
      while (k < reading.size() && reading.chair.steps[k] < bar * sheet.stepsPerBar) {
        k++;
      }
      first[bar] = k;
    }
    return first;
  }

  /** The shift that all who played in the bar share, two of them at least; 0 for none. */
  private static int sharedShift(Reading[] readings, int[][] first, int bar) {
    int shared = 0;
    boolean free = true; // so far every shift seen may also be read as another
    int players = 0;
    for (int pass = 0; pass < 2; pass++) {
      for (int i = 0; i < readings.length; i++) {
        Reading reading = readings[i];
        boolean played = false;
        for (int k = first[i][bar]; k < first[i][bar + 1]; k++) {
          if (reading.partner[k] == Matcher.NONE) {
            continue;
          }
          played = true;
          Integer period = reading.shifts.period();
          if (pass == 0) {
            if (reading.shift[k] == 0) {
              return 0;
            }
            boolean fixed = period == null || 2 * Math.abs(reading.shift[k]) < period;
            if (free && (shared == 0 || fixed)) {
              shared = reading.shift[k];
              free = !fixed;
            }
          } else {
            int apart = reading.shift[k] - shared;
            if (apart != 0 && (period == null || apart % period != 0)) {
              return 0;
            }
          }
        }
        players += pass == 1 && played ? 1 : 0;
      }
    }
    return players > 1 ? shared : 0;
  }

  /**
   * After so many steps every part that was played in the bar looks as it did before, so that the
   * whole band's shift is known but for multiples of it; 0 where one of them never does.
   */
  private static int sharedPeriod(Sheet sheet, Reading[] readings, int[][] first, int bar) {
    int shared = 1;
    for (int i = 0; i < readings.length; i++) {
      if (first[i][bar] == first[i][bar + 1]) {
        continue;
      }
      Integer period = readings[i].shifts.period();
      if (period == null) {
        return 0;
      }
      shared = shared / ArithmeticUtils.gcd(shared, period) * period;
      if (shared > LONGEST_PERIOD_BARS * sheet.stepsPerBar) {
        return 0;
      }
    }
    return shared;
  }

  /** Of the shifts that look like this one, that which leaves the band nearest to the click. */
  private static int nearestToClick(int shift, int period, double offClickSteps) {
    return period == 0 ? shift : shift - period * (int) Math.rint((offClickSteps + shift) / period);
  }

  /** How far the band is from the click in a bar, as decoded, ms. */
  private static double offClick(Places places, Reading[] readings, int[][] first, int bar) {
    double sum = 0;
    int count = 0;
    for (int i = 0; i < readings.length; i++) {
      for (int k = first[i][bar]; k < first[i][bar + 1]; k++) {
        sum += readings[i].phase[k] + places.bendAt(readings[i].chair.steps[k]);
        count++;
      }
    }
    return count == 0 ? 0 : sum / count;
  }
}
