package thinclick.server.scoring;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Follows one player through a part: at each written attack, by how many whole steps the player
 * sits off it and where the slow phase stands, decoded together, forwards and backwards.
 *
 * <p>A hidden Markov model over (shift, phase). The shift jumps rarely, likeliest at bar lines and
 * by one step, and a jump keeps the phase. The phase moves slowly about a centre that others
 * foretell, in a window that follows the player. A written attack is dropped, or explains a played
 * one; what is played is otherwise spread evenly in time. Only shifts that carry any weight are
 * followed, and those that others jump to are looked at where an attack lies; cost is linear in
 * attacks.
 */
final class ShiftDecoder {
  /** What was decoded at each written attack. */
  @SuppressWarnings("ArrayRecordComponent") // columns of numbers, never compared or changed
  record Decoded(int[] shift, double[] phase, double[] logEvidence) {}

  /** A shift with less of the weight than this is not followed. */
  private static final double IDLE = 1e-6;

  private final Sheet sheet;
  private final int[] steps;
  private final int[] shifts;
  private final int zero;
  private final Prices prices;
  private final double[] centre;
  private final double bin;
  private final int half;
  private final int bins;
  private final double gain;

  /** How much of a jump from one shift goes to another. */
  private final double[][] pull;

  private final PhaseCourses courses;
  private final HeardAttacks heard;

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
    this.sheet = sheet;
    this.steps = steps;
    this.shifts = shifts.shifts();
    this.prices = prices;
    this.centre = centre;
    zero = shifts.zero();
    bin = Math.max(prices.noise() / 2, 2 * prices.reach() / 60);
    half = (int) Math.ceil(prices.reach() / bin);
    bins = 2 * half + 1;
    gain =
        (1 - prices.drop())
            / (prices.drop() * prices.addedPerMilli() * prices.noise() * Math.sqrt(2 * Math.PI));
    courses = new PhaseCourses(sheet, places, steps, prices, bin, half);
    heard =
        new HeardAttacks(
            places, steps, attacks, this.shifts, feel, prices.noise(), bin, half, gain);
    pull = Jumps.pulls(this.shifts);
  }

  Decoded decode() {
    int n = steps.length;
    Moment[] moments = new Moment[n];
    double[] logEvidence = new double[n];
    for (int k = 0; k < n; k++) {
      moments[k] = k == 0 ? first(logEvidence) : next(moments[k - 1], k, logEvidence);
    }
    int[] shift = new int[n];
    double[] phase = new double[n];
    double[][] back = new double[0][];
    for (int k = n - 1; k >= 0; k--) {
      back = k == n - 1 ? ones(moments[k]) : before(moments[k], moments[k + 1], back);
      read(k, moments[k], back, shift, phase);
    }
    return new Decoded(shift, phase, logEvidence);
  }

  private Moment first(double[] logEvidence) {
    double[] start = new double[bins];
    double sum = 0;
    for (int b = 0; b < bins; b++) {
      double z = ((b - half) * bin - prices.startMean()) / prices.startSpread();
      start[b] = Math.exp(-z * z / 2);
      sum += start[b];
    }
    double[][] weight = new double[shifts.length][bins];
    for (int d = 0; d < shifts.length; d++) {
      double share = prices.startDisplaced() * pull[zero][d];
      if (d == zero) {
        share = shifts.length == 1 ? 1 : 1 - prices.startDisplaced();
      }
      for (int b = 0; b < bins; b++) {
        weight[d][b] = share * start[b] / sum;
      }
    }
    int[] all = new int[shifts.length];
    Arrays.setAll(all, d -> d);
    return weigh(0, all, weight, 0, null, 0, logEvidence);
  }

  private Moment next(Moment before, int k, double[] logEvidence) {
    int moved = drift(before);
    PhaseCourses.Course course = courses.to(k, moved, before.followed);
    boolean barLine = sheet.barOf(steps[k]) != sheet.barOf(steps[k - 1]);
    double jump = shifts.length == 1 ? 0 : barLine ? prices.jumpAtBar() : prices.jumpElsewhere();
    int n = before.active.length;
    double[][] arrived = new double[n][];
    double[] total = new double[n];
    for (int a = 0; a < n; a++) {
      arrived[a] = course.apply(before.weight[a], bins);
      total[a] = sum(arrived[a]);
    }
    int followed = before.followed + moved;
    double middle = centre[k] + followed * bin;
    boolean[] follow = new boolean[shifts.length];
    int count = 0;
    for (int a = 0; a < n; a++) {
      follow[before.active[a]] = true;
      count++;
    }
    if (jump > 0) {
      for (int d = 0; d < shifts.length; d++) {
        if (!follow[d] && worthFollowing(k, d, middle, before.active, total, jump)) {
          follow[d] = true;
          count++;
        }
      }
    }
    int[] active = new int[count];
    double[][] weight = new double[count][];
    int filled = 0;
    for (int d = 0; d < shifts.length; d++) {
      if (follow[d]) {
        active[filled] = d;
        weight[filled++] = arriving(d, before.active, arrived, jump);
      }
    }
    return weigh(k, active, weight, jump, course, followed, logEvidence);
  }

  private double[] arriving(int d, int[] from, double[][] arrived, double jump) {
    double[] row = new double[bins];
    for (int a = 0; a < from.length; a++) {
      double share = from[a] == d ? 1 - jump : jump * pull[from[a]][d];
      double[] source = arrived[a];
      for (int b = 0; b < bins; b++) {
        row[b] += share * source[b];
      }
    }
    return row;
  }

  /** Whether a jump to this shift explains what was played here well enough to be followed. */
  private boolean worthFollowing(
      int k, int d, double middle, int[] from, double[] total, double jump) {
    double mass = 0;
    double all = 0;
    for (int a = 0; a < from.length; a++) {
      mass += jump * pull[from[a]][d] * total[a];
      all += total[a];
    }
    if (mass < IDLE * IDLE) {
      return false;
    }
    // an attack in reach multiplies by about the gain; without one the drop is shared by all
    return heard.inReach(k, d, middle) ? mass * gain > IDLE * all : mass > 1e-4 * all;
  }

  /** Multiplies by how likely what was played is, and forgets what carries no weight. */
  private Moment weigh(
      int k,
      int[] active,
      double[][] weight,
      double jump,
      PhaseCourses.@Nullable Course course,
      int followed,
      double[] logEvidence) {
    double middle = centre[k] + followed * bin;
    double[][] likely = new double[active.length][];
    double[] mass = new double[active.length];
    double all = 0;
    for (int a = 0; a < active.length; a++) {
      likely[a] = heard.likely(k, active[a], middle);
      double[] row = weight[a];
      double[] factor = likely[a];
      double sum = 0;
      if (factor != null) {
        for (int b = 0; b < bins; b++) {
          row[b] *= factor[b];
          sum += row[b];
        }
      } else {
        sum = sum(row);
      }
      mass[a] = sum;
      all += sum;
    }
    if (!(all > 1e-200)) {
      return lost(k, jump, course, followed, logEvidence);
    }
    logEvidence[k] = Math.log(all);
    int kept = 0;
    for (int a = 0; a < active.length; a++) {
      if (mass[a] > IDLE * all) {
        double[] row = weight[a];
        for (int b = 0; b < bins; b++) {
          row[b] /= all;
        }
        active[kept] = active[a];
        weight[kept] = row;
        likely[kept++] = likely[a];
      }
    }
    return new Moment(
        Arrays.copyOf(active, kept),
        Arrays.copyOf(weight, kept),
        Arrays.copyOf(likely, kept),
        jump,
        course,
        followed);
  }

  /** All weight ran out of the window: begins anew at home, anywhere in it. */
  private Moment lost(
      int k,
      double jump,
      PhaseCourses.@Nullable Course course,
      int followed,
      double[] logEvidence) {
    logEvidence[k] = -50;
    double[] row = new double[bins];
    Arrays.fill(row, 1.0 / bins);
    double[] none = new double[bins];
    Arrays.fill(none, 1);
    return new Moment(
        new int[] {zero}, new double[][] {row}, new double[][] {none}, jump, course, followed);
  }

  private static double sum(double[] row) {
    double sum = 0;
    for (double one : row) {
      sum += one;
    }
    return sum;
  }

  private double[][] ones(Moment moment) {
    double[][] ones = new double[moment.active.length][bins];
    for (double[] row : ones) {
      Arrays.fill(row, 1);
    }
    return ones;
  }

  /** The backward pass from one written attack to the one before. */
  private double[][] before(Moment moment, Moment after, double[][] back) {
    int n = after.active.length;
    PhaseCourses.Course course = after.course;
    double[][] weighed = new double[n][bins];
    for (int a = 0; a < n; a++) {
      double[] factor = after.likely == null ? null : after.likely[a];
      for (int b = 0; b < bins; b++) {
        weighed[a][b] = factor == null ? back[a][b] : back[a][b] * factor[b];
      }
    }
    double[][] earlier = new double[moment.active.length][];
    double top = 0;
    double[] mixed = new double[bins];
    for (int e = 0; e < earlier.length; e++) {
      Arrays.fill(mixed, 0);
      int from = moment.active[e];
      for (int a = 0; a < n; a++) {
        int to = after.active[a];
        double share = from == to ? 1 - after.jump : after.jump * pull[from][to];
        double[] source = weighed[a];
        for (int b = 0; b < bins; b++) {
          mixed[b] += share * source[b];
        }
      }
      earlier[e] = course == null ? mixed.clone() : course.undo(mixed, bins);
      for (double one : earlier[e]) {
        top = Math.max(top, one);
      }
    }
    if (!(top > 1e-200)) {
      return ones(moment);
    }
    for (double[] row : earlier) {
      for (int b = 0; b < bins; b++) {
        row[b] /= top;
      }
    }
    return earlier;
  }

  private void read(int k, Moment moment, double[][] back, int[] shift, double[] phase) {
    int best = 0;
    double bestMass = -1;
    double bestMean = 0;
    for (int a = 0; a < moment.active.length; a++) {
      double mass = 0;
      double mean = 0;
      for (int b = 0; b < bins; b++) {
        double w = moment.weight[a][b] * back[a][b];
        mass += w;
        mean += w * (b - half);
      }
      if (mass > bestMass) {
        bestMass = mass;
        best = moment.active[a];
        bestMean = mass > 0 ? mean / mass : 0;
      }
    }
    shift[k] = shifts[best];
    phase[k] = centre[k] + (moment.followed + bestMean) * bin;
  }

  /** By how many bins the window is to follow, so that the mean phase stays near its middle. */
  private int drift(Moment moment) {
    double mean = 0;
    for (double[] row : moment.weight) {
      for (int b = 0; b < bins; b++) {
        mean += row[b] * (b - half);
      }
    }
    return Math.abs(mean) > half / 3.0 ? (int) Math.rint(mean) : 0;
  }
}
