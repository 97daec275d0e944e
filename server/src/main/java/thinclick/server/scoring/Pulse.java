package thinclick.server.scoring;

import java.util.Arrays;

/**
 * The joint smoothing of all chairs: a common slow course with its tempo bias, each chair's lean
 * and each chair's own wander about it, from all attacks, forwards and backwards.
 *
 * <p>The parts are fitted in turn (common, leans, wanders) until they agree; which of them takes a
 * movement that several explain does not change their sum, which is what is used. Linear in
 * attacks.
 */
final class Pulse {
  /** How freely the parts may move, chosen by likelihood from a few where {@code search}. */
  record Freedom(CommonCourse.Freedom common, double own, boolean search) {}

  private static final int ROUNDS = 4;

  /** The part of an attack's variance that is given back of what the fits leave. */
  private static final double TAKEN = 0.6;

  private static final double[] LEVELS = {0.05, 0.5, 1.5, 4};
  private static final double[] TEMPOS = {0.02, 0.1, 0.5};
  private static final double[] PULLS = {0, 0.2, 0.4};

  private final Observed[] chairs;
  private final double[] weight;
  private final int[] knots;
  private final int[][] knotOf;
  private final CommonCourse common;
  private CommonCourse.Freedom freedom;
  private final double[] lean;
  private final OwnCourse[] own;
  private final double[] noise;
  private final double stepMillis;
  private final int stepsPerBar;

  /**
   * Fits all of it.
   *
   * @param sheet says where clicks sound
   * @param places where steps are laid
   * @param chairs what each chair tells
   * @param weight how much each counts
   * @param noise a first guess of each chair's attack noise, ms
   */
  Pulse(
      Sheet sheet,
      Places places,
      Observed[] chairs,
      double[] weight,
      double[] noise,
      Freedom start) {
    this.chairs = chairs;
    this.weight = weight;
    this.noise = noise.clone();
    stepMillis = sheet.stepMillis;
    stepsPerBar = sheet.stepsPerBar;
    freedom = start.common();
    knots = knots(chairs, sheet.clickSteps);
    boolean[] clicked = new boolean[knots.length];
    double[] home = new double[knots.length];
    for (int k = 0; k < knots.length; k++) {
      home[k] = places.homeAt(knots[k], sheet.beatMillis());
      clicked[k] = Arrays.binarySearch(sheet.clickSteps, knots[k]) >= 0;
    }
    knotOf = new int[chairs.length][];
    common = new CommonCourse(knots, clicked, home, sheet.stepMillis, sheet.stepsPerBar);
    lean = new double[chairs.length];
    own = new OwnCourse[chairs.length];
    for (int i = 0; i < chairs.length; i++) {
      knotOf[i] = new int[chairs[i].size()];
      for (int k = 0; k < chairs[i].size(); k++) {
        knotOf[i][k] = Arrays.binarySearch(knots, chairs[i].at()[k]);
      }
      own[i] = new OwnCourse(chairs[i].at(), start.own());
    }
    firstLeans();
    for (int round = 0; round < ROUNDS; round++) {
      fitCommon(start.search() && round > 0 && round < 3);
      fitLeans();
      for (int i = 0; i < chairs.length; i++) {
        fitOwn(i, start.search() && round > 0 && round < 3);
        fitNoise(i);
      }
    }
  }

  private static int[] knots(Observed[] chairs, int[] clicks) {
    int size = clicks.length;
    for (Observed chair : chairs) {
      size += chair.size();
    }
    int[] all = new int[size];
    int filled = clicks.length;
    System.arraycopy(clicks, 0, all, 0, filled);
    for (Observed chair : chairs) {
      System.arraycopy(chair.at(), 0, all, filled, chair.size());
      filled += chair.size();
    }
    Arrays.sort(all);
    int count = 0;
    for (int i = 0; i < size; i++) {
      if (i == 0 || all[i] != all[i - 1]) {
        all[count++] = all[i];
      }
    }
    return Arrays.copyOf(all, count);
  }

  /** Leans to begin with: the median distance from the grid, held against a long drift. */
  private void firstLeans() {
    for (int i = 0; i < chairs.length; i++) {
      if (chairs[i].size() > 0) {
        double[] off = chairs[i].offMillis().clone();
        lean[i] = Math.max(-60, Math.min(60, Median.of(off, off.length)));
      }
    }
  }

  /** A lean is the mean of what the common course and the own wander leave over. */
  private void fitLeans() {
    for (int i = 0; i < chairs.length; i++) {
      Observed chair = chairs[i];
      double sum = 0;
      double weights = 0;
      for (int k = 0; k < chair.size(); k++) {
        double rest = chair.offMillis()[k] - common.level[knotOf[i][k]] - own[i].millis[k];
        double w = 1 / doubt(i, k, rest - lean[i]);
        sum += w * rest;
        weights += w;
      }
      lean[i] = weights > 0 ? sum / weights : 0;
    }
  }

  /** Attacks far off the rest count little: a match of something else must not pull. */
  private double doubt(int i, int k, double rest) {
    double variance = noise[i] * noise[i] + common.variance[knotOf[i][k]] + own[i].variance[k];
    double z = rest / (3 * Math.sqrt(variance));
    return chairs[i].doubt()[k] * Math.max(1, z * z);
  }

  private void fitCommon(boolean search) {
    int n = knots.length;
    if (n == 0) {
      return;
    }
    double[] sum = new double[n];
    double[] precision = new double[n];
    for (int i = 0; i < chairs.length; i++) {
      Observed chair = chairs[i];
      for (int k = 0; k < chair.size(); k++) {
        int knot = knotOf[i][k];
        double rest = chair.offMillis()[k] - lean[i] - own[i].millis[k];
        double p = 1 / (noise[i] * noise[i] * doubt(i, k, rest - common.level[knot]));
        sum[knot] += p * rest;
        precision[knot] += p;
      }
    }
    if (search) {
      double best = Double.NEGATIVE_INFINITY;
      CommonCourse.Freedom chosen = freedom;
      for (double level : LEVELS) {
        for (double tempo : TEMPOS) {
          for (double pull : PULLS) {
            CommonCourse.Freedom tried = new CommonCourse.Freedom(level, tempo, pull);
            common.fit(sum, precision, tried, false);
            if (common.logLikelihood > best) {
              best = common.logLikelihood;
              chosen = tried;
            }
          }
        }
      }
      freedom = chosen;
    }
    common.fit(sum, precision, freedom, true);
  }

  private void fitOwn(int i, boolean search) {
    double[] rest = new double[chairs[i].size()];
    for (int k = 0; k < rest.length; k++) {
      rest[k] = chairs[i].offMillis()[k] - common.level[knotOf[i][k]] - lean[i];
    }
    OwnCourse.Noise ofAttack = (k, left) -> noise[i] * noise[i] * doubt(i, k, left);
    if (search) {
      own[i].search(rest, ofAttack);
    }
    own[i].fit(rest, ofAttack);
  }

  private void fitNoise(int i) {
    Observed chair = chairs[i];
    int n = chair.size();
    if (n < 4) {
      return;
    }
    double[] rest = new double[n];
    double taken = 0;
    for (int k = 0; k < n; k++) {
      int knot = knotOf[i][k];
      rest[k] = Math.abs(chair.offMillis()[k] - common.level[knot] - lean[i] - own[i].millis[k]);
      taken += Math.min(0.9, (common.variance[knot] + own[i].variance[k]) / (noise[i] * noise[i]));
    }
    double median = Median.of(rest, n);
    noise[i] = Math.min(60, Math.max(1, 1.4826 * median / Math.sqrt(1 - taken / n)));
  }

  /** The common course at a step, ms from its place. */
  double commonAt(int step) {
    return common.at(step);
  }

  /** A chair's own wander at a step, ms. */
  double ownAt(int i, int step) {
    return own[i].at(step);
  }

  /** The ensemble pulse at a step, ms from its place: the weighted mean of the slow parts. */
  double at(int step) {
    double sum = 0;
    double weights = 0;
    for (int i = 0; i < chairs.length; i++) {
      if (chairs[i].size() > 0 && weight[i] > 0) {
        sum += weight[i] * (lean[i] + ownAt(i, step));
        weights += weight[i];
      }
    }
    return commonAt(step) + (weights > 0 ? sum / weights : 0);
  }

  /**
   * How much of the variance of one of a chair's attacks the pulse took up, ms2: the attack moved
   * the pulse towards itself, which hides part of its distance. Of pulse and own wander each is
   * fitted as if the other were known, so a part of what they leave is taken (in simulation spreads
   * then come out at .98 to 1.03 of the truth; at 1.03 to 1.2 with the whole, at .96 with none).
   *
   * @param i the chair
   * @param step the step it sounded on
   */
  double takenUp(int i, int step) {
    int k = Arrays.binarySearch(chairs[i].at(), step);
    if (k < 0) {
      return 0;
    }
    double weights = 0;
    for (int j = 0; j < chairs.length; j++) {
      weights += chairs[j].size() > 0 ? weight[j] : 0;
    }
    double share = weights > 0 ? weight[i] / weights : 0;
    double left = common.variance[knotOf[i][k]] + share * own[i].variance[k];
    return TAKEN * (1 - share) * Math.max(0, Math.min(0.95 * noise[i] * noise[i], left));
  }

  /** How sure the slow part of a chair is at a step, SD in ms. */
  double sdAt(int i, int step) {
    int knot = Arrays.binarySearch(knots, step);
    if (knot < 0) {
      knot = Math.min(knots.length - 1, -knot - 1);
    }
    double variance = knot < 0 ? 0 : common.variance[knot];
    return Math.sqrt(variance + own[i].varianceFrom(step));
  }

  double lean(int i) {
    return lean[i];
  }

  double noise(int i) {
    return noise[i];
  }

  /** How many attacks sounded on steps from {@code from} until before {@code to}. */
  int attacksBetween(int from, int to) {
    int count = 0;
    for (Observed chair : chairs) {
      count += first(chair.at(), to) - first(chair.at(), from);
    }
    return count;
  }

  private static int first(int[] at, int step) {
    int low = 0;
    int high = at.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (at[middle] < step) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /**
   * The pulse at a step from the attacks before it alone, ms from its place, and its SD.
   *
   * @param from attacks before this step are left out
   */
  double[] foretell(int from, int step) {
    int firstKnot = first(knots, from);
    int afterKnot = first(knots, step);
    int[] used =
        Arrays.copyOf(Arrays.copyOfRange(knots, firstKnot, afterKnot), afterKnot - firstKnot + 1);
    used[used.length - 1] = step;
    double[] sum = new double[used.length];
    double[] precision = new double[used.length];
    for (int i = 0; i < chairs.length; i++) {
      Observed chair = chairs[i];
      double still = own[i].stillVariance();
      for (int k = first(chair.at(), from); k < chair.size() && chair.at()[k] < step; k++) {
        double variance = noise[i] * noise[i] * doubt(i, k, residual(i, k)) + still;
        sum[knotOf[i][k] - firstKnot] += (chair.offMillis()[k] - lean[i]) / variance;
        precision[knotOf[i][k] - firstKnot] += 1 / variance;
      }
    }
    CommonCourse before =
        new CommonCourse(
            used, new boolean[used.length], new double[used.length], stepMillis, stepsPerBar);
    before.fit(sum, precision, freedom, true);
    double[] found = {
      before.level[used.length - 1] + meanLean(), Math.sqrt(before.variance[used.length - 1])
    };
    return found;
  }

  private double residual(int i, int k) {
    return chairs[i].offMillis()[k] - common.level[knotOf[i][k]] - lean[i] - own[i].millis[k];
  }

  /** The weighted mean of the leans of those who played. */
  private double meanLean() {
    double sum = 0;
    double weights = 0;
    for (int i = 0; i < chairs.length; i++) {
      if (chairs[i].size() > 0) {
        sum += weight[i] * lean[i];
        weights += weight[i];
      }
    }
    return weights > 0 ? sum / weights : 0;
  }
}
