package thinclick.server.scoring;

import java.util.Arrays;

/**
 * Follows one player through a part: at each written attack, by how many whole steps the player
 * sits off it and where the slow phase stands, decoded together, forwards and backwards.
 *
 * <p>A hidden Markov model over (shift, phase). The shift jumps rarely, likeliest at bar lines and
 * by one step, and a jump keeps the phase. The phase moves slowly about a centre that others
 * foretell, in a window that follows the player. A written attack is dropped, or explains a played
 * one; what is played is otherwise spread evenly in time. Cost is linear in attacks.
 */
final class ShiftDecoder {
  /** What the model takes for granted. Times in ms, deviations as SD. */
  record Prices(
      double noise,
      double drop,
      double addedPerMilli,
      double jumpAtBar,
      double jumpElsewhere,
      double startDisplaced,
      double startSpread,
      double startMean,
      double walkPerStep,
      double silentDrift,
      double reach,
      boolean clickPulls) {}

  /** What was decoded at each written attack. */
  @SuppressWarnings("ArrayRecordComponent") // columns of numbers, never compared or changed
  record Decoded(
      int[] shift, double[] phase, double[] phaseSd, double[] certainty, double[] logEvidence) {}

  private static final double SAME_STEP = 0.5;
  private static final double MAX_SD_REACH = 4;

  private final Sheet sheet;
  private final Places places;
  private final int[] steps;
  private final double[] attacks;
  private final Shifts shifts;
  private final Prices prices;
  private final double[] centre;
  private final double[] feel;
  private final double bin;
  private final int half;
  private final int bins;

  /**
   * Sets the player before the part.
   *
   * @param centre where others foretell the phase at each written attack, ms from its place
   * @param feel the lean asked for at each, ms
   */
  ShiftDecoder(
      Sheet sheet,
      Places places,
      int[] steps,
      double[] attacks,
      Shifts shifts,
      Prices prices,
      double[] centre,
      double[] feel) {
    this.feel = feel;
    this.sheet = sheet;
    this.places = places;
    this.steps = steps;
    this.attacks = attacks;
    this.shifts = shifts;
    this.prices = prices;
    this.centre = centre;
    bin = Math.max(prices.noise / 2, 2 * prices.reach / 60);
    half = (int) Math.ceil(prices.reach / bin);
    bins = 2 * half + 1;
  }

  Decoded decode() {
    int n = steps.length;
    int shiftCount = shifts.shifts().length;
    double[][] emission = new double[n][];
    double[][] forward = new double[n][];
    int[] follow = new int[n]; // bins by which the window has followed the player
    Course[] courses = new Course[n];
    double[] logEvidence = new double[n];

    double[] now = new double[shiftCount * bins];
    start(now);
    for (int k = 0; k < n; k++) {
      if (k > 0) {
        follow[k] = follow[k - 1] + drift(forward[k - 1]);
        courses[k] = course(k, follow[k] - follow[k - 1], follow[k - 1]);
        now = move(forward[k - 1], courses[k], k);
      }
      emission[k] = emit(k, centre[k] + follow[k] * bin);
      double sum = 0;
      for (int i = 0; i < now.length; i++) {
        now[i] *= emission[k][i];
        sum += now[i];
      }
      logEvidence[k] = Math.log(sum);
      for (int i = 0; i < now.length; i++) {
        now[i] /= sum;
      }
      forward[k] = now;
    }

    int[] shift = new int[n];
    double[] phase = new double[n];
    double[] phaseSd = new double[n];
    double[] certainty = new double[n];
    double[] back = new double[shiftCount * bins];
    Arrays.fill(back, 1);
    for (int k = n - 1; k >= 0; k--) {
      read(k, forward[k], back, follow[k], shift, phase, phaseSd, certainty);
      if (k > 0) {
        for (int i = 0; i < back.length; i++) {
          back[i] *= emission[k][i];
        }
        back = moveBack(back, courses[k], k);
      }
    }
    return new Decoded(shift, phase, phaseSd, certainty, logEvidence);
  }

  private void start(double[] state) {
    int zero = shifts.zero();
    double[] weight = new double[shifts.shifts().length];
    double others = 0;
    for (int d = 0; d < weight.length; d++) {
      weight[d] = d == zero ? 0 : Math.pow(SAME_STEP, Math.abs(shifts.shifts()[d]));
      others += weight[d];
    }
    for (int d = 0; d < weight.length; d++) {
      double share =
          d == zero
              ? (others > 0 ? 1 - prices.startDisplaced : 1)
              : prices.startDisplaced * weight[d] / others;
      double sum = 0;
      for (int b = 0; b < bins; b++) {
        double u = (b - half) * bin;
        double z = (u - prices.startMean) / prices.startSpread;
        state[d * bins + b] = Math.exp(-z * z / 2);
        sum += state[d * bins + b];
      }
      for (int b = 0; b < bins; b++) {
        state[d * bins + b] *= share / sum;
      }
    }
  }

  /** By how many bins the window is to follow, so that the mean phase stays near its middle. */
  private int drift(double[] state) {
    double mean = 0;
    for (int i = 0; i < state.length; i++) {
      mean += state[i] * (i % bins - half);
    }
    return Math.abs(mean) > half / 3.0 ? (int) Math.rint(mean) : 0;
  }

  private double[] move(double[] from, Course course, int k) {
    double[] moved = new double[from.length];
    for (int d = 0; d < shifts.shifts().length; d++) {
      int base = d * bins;
      for (int b = 0; b < bins; b++) {
        double mass = from[base + b];
        if (mass < 1e-14) {
          continue;
        }
        int to = base + course.first[b];
        double[] share = course.share[b];
        for (int t = 0; t < share.length; t++) {
          moved[to + t] += mass * share[t];
        }
      }
    }
    return jump(moved, k, false);
  }

  private double[] moveBack(double[] back, Course course, int k) {
    double[] jumped = jump(back, k, true);
    double[] moved = new double[back.length];
    double top = 0;
    for (int d = 0; d < shifts.shifts().length; d++) {
      int base = d * bins;
      for (int b = 0; b < bins; b++) {
        int to = base + course.first[b];
        double[] share = course.share[b];
        double sum = 0;
        for (int t = 0; t < share.length; t++) {
          sum += jumped[to + t] * share[t];
        }
        moved[base + b] = sum;
        top = Math.max(top, sum);
      }
    }
    for (int i = 0; i < moved.length; i++) {
      moved[i] /= top;
    }
    return moved;
  }

  /** Where the mass of each phase bin goes between two written attacks. */
  private static final class Course {
    final int[] first;
    final double[][] share;

    Course(int bins) {
      first = new int[bins];
      share = new double[bins][];
    }
  }

  /** How much of its distance a band may take back at one click, and how often it does. */
  private static final double[][] NEAR = {{0, 0.5}, {0.2, 0.25}, {0.5, 0.25}};

  /** Further off than half a step from a click, staying there is unlikely. */
  private static final double[][] FAR = {{0, 0.2}, {0.2, 0.4}, {0.5, 0.4}};

  private Course course(int k, int moved, int followed) {
    int gap = Math.max(1, steps[k] - steps[k - 1]);
    int clicks = prices.clickPulls() ? clicksBetween(steps[k - 1], steps[k]) : 0;
    double[] kernel = kernel(gap, sheet.silentAt(steps[k - 1]));
    int wide = kernel.length / 2;
    Course course = new Course(bins);
    double home = clicks == 0 ? 0 : places.homeAt(steps[k], sheet.beatMillis());
    double[] row = new double[bins];
    for (int b = 0; b < bins; b++) {
      Arrays.fill(row, 0);
      double x = b - half + followed - home / bin;
      if (clicks == 0 || Math.abs(x * bin) < 0.1 * sheet.stepMillis) {
        spread(row, b - moved, 1, kernel, wide);
      } else {
        double[][] pulls = Math.abs(x * bin) > 0.5 * sheet.stepMillis ? FAR : NEAR;
        for (double[] pull : pulls) {
          double to = x * Math.pow(1 - pull[0], clicks) + home / bin - followed - moved + half;
          int low = (int) Math.floor(to);
          spread(row, low, pull[1] * (1 - (to - low)), kernel, wide);
          spread(row, low + 1, pull[1] * (to - low), kernel, wide);
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

  private int clicksBetween(int after, int upTo) {
    int from = Arrays.binarySearch(sheet.clickSteps, after + 1);
    int to = Arrays.binarySearch(sheet.clickSteps, upTo + 1);
    return (to >= 0 ? to : -to - 1) - (from >= 0 ? from : -from - 1);
  }

  /** Shares a little of each shift with the others, near ones and home first. */
  private double[] jump(double[] state, int k, boolean backwards) {
    int[] all = shifts.shifts();
    if (all.length < 2) {
      return state;
    }
    boolean barLine = sheet.barOf(steps[k]) != sheet.barOf(steps[k - 1]);
    double jump = barLine ? prices.jumpAtBar : prices.jumpElsewhere;
    double[] after = new double[state.length];
    for (int d = 0; d < all.length; d++) {
      double total = 0;
      for (int e = 0; e < all.length; e++) {
        total += e == d ? 0 : pull(all[d], all[e]);
      }
      for (int e = 0; e < all.length; e++) {
        double share = e == d ? 1 - jump : jump * pull(all[d], all[e]) / total;
        int from = backwards ? e : d;
        int to = backwards ? d : e;
        for (int b = 0; b < bins; b++) {
          after[to * bins + b] += share * state[from * bins + b];
        }
      }
    }
    return after;
  }

  private static double pull(int from, int to) {
    double pull = Math.pow(SAME_STEP, Math.abs(to - from) - 1);
    return to == 0 ? pull + 1 : pull;
  }

  private double[] kernel(int gap, boolean silent) {
    double drift = silent ? prices.silentDrift() * sheet.stepMillis * Math.min(gap, 16) : 0;
    double sd = Math.hypot(prices.walkPerStep * Math.sqrt(gap), drift) / bin;
    int wide = Math.max(1, Math.min(half, (int) Math.ceil(3 * sd)));
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

  /** How much likelier what was played is with this written attack played than with it dropped. */
  private double[] emit(int k, double middle) {
    int[] all = shifts.shifts();
    double[] likely = new double[all.length * bins];
    Arrays.fill(likely, 1);
    double reach = half * bin + MAX_SD_REACH * prices.noise;
    double gain =
        (1 - prices.drop)
            / (prices.drop * prices.addedPerMilli * prices.noise * Math.sqrt(2 * Math.PI));
    for (int d = 0; d < all.length; d++) {
      double at = places.at(steps[k] + all[d]) + feel[k] + middle;
      int j = firstFrom(at - reach);
      int seen = 0;
      for (; j < attacks.length && attacks[j] <= at + reach && seen < 8; j++, seen++) {
        double off = (attacks[j] - at) / bin + half;
        int low = Math.max(0, (int) Math.ceil(off - MAX_SD_REACH * prices.noise / bin));
        int high = Math.min(bins - 1, (int) Math.floor(off + MAX_SD_REACH * prices.noise / bin));
        for (int b = low; b <= high; b++) {
          double z = (b - off) * bin / prices.noise;
          likely[d * bins + b] += gain * Math.exp(-z * z / 2);
        }
      }
    }
    return likely;
  }

  private int firstFrom(double at) {
    int found = Arrays.binarySearch(attacks, at);
    int j = found >= 0 ? found : -found - 1;
    while (j > 0 && attacks[j - 1] >= at) {
      j--;
    }
    return j;
  }

  private void read(
      int k,
      double[] forward,
      double[] back,
      int follow,
      int[] shift,
      double[] phase,
      double[] phaseSd,
      double[] certainty) {
    int best = 0;
    double bestMass = -1;
    double total = 0;
    for (int d = 0; d < shifts.shifts().length; d++) {
      double mass = 0;
      for (int b = 0; b < bins; b++) {
        mass += forward[d * bins + b] * back[d * bins + b];
      }
      total += mass;
      if (mass > bestMass) {
        bestMass = mass;
        best = d;
      }
    }
    double mean = 0;
    double square = 0;
    for (int b = 0; b < bins; b++) {
      double mass = forward[best * bins + b] * back[best * bins + b];
      double u = (b - half) * bin;
      mean += mass * u;
      square += mass * u * u;
    }
    if (bestMass > 0) {
      mean /= bestMass;
      square /= bestMass;
    }
    shift[k] = shifts.shifts()[best];
    phase[k] = centre[k] + follow * bin + mean;
    phaseSd[k] = Math.sqrt(Math.max(0, square - mean * mean)) + bin / 4;
    certainty[k] = total > 0 ? bestMass / total : 0;
  }
}
