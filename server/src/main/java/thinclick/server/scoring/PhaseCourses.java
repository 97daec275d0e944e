package thinclick.server.scoring;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * How a player's slow phase moves from one written attack to the next: a walk, a drift where nobody
 * clicks, a pull at clicks. Phases are bins of a window that follows the player; like courses are
 * made once.
 */
final class PhaseCourses {
  private final Sheet sheet;
  private final Places places;
  private final int[] steps;
  private final double walkPerStep;
  private final double silentDrift;
  private final boolean clickPulls;
  private final double bin;
  private final int half;
  private final int bins;
  private final Map<Long, Course> courses = new HashMap<>();

  /**
   * The courses of one part.
   *
   * @param bin the width of a bin, ms
   * @param half bins to either side of the middle one
   */
  PhaseCourses(Sheet sheet, Places places, int[] steps, Prices prices, double bin, int half) {
    this.sheet = sheet;
    this.places = places;
    this.steps = steps;
    walkPerStep = prices.walkPerStep();
    silentDrift = prices.silentDrift();
    clickPulls = prices.clickPulls();
    this.bin = bin;
    this.half = half;
    bins = 2 * half + 1;
  }

  /** Where the weight of each phase goes between two written attacks. */
  static final class Course {
    final int[] first;
    final double[][] share;

    Course(int bins) {
      first = new int[bins];
      share = new double[bins][];
    }

    double[] apply(double[] from, int bins) {
      double[] to = new double[bins];
      for (int b = 0; b < bins; b++) {
        double mass = from[b];
        if (mass > 1e-15) {
          double[] row = share[b];
          int start = first[b];
          for (int t = 0; t < row.length; t++) {
            to[start + t] += mass * row[t];
          }
        }
      }
      return to;
    }

    double[] undo(double[] back, int bins) {
      double[] before = new double[bins];
      for (int b = 0; b < bins; b++) {
        double[] row = share[b];
        int start = first[b];
        double sum = 0;
        for (int t = 0; t < row.length; t++) {
          sum += back[start + t] * row[t];
        }
        before[b] = sum;
      }
      return before;
    }
  }

  /** How much of its distance a player may take back at one click, and how often. */
  private static final double[][] NEAR = {{0, 0.5}, {0.2, 0.25}, {0.5, 0.25}};

  /** Further off than half a step from a click, staying there is unlikely. */
  private static final double[][] FAR = {{0, 0.2}, {0.2, 0.4}, {0.5, 0.4}};

  /**
   * The course to a written attack.
   *
   * @param k the written attack it leads to
   * @param moved by how many bins the window moves on
   * @param followed by how many it had moved before
   */
  Course to(int k, int moved, int followed) {
    int gap = Math.max(1, Math.min(steps[k] - steps[k - 1], 4 * sheet.stepsPerBar));
    int clicks = clickPulls ? Math.min(15, sheet.clicksBetween(steps[k - 1], steps[k])) : 0;
    boolean silent = silentDrift > 0 && sheet.silentAt(steps[k - 1]);
    double home = clicks == 0 ? 0 : places.homeAt(steps[k], sheet.beatMillis());
    if (home != 0) {
      return course(gap, moved, followed, clicks, silent, home);
    }
    int seen = clicks == 0 ? 0 : followed; // without clicks it does not matter where the window is
    long key =
        ((((long) gap * 2 + (silent ? 1 : 0)) * 16 + clicks) * 1024 + (moved + 512)) * 65_536
            + (seen + 32_768);
    if (Math.abs(seen) >= 32_768) {
      return course(gap, moved, followed, clicks, silent, home);
    }
    return courses.computeIfAbsent(
        key, missing -> course(gap, moved, followed, clicks, silent, home));
  }

  private Course course(int gap, int moved, int followed, int clicks, boolean silent, double home) {
    double[] kernel = kernel(gap, silent);
    int wide = kernel.length / 2;
    Course course = new Course(bins);
    double[] row = new double[bins];
    for (int b = 0; b < bins; b++) {
      Arrays.fill(row, 0);
      double x = b - half + followed - home / bin;
      if (clicks == 0 || Math.abs(x * bin) < 0.1 * sheet.stepMillis) {
        spread(row, b - moved, 1, kernel, wide);
      } else {
        double[][] pulls = Math.abs(x * bin) > 0.5 * sheet.stepMillis ? FAR : NEAR;
        for (double[] one : pulls) {
          double to = x * Math.pow(1 - one[0], clicks) + home / bin - followed - moved + half;
          int low = (int) Math.floor(to);
          spread(row, low, one[1] * (1 - (to - low)), kernel, wide);
          spread(row, low + 1, one[1] * (to - low), kernel, wide);
        }
      }
      int first = 0;
      int last = bins - 1;
      while (first < last && row[first] == 0) {
        first++;
      }
      while (last > first && row[last] == 0) {
        last--;
      }
      course.first[b] = first;
      course.share[b] = Arrays.copyOfRange(row, first, last + 1);
    }
    return course;
  }

  private void spread(double[] row, int to, double mass, double[] kernel, int wide) {
    for (int t = -wide; t <= wide; t++) {
      if (to + t >= 0 && to + t < bins) {
        row[to + t] += mass * kernel[t + wide];
      }
    }
  }

  private double[] kernel(int gap, boolean silent) {
    double drift = silent ? silentDrift * sheet.stepMillis * Math.min(gap, 16) : 0;
    double sd = Math.hypot(walkPerStep * Math.sqrt(gap), drift) / bin;
    int wide = Math.max(1, Math.min(half, (int) Math.ceil(2.5 * sd)));
    double[] kernel = new double[2 * wide + 1];
    if (sd < 0.6) {
      double side = Math.min(0.25, sd * sd / 2);
      kernel[wide] = 1 - 2 * side;
      kernel[wide - 1] = side;
      kernel[wide + 1] = side;
      return kernel;
    }
    double sum = 0;
    for (int t = -wide; t <= wide; t++) {
      kernel[t + wide] = Math.exp(-t * t / (2 * sd * sd));
      sum += kernel[t + wide];
    }
    for (int t = 0; t < kernel.length; t++) {
      kernel[t] /= sum;
    }
    return kernel;
  }
}
