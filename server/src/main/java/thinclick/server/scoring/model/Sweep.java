package thinclick.server.scoring.model;

import java.util.Arrays;

/**
 * What the attacks say about gains and noises together: a sweep over phi, at each value the gains
 * at their best and their curvature there. Given phi the likelihood is close to quadratic in the
 * gains; over phi it is not (it may be flat, or highest at an end), so phi is never approximated.
 *
 * <p>Weights over phi are the likelihood's; a flat weight in phi is sqrt(q (1 - q)) on the logistic
 * scale of the motor's share q (Jeffreys' prior of a share).
 */
final class Sweep {
  /** So many points fill the span between the nodes. */
  private static final int POINTS = 97;

  /** Every how many points are asked for a forecast. */
  private static final int FORETELL_STRIDE = 4;

  private final int gains;
  private final double freedom;
  private final double[] phi = new double[POINTS];
  private final double[] scale = new double[POINTS];

  /** How far f lies above its least value. */
  private final double[] rise = new double[POINTS];

  /** The best gains at each point. */
  private final double[][] best;

  /** Variance of each gain given phi. */
  private final double[][] variance;

  /** Sums to 1. */
  private final double[] weight = new double[POINTS];

  /** The point with the highest likelihood, or -1 where the fit itself has it. */
  private final int highest;

  /** The point nearest to the best. */
  private final int nearest;

  private final Fit fit;

  private Sweep(SweepNodes nodes, Fit fit) {
    this.fit = fit;
    gains = nodes.gains;
    freedom = nodes.likelihood.freedom();
    best = new double[POINTS][gains];
    variance = new double[POINTS][gains];
    int count = nodes.phi.length;
    double least = fit.least;
    int lowest = -1;
    for (int i = 0; i < POINTS; i++) {
      double place = (double) i * (count - 1) / (POINTS - 1);
      int middle = Math.max(1, Math.min(count - 2, (int) Math.round(place)));
      double t = place - middle;
      // The parabola through three nodes.
      double before = 0.5 * t * (t - 1);
      double at = 1 - t * t;
      double after = 0.5 * t * (t + 1);
      phi[i] = nodes.phi[0] + (nodes.phi[count - 1] - nodes.phi[0]) * i / (POINTS - 1);
      rise[i] = before * nodes.f[middle - 1] + at * nodes.f[middle] + after * nodes.f[middle + 1];
      int low = Math.min(count - 2, (int) place);
      double share = place - low;
      // Straight between nodes where a parabola might dip below zero.
      scale[i] = nodes.scale[low] + share * (nodes.scale[low + 1] - nodes.scale[low]);
      for (int c = 0; c < gains; c++) {
        best[i][c] =
            before * nodes.best[middle - 1][c]
                + at * nodes.best[middle][c]
                + after * nodes.best[middle + 1][c];
        variance[i][c] =
            nodes.variance[low][c] + share * (nodes.variance[low + 1][c] - nodes.variance[low][c]);
      }
      if (rise[i] < least) {
        least = rise[i];
        // A hair below the fit is the parabola's own error.
        lowest = rise[i] < fit.least - 0.05 ? i : -1;
      }
    }
    highest = lowest;
    double bestPhi = lowest < 0 ? fit.phi() : phi[lowest];
    int close = 0;
    double leastRise = Double.POSITIVE_INFINITY;
    for (int i = 0; i < POINTS; i++) {
      rise[i] -= least;
      leastRise = Math.min(leastRise, rise[i]);
      close = Math.abs(phi[i] - bestPhi) < Math.abs(phi[close] - bestPhi) ? i : close;
    }
    nearest = close;
    double sum = 0;
    for (int i = 0; i < POINTS; i++) {
      weight[i] = Math.exp(0.5 * (leastRise - rise[i]));
      sum += weight[i];
    }
    for (int i = 0; i < POINTS; i++) {
      weight[i] /= sum;
    }
  }

  /** Sweeps around a fit. */
  static Sweep of(Fit fit) {
    return new Sweep(SweepNodes.around(fit), fit);
  }

  /** The best value of a gain. */
  double gain(int gain) {
    return highest < 0 ? fit.theta[gain] : best[highest][gain];
  }

  /**
   * The profile-likelihood interval of a gain.
   *
   * @param z the normal quantile of the level: 1.645 for 90 %, 1.960 for 95 %
   */
  Interval gain(int gain, double z) {
    // The best itself lies between two points, perhaps on a ridge narrower than they are apart.
    double around = z * Math.sqrt(variance[nearest][gain]);
    double low = gain(gain) - around;
    double high = gain(gain) + around;
    for (int i = 0; i < POINTS; i++) {
      double left = z * z - rise[i];
      if (left >= 0) {
        double reach = Math.sqrt(left * variance[i][gain]);
        low = Math.min(low, best[i][gain] - reach);
        high = Math.max(high, best[i][gain] + reach);
      }
    }
    return new Interval(SweepNodes.clamp(low), SweepNodes.clamp(high));
  }

  /** Standard error of a gain over the whole sweep. */
  double standardError(int gain) {
    double mean = 0;
    for (int i = 0; i < POINTS; i++) {
      mean += weight[i] * best[i][gain];
    }
    double sum = 0;
    for (int i = 0; i < POINTS; i++) {
      double away = best[i][gain] - mean;
      sum += weight[i] * (variance[i][gain] + away * away);
    }
    return Math.sqrt(sum);
  }

  /** Quantiles of the timekeeper's SD for a beat, ms. */
  double[] timekeeperSd(double... probabilities) {
    double[] cosines = new double[POINTS];
    Arrays.setAll(cosines, i -> Math.cos(phi[i]));
    return quantiles(cosines, probabilities);
  }

  /** Quantiles of the motor SD, ms. */
  double[] motorSd(double... probabilities) {
    double[] sines = new double[POINTS];
    Arrays.setAll(sines, i -> Math.sin(phi[i]));
    return quantiles(sines, probabilities);
  }

  /**
   * Quantiles of share times the root of the scale. Given phi, freedom scale / chi2 is the scale's
   * posterior; Wilson and Hilferty's cube root makes the chi2 normal.
   */
  private double[] quantiles(double[] share, double[] probabilities) {
    double spread = 2 / (9 * freedom);
    double root = Math.sqrt(spread);
    double[] cube = new double[POINTS];
    double most = 0;
    for (int i = 0; i < POINTS; i++) {
      cube[i] = Math.cbrt(scale[i] * share[i] * share[i]);
      most = Math.max(most, scale[i]);
    }
    double[] found = new double[probabilities.length];
    for (int p = 0; p < probabilities.length; p++) {
      double low = 0;
      double high = 2 * Math.sqrt(most) * (1 + 4 / Math.sqrt(freedom));
      for (int step = 0; step < 14; step++) {
        double middle = 0.5 * (low + high);
        double cubed = 1 / Math.cbrt(middle * middle);
        double below = 0;
        for (int i = 0; i < POINTS; i++) {
          if (weight[i] > 1e-7) {
            below += weight[i] * Normal.below((1 - spread - cube[i] * cubed) / root);
          }
        }
        if (below < probabilities[p]) {
          low = middle;
        } else {
          high = middle;
        }
      }
      found[p] = 0.5 * (low + high);
    }
    return found;
  }

  /** Something that a player's parameters foretell, in units of the scale Vc + Vm. */
  interface Foretold {
    /**
     * Asks at one value of the parameters.
     *
     * @param gain the click's gain
     * @param timekeeper Vc over Vc + Vm
     * @param motor Vm over Vc + Vm
     * @param answer the expected variance over Vc + Vm, then its degrees of freedom (infinite for a
     *     variance that is not itself counted from few attacks)
     */
    void at(double gain, double timekeeper, double motor, double[] answer);
  }

  /**
   * A foretold standard deviation over all that the parameters may be: its expectation, then its
   * quantiles.
   *
   * @param clickGain the index of the click's gain
   */
  double[] foretell(int clickGain, Foretold foretold, double... probabilities) {
    int count = (POINTS - 1) / FORETELL_STRIDE + 1;
    double[] expected = new double[3 * count];
    double[] counted = new double[3 * count];
    double[] weights = new double[3 * count];
    double[] answer = new double[2];
    double sum = 0;
    double mean = 0;
    double most = 0;
    for (int i = 0; i < 3 * count; i++) {
      int point = i / 3 * FORETELL_STRIDE;
      int side = i % 3 - 1;
      // Three nodes of Gauss and Hermite stand for the normal gain given phi.
      double away = side * Math.sqrt(3 * variance[point][clickGain]);
      double gain = Math.max(0.02, Math.min(1.9, best[point][clickGain] + away));
      double cos = Math.cos(phi[point]);
      weights[i] = weight[point] * (side == 0 ? 2.0 / 3 : 1.0 / 6);
      if (weights[i] < 1e-9) {
        continue;
      }
      foretold.at(gain, cos * cos, 1 - cos * cos, answer);
      expected[i] = scale[point] * answer[0];
      counted[i] = answer[1];
      sum += weights[i];
      mean += weights[i] * Math.sqrt(expected[i]);
      most = Math.max(most, expected[i]);
    }
    double[] found = new double[probabilities.length + 1];
    found[0] = mean / sum;
    for (int p = 0; p < probabilities.length; p++) {
      double low = 0;
      double high = 4 * Math.sqrt(most);
      for (int step = 0; step < 16; step++) {
        double middle = 0.5 * (low + high);
        double below = 0;
        for (int i = 0; i < weights.length; i++) {
          if (weights[i] >= 1e-9) {
            below +=
                weights[i] * Normal.fisherBelow(middle * middle / expected[i], counted[i], freedom);
          }
        }
        if (below < probabilities[p] * sum) {
          low = middle;
        } else {
          high = middle;
        }
      }
      found[p + 1] = 0.5 * (low + high);
    }
    return found;
  }
}
