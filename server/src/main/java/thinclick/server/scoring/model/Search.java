package thinclick.server.scoring.model;

import java.util.Arrays;

/**
 * Finds the parameters of the highest likelihood: a coarse grid against false valleys, then BFGS
 * with the exact gradient and a line search that never goes up. Deterministic.
 *
 * <p>A general library's optimisers take no gradient in several dimensions without allocation at
 * every step; this one stays inside the likelihood's work space and needs some ten passes.
 */
final class Search {
  /** Gains outside this span are never tried. */
  static final double LEAST_GAIN = -1;

  static final double MOST_GAIN = 2;

  private static final int MOST_STEPS = 60;
  private static final double ENOUGH = 1e-9;
  private static final double[] CLICK_STARTS = {0.1, 0.4, 0.8};
  private static final double[] HEARD_STARTS = {0.02, 0.12, 0.3};
  private static final double[] PHI_STARTS = {0.3, 0.75, 1.2};

  private final Likelihood likelihood;
  private final int dimension;

  Search(Likelihood likelihood) {
    this.likelihood = likelihood;
    dimension = likelihood.dimension();
  }

  /** The best parameters found from the coarse grid. */
  double[] best() {
    double[] tried = new double[dimension];
    double[] start = new double[dimension];
    double least = Double.POSITIVE_INFINITY;
    int gainStarts = dimension > 1 ? CLICK_STARTS.length : 1;
    for (int i = 0; i < gainStarts; i++) {
      Arrays.fill(tried, HEARD_STARTS[i]);
      int click = likelihood.track().clickGain;
      if (click >= 0) {
        tried[click] = CLICK_STARTS[i];
      }
      for (double phi : PHI_STARTS) {
        tried[dimension - 1] = phi;
        double f = likelihood.at(tried);
        if (f < least) {
          least = f;
          System.arraycopy(tried, 0, start, 0, dimension);
        }
      }
    }
    return from(start);
  }

  /** Descends from a start. */
  double[] from(double[] start) {
    int n = dimension;
    double[] x = start.clone();
    double[] gradient = new double[n];
    double[] next = new double[n];
    double[] nextGradient = new double[n];
    double[] step = new double[n];
    double[] change = new double[n];
    double[] product = new double[n];
    double[][] inverse = new double[n][n];
    double f = likelihood.at(x, gradient);
    boolean fresh = true;
    reset(inverse);
    for (int iteration = 0; iteration < MOST_STEPS; iteration++) {
      double slope = 0;
      for (int i = 0; i < n; i++) {
        double sum = 0;
        for (int j = 0; j < n; j++) {
          sum -= inverse[i][j] * gradient[j];
        }
        step[i] = sum;
        slope += sum * gradient[i];
      }
      if (-slope < ENOUGH) {
        break;
      }
      double length = Math.min(1, longest(x, step));
      double reached = Double.NaN;
      boolean descended = false;
      for (int halvings = 0; halvings < 30; halvings++) {
        for (int i = 0; i < n; i++) {
          next[i] = x[i] + length * step[i];
        }
        reached = likelihood.at(next, nextGradient);
        if (reached <= f + 1e-4 * length * slope) {
          descended = true;
          break;
        }
        // The lowest point of the parabola through what is known, kept off the ends.
        double turn = -slope * length * length / (2 * (reached - f - slope * length));
        length = Double.isFinite(turn) ? clamp(turn, 0.1 * length, 0.5 * length) : 0.1 * length;
      }
      if (!descended) {
        if (fresh) {
          break;
        }
        reset(inverse);
        fresh = true;
        continue;
      }
      double curvature = 0;
      double turned = 0;
      for (int i = 0; i < n; i++) {
        double moved = next[i] - x[i];
        step[i] = moved;
        change[i] = nextGradient[i] - gradient[i];
        curvature += moved * change[i];
        turned += change[i] * change[i];
      }
      System.arraycopy(next, 0, x, 0, n);
      System.arraycopy(nextGradient, 0, gradient, 0, n);
      boolean settled = f - reached < ENOUGH;
      f = reached;
      if (curvature > 1e-12 * turned) {
        if (fresh) {
          for (double[] row : inverse) {
            Arrays.fill(row, 0);
          }
          for (int i = 0; i < n; i++) {
            inverse[i][i] = curvature / turned;
          }
          fresh = false;
        }
        update(inverse, step, change, product, curvature);
      }
      if (settled) {
        break;
      }
    }
    return x;
  }

  /** The longest multiple of the step that keeps every gain in its span and phi within a turn. */
  private double longest(double[] x, double[] step) {
    double most = 1;
    for (int i = 0; i < dimension; i++) {
      double low = i == dimension - 1 ? x[i] - 0.7 : Math.max(LEAST_GAIN, x[i] - 0.5);
      double high = i == dimension - 1 ? x[i] + 0.7 : Math.min(MOST_GAIN, x[i] + 0.5);
      if (x[i] + most * step[i] > high) {
        most = (high - x[i]) / step[i];
      } else if (x[i] + most * step[i] < low) {
        most = (low - x[i]) / step[i];
      }
    }
    return most;
  }

  private void reset(double[][] inverse) {
    for (int i = 0; i < dimension; i++) {
      Arrays.fill(inverse[i], 0);
      inverse[i][i] = 0.5 / Math.max(8, likelihood.freedom());
    }
  }

  private static void update(
      double[][] inverse, double[] step, double[] change, double[] product, double curvature) {
    int n = step.length;
    double bend = 0;
    for (int i = 0; i < n; i++) {
      double sum = 0;
      for (int j = 0; j < n; j++) {
        sum += inverse[i][j] * change[j];
      }
      product[i] = sum;
      bend += sum * change[i];
    }
    double first = (1 + bend / curvature) / curvature;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        inverse[i][j] +=
            first * step[i] * step[j] - (product[i] * step[j] + step[i] * product[j]) / curvature;
      }
    }
  }

  private static double clamp(double x, double low, double high) {
    return Math.max(low, Math.min(high, x));
  }
}
