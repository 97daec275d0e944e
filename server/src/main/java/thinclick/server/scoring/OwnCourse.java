package thinclick.server.scoring;

import java.util.Arrays;

/**
 * One chair's own wander about its lean and the common course: an attraction back to nothing,
 * driven by noise, from the chair's attacks, forwards and backwards.
 */
final class OwnCourse {
  /** After so many steps a wander has mostly come home. */
  private static final double HOME_STEPS = 12;

  /** What a gap leaves of it, by steps. */
  private static final double[] FADES = new double[64];

  static {
    Arrays.setAll(FADES, gap -> Math.exp(-gap / HOME_STEPS));
  }

  private static final double[] WALKS = {0.01, 0.5, 1, 2, 4, 8};

  /** How what is left of an attack is weighed. */
  interface Noise {
    /**
     * The variance of one attack, ms2.
     *
     * @param k which attack
     * @param rest what the wander foretold leaves of it, ms
     */
    double variance(int k, double rest);
  }

  /** The steps of the attacks, ascending. */
  final int[] at;

  /** The wander at each attack, ms, and its variance. */
  final double[] millis;

  final double[] variance;

  private double walk;

  /**
   * No wander yet.
   *
   * @param walk how freely it may move, ms per square root of a step
   */
  OwnCourse(int[] at, double walk) {
    this.at = at;
    this.walk = walk;
    millis = new double[at.length];
    variance = new double[at.length];
  }

  /** The variance of a wander of which nothing is known, ms2. */
  double stillVariance() {
    return walk * walk * HOME_STEPS / 2;
  }

  /** Chooses, of a few, how freely it may move. */
  void search(double[] rest, Noise noise) {
    double best = Double.NEGATIVE_INFINITY;
    double chosen = walk;
    for (double tried : WALKS) {
      walk = tried;
      double likely = fit(rest, noise, false);
      if (likely > best) {
        best = likely;
        chosen = tried;
      }
    }
    walk = chosen;
  }

  /** Fits it to what common course and lean leave of each attack, ms. */
  void fit(double[] rest, Noise noise) {
    fit(rest, noise, true);
  }

  private double fit(double[] rest, Noise noise, boolean smooth) {
    int n = at.length;
    if (n == 0) {
      return 0;
    }
    double still = stillVariance();
    double[] x = new double[n];
    double[] p = new double[n];
    double[] x0 = new double[n];
    double[] p0 = new double[n];
    double[] keep = new double[n];
    double cx = 0;
    double cp = still;
    double squares = 0;
    LogProduct variances = new LogProduct();
    for (int k = 0; k < n; k++) {
      if (k > 0) {
        keep[k] = fade(Math.max(0, at[k] - at[k - 1]));
        cx *= keep[k];
        cp = keep[k] * keep[k] * cp + still * (1 - keep[k] * keep[k]);
      }
      x0[k] = cx;
      p0[k] = cp;
      double error = rest[k] - cx;
      double s = cp + noise.variance(k, error);
      double g = cp / s;
      variances.times(s);
      squares += error * error / s;
      cx += g * error;
      cp -= g * cp;
      x[k] = cx;
      p[k] = cp;
    }
    double likely = -0.5 * (variances.log() + squares);
    if (!smooth) {
      return likely;
    }
    millis[n - 1] = x[n - 1];
    variance[n - 1] = p[n - 1];
    for (int k = n - 2; k >= 0; k--) {
      double g = p0[k + 1] > 0 ? p[k] * keep[k + 1] / p0[k + 1] : 0;
      millis[k] = x[k] + g * (millis[k + 1] - x0[k + 1]);
      variance[k] = Math.max(0, p[k] + g * g * (variance[k + 1] - p0[k + 1]));
    }
    return likely;
  }

  private static double fade(int gap) {
    return gap < FADES.length ? FADES[gap] : Math.exp(-gap / HOME_STEPS);
  }

  /** The wander at a step, ms: between attacks on the line, beyond them fading. */
  double at(int step) {
    if (at.length == 0) {
      return 0;
    }
    int found = Arrays.binarySearch(at, step);
    if (found >= 0) {
      return millis[found];
    }
    int after = -found - 1;
    if (after == 0) {
      return millis[0] * Math.exp(-(at[0] - step) / HOME_STEPS);
    }
    if (after == at.length) {
      return millis[after - 1] * Math.exp(-(step - at[after - 1]) / HOME_STEPS);
    }
    double share = (double) (step - at[after - 1]) / (at[after] - at[after - 1]);
    return millis[after - 1] + share * (millis[after] - millis[after - 1]);
  }

  /** The variance at the attack on a step or the next after it, ms2; 0 without attacks. */
  double varianceFrom(int step) {
    int k = Arrays.binarySearch(at, step);
    if (k < 0) {
      k = Math.min(at.length - 1, -k - 1);
    }
    return k < 0 ? 0 : variance[k];
  }
}
