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
  /** How freely the parts may move. SD in ms per square root of a step; noise in ms. */
  record Freedom(double common, double tempo, double own, double ownSteps, double click) {}

  private static final int ROUNDS = 4;

  private final Observed[] chairs;
  private final double[] weight;
  private final int[] clicks;
  private final Freedom freedom;
  private final int[] knots;
  private final double[] common;
  private final double[] commonVariance;
  private final double[] lean;
  private final double[][] own;
  private final double[][] ownVariance;
  private final double[] noise;

  /**
   * Fits all of it.
   *
   * @param chairs what each chair tells
   * @param weight how much each counts
   * @param clicks steps of clicks that pull the common course to 0; none where it is to be free
   * @param noise a first guess of each chair's attack noise, ms
   */
  Pulse(Observed[] chairs, double[] weight, int[] clicks, double[] noise, Freedom freedom) {
    this.chairs = chairs;
    this.weight = weight;
    this.clicks = clicks;
    this.freedom = freedom;
    this.noise = noise.clone();
    knots = knots(chairs, clicks);
    common = new double[knots.length];
    commonVariance = new double[knots.length];
    lean = new double[chairs.length];
    own = new double[chairs.length][];
    ownVariance = new double[chairs.length][];
    for (int i = 0; i < chairs.length; i++) {
      own[i] = new double[chairs[i].size()];
      ownVariance[i] = new double[chairs[i].size()];
    }
    for (int round = 0; round < ROUNDS; round++) {
      fitLeans();
      fitCommon();
      fitLeans();
      for (int i = 0; i < chairs.length; i++) {
        fitOwn(i);
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

  /** A lean is the mean of what the common course and the own wander leave over. */
  private void fitLeans() {
    for (int i = 0; i < chairs.length; i++) {
      Observed chair = chairs[i];
      double sum = 0;
      double weights = 0;
      int knot = 0;
      for (int k = 0; k < chair.size(); k++) {
        knot = knotAt(chair.at()[k], knot);
        double rest = chair.offMillis()[k] - common[knot] - own[i][k];
        double w = 1 / chair.doubt()[k];
        sum += w * rest;
        weights += w;
      }
      lean[i] = weights > 0 ? sum / weights : 0;
    }
  }

  private int knotAt(int step, int from) {
    int knot = from;
    while (knots[knot] < step) {
      knot++;
    }
    return knots[knot] == step ? knot : Arrays.binarySearch(knots, step);
  }

  /** Kalman filter and smoother over (course, tempo bias). */
  private void fitCommon() {
    int n = knots.length;
    if (n == 0) {
      return;
    }
    double[] sum = new double[n];
    double[] precision = new double[n];
    for (int i = 0; i < chairs.length; i++) {
      Observed chair = chairs[i];
      int knot = 0;
      for (int k = 0; k < chair.size(); k++) {
        knot = knotAt(chair.at()[k], knot);
        double p = 1 / (noise[i] * noise[i] * chair.doubt()[k]);
        sum[knot] += p * (chair.offMillis()[k] - lean[i] - own[i][k]);
        precision[knot] += p;
      }
    }
    int knot = 0;
    for (int click : clicks) {
      knot = knotAt(click, knot);
      precision[knot] += 1 / (freedom.click() * freedom.click());
    }
    double[] x = new double[n];
    double[] v = new double[n];
    double[] p11 = new double[n];
    double[] p12 = new double[n];
    double[] p22 = new double[n];
    double[] x0 = new double[n];
    double[] v0 = new double[n];
    double[] q11 = new double[n];
    double[] q12 = new double[n];
    double[] q22 = new double[n];
    double cx = 0;
    double cv = 0;
    double c11 = 200 * 200;
    double c12 = 0;
    double c22 = freedom.tempo() * freedom.tempo() * 100;
    for (int k = 0; k < n; k++) {
      if (k > 0) {
        double gap = knots[k] - knots[k - 1];
        cx += cv * gap;
        c11 += 2 * gap * c12 + gap * gap * c22 + freedom.common() * freedom.common() * gap;
        c12 += gap * c22;
        c22 += freedom.tempo() * freedom.tempo() * gap;
      }
      x0[k] = cx;
      v0[k] = cv;
      q11[k] = c11;
      q12[k] = c12;
      q22[k] = c22;
      if (precision[k] > 0) {
        double s = c11 + 1 / precision[k];
        double g1 = c11 / s;
        double g2 = c12 / s;
        double error = sum[k] / precision[k] - cx;
        cx += g1 * error;
        cv += g2 * error;
        c22 -= g2 * c12;
        c12 -= g1 * c12;
        c11 -= g1 * c11;
      }
      x[k] = cx;
      v[k] = cv;
      p11[k] = c11;
      p12[k] = c12;
      p22[k] = c22;
    }
    double sx = x[n - 1];
    double sv = v[n - 1];
    double s11 = p11[n - 1];
    double s12 = p12[n - 1];
    double s22 = p22[n - 1];
    common[n - 1] = sx;
    commonVariance[n - 1] = s11;
    for (int k = n - 2; k >= 0; k--) {
      double gap = knots[k + 1] - knots[k];
      // gain = P F' (predicted P)^-1
      double a11 = p11[k] + gap * p12[k];
      double a12 = p12[k];
      double a21 = p12[k] + gap * p22[k];
      double a22 = p22[k];
      double det = q11[k + 1] * q22[k + 1] - q12[k + 1] * q12[k + 1];
      double i11 = q22[k + 1] / det;
      double i12 = -q12[k + 1] / det;
      double i22 = q11[k + 1] / det;
      double g11 = a11 * i11 + a12 * i12;
      double g12 = a11 * i12 + a12 * i22;
      double g21 = a21 * i11 + a22 * i12;
      double g22 = a21 * i12 + a22 * i22;
      double dx = sx - x0[k + 1];
      double dv = sv - v0[k + 1];
      double d11 = s11 - q11[k + 1];
      double d12 = s12 - q12[k + 1];
      double d22 = s22 - q22[k + 1];
      sx = x[k] + g11 * dx + g12 * dv;
      sv = v[k] + g21 * dx + g22 * dv;
      double n11 = p11[k] + g11 * (d11 * g11 + d12 * g12) + g12 * (d12 * g11 + d22 * g12);
      double n12 = p12[k] + g11 * (d11 * g21 + d12 * g22) + g12 * (d12 * g21 + d22 * g22);
      double n22 = p22[k] + g21 * (d11 * g21 + d12 * g22) + g22 * (d12 * g21 + d22 * g22);
      s11 = n11;
      s12 = n12;
      s22 = n22;
      common[k] = sx;
      commonVariance[k] = s11;
    }
  }

  /** A chair's own wander: an attraction back to its lean, driven by noise. */
  private void fitOwn(int i) {
    Observed chair = chairs[i];
    int n = chair.size();
    if (n == 0 || freedom.own() <= 0) {
      return;
    }
    double still = freedom.own() * freedom.own() * freedom.ownSteps() / 2;
    double[] x = new double[n];
    double[] p = new double[n];
    double[] x0 = new double[n];
    double[] p0 = new double[n];
    double[] keep = new double[n];
    double cx = 0;
    double cp = still;
    int knot = 0;
    for (int k = 0; k < n; k++) {
      if (k > 0) {
        double gap = Math.max(0, chair.at()[k] - chair.at()[k - 1]);
        keep[k] = Math.exp(-gap / freedom.ownSteps());
        cx *= keep[k];
        cp = keep[k] * keep[k] * cp + still * (1 - keep[k] * keep[k]);
      }
      x0[k] = cx;
      p0[k] = cp;
      knot = knotAt(chair.at()[k], knot);
      double r = noise[i] * noise[i] * chair.doubt()[k];
      double g = cp / (cp + r);
      cx += g * (chair.offMillis()[k] - common[knot] - lean[i] - cx);
      cp -= g * cp;
      x[k] = cx;
      p[k] = cp;
    }
    own[i][n - 1] = x[n - 1];
    ownVariance[i][n - 1] = p[n - 1];
    for (int k = n - 2; k >= 0; k--) {
      double g = p[k] * keep[k + 1] / p0[k + 1];
      own[i][k] = x[k] + g * (own[i][k + 1] - x0[k + 1]);
      ownVariance[i][k] = p[k] + g * g * (ownVariance[i][k + 1] - p0[k + 1]);
    }
  }

  private void fitNoise(int i) {
    Observed chair = chairs[i];
    int n = chair.size();
    if (n < 4) {
      return;
    }
    double[] rest = new double[n];
    int knot = 0;
    for (int k = 0; k < n; k++) {
      knot = knotAt(chair.at()[k], knot);
      rest[k] = Math.abs(chair.offMillis()[k] - common[knot] - lean[i] - own[i][k]);
    }
    Arrays.sort(rest);
    double median = rest[n / 2];
    noise[i] = Math.min(60, Math.max(1, 1.4826 * median));
  }

  /** The common course at a step, ms from its place. */
  double commonAt(int step) {
    if (knots.length == 0) {
      return 0;
    }
    int found = Arrays.binarySearch(knots, step);
    if (found >= 0) {
      return common[found];
    }
    int after = -found - 1;
    if (after == 0) {
      return common[0];
    }
    if (after == knots.length) {
      return common[after - 1];
    }
    double share = (double) (step - knots[after - 1]) / (knots[after] - knots[after - 1]);
    return common[after - 1] + share * (common[after] - common[after - 1]);
  }

  /** A chair's own wander at a step, ms. */
  double ownAt(int i, int step) {
    int[] at = chairs[i].at();
    if (at.length == 0) {
      return 0;
    }
    int found = Arrays.binarySearch(at, step);
    if (found >= 0) {
      return own[i][found];
    }
    int after = -found - 1;
    if (after == 0) {
      return own[i][0] * Math.exp(-(at[0] - step) / freedom.ownSteps());
    }
    if (after == at.length) {
      return own[i][after - 1] * Math.exp(-(step - at[after - 1]) / freedom.ownSteps());
    }
    double share = (double) (step - at[after - 1]) / (at[after] - at[after - 1]);
    return own[i][after - 1] + share * (own[i][after] - own[i][after - 1]);
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

  double lean(int i) {
    return lean[i];
  }

  double noise(int i) {
    return noise[i];
  }
}
