package thinclick.server.scoring;

/**
 * The course that all chairs share: a level with a tempo bias, moved by noise and drawn home by
 * clicks; filtered forwards, smoothed backwards.
 */
final class CommonCourse {
  /**
   * How freely it moves.
   *
   * @param level SD of the level's walk, ms per square root of a step
   * @param tempo SD of the tempo bias's walk, ms a step per square root of a step
   * @param pull the share of its distance that a click takes back
   */
  record Freedom(double level, double tempo, double pull) {}

  private static final double START = 100;
  private static final double START_TEMPO_PERCENT = 0.02;

  /** SD of what a click may take back beyond the mean pull, as a share of the distance. */
  private static final double PULL_DOUBT = 0.3;

  /** The same, at least, in the bar in which a click comes back: some jump home at once. */
  private static final double RETURN_DOUBT = 0.5;

  /** SD of the tempo that a band takes up when the click leaves it, as a share. */
  private static final double LEFT_TEMPO = 0.004;

  final int[] knots;
  final double[] level;
  final double[] tempo;
  final double[] variance;
  double logLikelihood;

  private final boolean[] clicked;
  private final boolean[] returning;
  private final boolean[] leaving;
  private final double[] home;
  private final double stepMillis;

  // the forward pass, kept from fit to fit: state and covariance after each knot, then foretold
  private final double[] x;
  private final double[] v;
  private final double[] p11;
  private final double[] p12;
  private final double[] p22;
  private final double[] x0;
  private final double[] v0;
  private final double[] q11;
  private final double[] q12;
  private final double[] q22;

  /**
   * A course over these steps.
   *
   * @param clicked whether a click sounds on each
   * @param home the level at which the band would be on the click there, ms
   */
  CommonCourse(int[] knots, boolean[] clicked, double[] home, double stepMillis, int stepsPerBar) {
    returning = returning(knots, clicked, stepsPerBar);
    leaving = leaving(knots, clicked, stepsPerBar);
    this.home = home;
    this.knots = knots;
    this.clicked = clicked;
    this.stepMillis = stepMillis;
    level = new double[knots.length];
    tempo = new double[knots.length];
    variance = new double[knots.length];
    x = new double[knots.length];
    v = new double[knots.length];
    p11 = new double[knots.length];
    p12 = new double[knots.length];
    p22 = new double[knots.length];
    x0 = new double[knots.length];
    v0 = new double[knots.length];
    q11 = new double[knots.length];
    q12 = new double[knots.length];
    q22 = new double[knots.length];
  }

  /** The clicks within a bar of the first after at least two silent bars. */
  private static boolean[] returning(int[] knots, boolean[] clicked, int stepsPerBar) {
    boolean[] returning = new boolean[knots.length];
    int last = 0;
    int back = Integer.MIN_VALUE / 2;
    for (int k = 0; k < knots.length; k++) {
      if (clicked[k]) {
        back = knots[k] - last >= 2 * stepsPerBar ? knots[k] : back;
        last = knots[k];
        returning[k] = knots[k] - back < stepsPerBar;
      }
    }
    return returning;
  }

  /** The clicks after which nothing clicks for a bar at least. */
  private static boolean[] leaving(int[] knots, boolean[] clicked, int stepsPerBar) {
    boolean[] leaving = new boolean[knots.length];
    int next = Integer.MAX_VALUE;
    for (int k = knots.length - 1; k >= 0; k--) {
      if (clicked[k]) {
        leaving[k] = next - knots[k] >= stepsPerBar;
        next = knots[k];
      }
    }
    return leaving;
  }

  /**
   * Fits the course to observations pooled by knot.
   *
   * @param sum precision-weighted sum of the observations at each knot
   * @param precision their summed precision, 1/ms2; 0 where there is none
   * @param smooth false to stop at the likelihood
   */
  void fit(double[] sum, double[] precision, Freedom freedom, boolean smooth) {
    int n = knots.length;
    double levelVariance = freedom.level() * freedom.level();
    double tempoVariance = freedom.tempo() * freedom.tempo();
    double cx = 0;
    double cv = 0;
    double c11 = START * START;
    double c12 = 0;
    double c22 = START_TEMPO_PERCENT * stepMillis * START_TEMPO_PERCENT * stepMillis;
    double squares = 0;
    LogProduct variances = new LogProduct();
    for (int k = 0; k < n; k++) {
      if (k > 0) {
        double gap = knots[k] - knots[k - 1];
        cx += cv * gap;
        c11 += 2 * gap * c12 + gap * gap * c22 + levelVariance * gap;
        c12 += gap * c22;
        c22 += tempoVariance * gap;
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
        variances.times(s);
        squares += error * error / s;
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
      if (clicked[k]) {
        double keep = 1 - freedom.pull();
        double unsure = freedom.pull() * PULL_DOUBT;
        double doubt = Math.max(unsure, returning[k] ? RETURN_DOUBT : 0) * (cx - home[k]);
        c11 = keep * keep * c11 + doubt * doubt;
        c12 *= keep * keep;
        c22 *= keep * keep;
        cx = home[k] + keep * (cx - home[k]);
        cv *= keep;
        c22 += freedom.pull() * tempoVariance * 4;
        if (leaving[k]) {
          c22 += LEFT_TEMPO * stepMillis * LEFT_TEMPO * stepMillis;
        }
      }
    }
    logLikelihood = -0.5 * (variances.log() + squares);
    if (!smooth) {
      return;
    }
    level[n - 1] = x[n - 1];
    tempo[n - 1] = v[n - 1];
    variance[n - 1] = p11[n - 1];
    double s11 = p11[n - 1];
    double s12 = p12[n - 1];
    double s22 = p22[n - 1];
    for (int k = n - 2; k >= 0; k--) {
      double gap = knots[k + 1] - knots[k];
      double keep = clicked[k] ? 1 - freedom.pull() : 1;
      // smoother gain = P F' (predicted P)^-1 with F = keep * [[1, gap], [0, 1]]
      double a11 = keep * (p11[k] + gap * p12[k]);
      double a12 = keep * p12[k];
      double a21 = keep * (p12[k] + gap * p22[k]);
      double a22 = keep * p22[k];
      double det = q11[k + 1] * q22[k + 1] - q12[k + 1] * q12[k + 1];
      double i11 = q22[k + 1] / det;
      double i12 = -q12[k + 1] / det;
      double i22 = q11[k + 1] / det;
      double g11 = a11 * i11 + a12 * i12;
      double g12 = a11 * i12 + a12 * i22;
      double g21 = a21 * i11 + a22 * i12;
      double g22 = a21 * i12 + a22 * i22;
      double dx = level[k + 1] - x0[k + 1];
      double dv = tempo[k + 1] - v0[k + 1];
      double d11 = s11 - q11[k + 1];
      double d12 = s12 - q12[k + 1];
      double d22 = s22 - q22[k + 1];
      level[k] = x[k] + g11 * dx + g12 * dv;
      tempo[k] = v[k] + g21 * dx + g22 * dv;
      double n11 = p11[k] + g11 * (d11 * g11 + d12 * g12) + g12 * (d12 * g11 + d22 * g12);
      double n12 = p12[k] + g11 * (d11 * g21 + d12 * g22) + g12 * (d12 * g21 + d22 * g22);
      double n22 = p22[k] + g21 * (d11 * g21 + d12 * g22) + g22 * (d12 * g21 + d22 * g22);
      s11 = n11;
      s12 = n12;
      s22 = n22;
      variance[k] = Math.max(0, s11);
    }
  }

  /** The level at a step, ms; between knots on the line, beyond them with the last tempo. */
  double at(int step) {
    int n = knots.length;
    if (n == 0) {
      return 0;
    }
    int found = java.util.Arrays.binarySearch(knots, step);
    if (found >= 0) {
      return level[found];
    }
    int after = -found - 1;
    if (after == 0) {
      return level[0] - tempo[0] * Math.min(knots[0] - step, BEYOND);
    }
    if (after == n) {
      return level[n - 1] + tempo[n - 1] * Math.min(step - knots[n - 1], BEYOND);
    }
    double share = (double) (step - knots[after - 1]) / (knots[after] - knots[after - 1]);
    return level[after - 1] + share * (level[after] - level[after - 1]);
  }

  /** Beyond the first and last attack the tempo bias is trusted for so many steps. */
  private static final int BEYOND = 16;
}
