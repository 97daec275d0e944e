package thinclick.server.scoring.model;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The restricted likelihood of one player's attacks given what the player heard: a scalar Kalman
 * filter forwards, its exact gradient backwards, both linear in the events and free of allocation.
 *
 * <p>Parameters are the gains, then phi: the motor's share of the variance is q = sin^2 phi, the
 * timekeeper's cos^2 phi, so that phi is free and its ends are smooth. The common scale is
 * concentrated out. The positional means (flat prior) and the player's own tendency (ms a beat, a
 * weak proper prior) are columns of a generalised least-squares problem that the same filter
 * whitens.
 *
 * <p>Values are f = -2 log likelihood up to a constant. An instance holds the work space of one
 * track; it is not safe for use by several threads.
 */
final class Likelihood {
  /** Prior SD of a player's own tendency: half a percent of a beat, each beat. */
  static final double TENDENCY_SHARE = 0.005;

  /** What is estimated beside the gains and phi, and by which likelihood. */
  enum Kind {
    /** Restricted likelihood, means and tendency: what the figures use. */
    RESTRICTED,
    /** Plain maximum likelihood, means alone: comparable with a textbook time-series fit. */
    PLAIN_WITHOUT_TENDENCY
  }

  private final Track track;
  private final Kind kind;
  private final int columns;
  private final int tendency;
  private final int data;
  private final int dimension;
  private final double freedom;
  private final double tendencyVariance;

  private final Pass pass;
  private final double[] moments;
  private final double[] root;
  private final double[] meansInverse;
  private final double[] momentAdjoint;
  private final double[] own;
  private final double[] tilde;

  private double scale = Double.NaN;
  private double residual = Double.NaN;
  private int evaluations;

  Likelihood(Track track, Kind kind) {
    this.track = track;
    this.kind = kind;
    int means = track.positions;
    tendency = kind == Kind.RESTRICTED ? means : -1;
    columns = means + (tendency >= 0 ? 2 : 1);
    data = columns - 1;
    dimension = track.gains + 1;
    freedom =
        kind == Kind.PLAIN_WITHOUT_TENDENCY
            ? track.observed
            : track.observed - means - (tendency >= 0 ? 1 : 0);
    double sd = TENDENCY_SHARE * track.beatMillis;
    tendencyVariance = sd * sd;
    pass = new Pass(track, tendency >= 0);
    moments = new double[columns * columns];
    root = new double[columns * columns];
    meansInverse = new double[means * means];
    momentAdjoint = new double[columns * columns];
    own = new double[columns];
    tilde = new double[columns];
  }

  /** How many parameters: the gains and phi. */
  int dimension() {
    return dimension;
  }

  Track track() {
    return track;
  }

  /** Degrees of freedom of the scale. */
  double freedom() {
    return freedom;
  }

  /** The scale (ms2: Vc + Vm) that belongs to the last evaluation. */
  double scale() {
    return scale;
  }

  /** The whitened residual sum of squares (ms2) of the last evaluation. */
  double residual() {
    return residual;
  }

  /** How many passes were made, for measurement. */
  int evaluations() {
    return evaluations;
  }

  /** f at the parameters. */
  double at(double[] theta) {
    return evaluate(theta, null);
  }

  /** f at the parameters; its gradient goes into {@code gradient}. */
  double at(double[] theta, double[] gradient) {
    return evaluate(theta, gradient);
  }

  private double evaluate(double[] theta, double @Nullable [] gradient) {
    evaluations++;
    double sin = Math.sin(theta[dimension - 1]);
    double cos = Math.cos(theta[dimension - 1]);
    double motor = sin * sin;
    double timekeeper = cos * cos;
    double logs = pass.forward(theta, motor, timekeeper, moments);
    factor();
    double f = concentrate(logs);
    if (gradient != null) {
      adjoinMoments();
      pass.backward(theta, motor, timekeeper, momentAdjoint, gradient);
      gradient[dimension - 1] *= 2 * sin * cos;
    }
    return f;
  }

  /** Cholesky factor (lower) of the moments; a column without information gets a tiny pivot. */
  private void factor() {
    int n = columns;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = moments[i * n + j];
        for (int k = 0; k < j; k++) {
          sum -= root[i * n + k] * root[j * n + k];
        }
        if (i == j) {
          root[i * n + i] = Math.sqrt(Math.max(sum, 1e-12 * moments[i * n + i] + 1e-300));
        } else {
          root[i * n + j] = sum / root[j * n + j];
        }
      }
    }
  }

  /** Puts the best scale in place and returns f there. */
  private double concentrate(double logs) {
    int n = columns;
    double rss = root[data * n + data] * root[data * n + data];
    residual = rss;
    double f = logs;
    if (kind == Kind.PLAIN_WITHOUT_TENDENCY) {
      scale = rss / freedom;
      return f + freedom * (Math.log(scale) + 1);
    }
    for (int c = 0; c < track.positions; c++) {
      f += 2 * Math.log(root[c * n + c]);
    }
    if (tendency < 0) {
      scale = rss / freedom;
      return f + freedom * (Math.log(scale) + 1);
    }
    // The tendency's estimate is normal with variance scale / a + prior: one more observation.
    double prior = tendencyVariance * sq(root[tendency * n + tendency]);
    double drawn = sq(root[data * n + tendency]);
    double s = (rss + drawn) / (freedom + 1);
    for (int i = 0; i < 30; i++) {
      double w = 1 / (s + prior);
      // Derivatives with respect to log s.
      double slope = freedom - rss / s + s * w - drawn * s * w * w;
      double bend = rss / s + s * w * w * prior - drawn * s * w * w * (1 - 2 * s * w);
      double step = -slope / Math.max(bend, 0.25 * freedom);
      step = Math.max(-2, Math.min(2, step));
      s *= Math.exp(step);
      if (Math.abs(step) < 1e-10) {
        break;
      }
    }
    scale = s;
    return f + freedom * Math.log(s) + rss / s + Math.log(s + prior) + drawn / (s + prior);
  }

  /** Writes df/dmoments (symmetric) for the last evaluation. */
  private void adjoinMoments() {
    int n = columns;
    Arrays.fill(momentAdjoint, 0);
    int means = track.positions;
    if (kind != Kind.PLAIN_WITHOUT_TENDENCY) {
      invertMeans();
      for (int i = 0; i < means; i++) {
        for (int j = 0; j < means; j++) {
          momentAdjoint[i * n + j] = meansInverse[i * means + j];
        }
      }
    }
    if (tendency < 0) {
      contrast(data, data);
      addOuter(1 / scale);
      return;
    }
    double prior = tendencyVariance * sq(root[tendency * n + tendency]);
    double drawn = sq(root[data * n + tendency]);
    double w = 1 / (scale + prior);
    contrast(data, data);
    addOuter(1 / scale - w);
    contrast(data, tendency);
    addOuter(w);
    contrast(tendency, tendency);
    addOuter(tendencyVariance * (w - drawn * w * w));
  }

  /**
   * The coefficients (into {@code tilde}) of a column less its regression on all columns before
   * {@code upTo}: d(its residual sum of squares)/dmoments is their outer product.
   */
  private void contrast(int column, int upTo) {
    int n = columns;
    Arrays.fill(tilde, 0);
    tilde[column] = 1;
    for (int i = upTo - 1; i >= 0; i--) {
      double sum = -root[column * n + i];
      for (int k = i + 1; k < upTo; k++) {
        sum -= root[k * n + i] * tilde[k];
      }
      tilde[i] = sum / root[i * n + i];
    }
  }

  private void addOuter(double weight) {
    for (int i = 0; i < columns; i++) {
      for (int j = 0; j < columns; j++) {
        momentAdjoint[i * columns + j] += weight * tilde[i] * tilde[j];
      }
    }
  }

  private void invertMeans() {
    int means = track.positions;
    int n = columns;
    for (int c = 0; c < means; c++) {
      // Solve L L' x = unit vector c.
      for (int i = 0; i < means; i++) {
        double sum = i == c ? 1 : 0;
        for (int k = 0; k < i; k++) {
          sum -= root[i * n + k] * own[k];
        }
        own[i] = sum / root[i * n + i];
      }
      for (int i = means - 1; i >= 0; i--) {
        double sum = own[i];
        for (int k = i + 1; k < means; k++) {
          sum -= root[k * n + i] * own[k];
        }
        own[i] = sum / root[i * n + i];
        meansInverse[i * means + c] = own[i];
      }
    }
  }

  /**
   * The columns' estimates at the last evaluation: positional means (ms), then the tendency (ms a
   * beat, shrunk by its prior) where there is one.
   */
  double[] coefficients() {
    int n = columns;
    double[] beta = new double[columns - 1];
    for (int i = columns - 2; i >= 0; i--) {
      double sum = root[data * n + i];
      for (int k = i + 1; k < columns - 1; k++) {
        sum -= root[k * n + i] * beta[k];
      }
      beta[i] = sum / root[i * n + i];
      if (i == tendency) {
        double prior = tendencyVariance * sq(root[i * n + i]);
        beta[i] *= prior / (scale + prior);
      }
    }
    return beta;
  }

  /**
   * The covariance (ms2) of {@link #coefficients()} at the parameters of the last evaluation.
   *
   * @param scale Vc + Vm, taken as known, ms2
   */
  double[][] coefficientCovariance(double scale) {
    int n = columns - 1;
    double[][] precision = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        precision[i][j] = moments[i * columns + j] / scale;
        precision[j][i] = precision[i][j];
      }
    }
    if (tendency >= 0) {
      precision[tendency][tendency] += 1 / tendencyVariance;
    }
    return Symmetric.inverse(precision);
  }

  private static double sq(double x) {
    return x * x;
  }
}
