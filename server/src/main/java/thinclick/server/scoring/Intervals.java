package thinclick.server.scoring;

import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/** 95 % intervals of means, spreads and shares. */
final class Intervals {
  private static final double Z = 1.959964;
  private static final double LOW = 0.025;

  private Intervals() {}

  /** About a mean, with Student's factor for the effective degrees of freedom. */
  static Interval mean(double mean, double error, double freedom) {
    double factor =
        freedom > 200
            ? Z
            : new TDistribution(null, Math.max(1, freedom)).inverseCumulativeProbability(1 - LOW);
    return new Interval(Round.millis(mean - factor * error), Round.millis(mean + factor * error));
  }

  /** About a standard deviation: nu s^2 over quantiles of chi squared. */
  static Interval spread(double spread, double freedom) {
    ChiSquaredDistribution chi = new ChiSquaredDistribution(null, Math.max(1, freedom));
    double high = chi.inverseCumulativeProbability(LOW);
    double low = chi.inverseCumulativeProbability(1 - LOW);
    return new Interval(
        Round.millis(spread * Math.sqrt(freedom / low)),
        Round.millis(spread * Math.sqrt(freedom / Math.max(high, 1e-9))));
  }

  /**
   * Of a share in percent: Wilson's, with no more cases than the asynchronies are worth.
   *
   * @param freedom effective degrees of freedom of the asynchronies
   */
  static Interval share(int placed, int written, double freedom) {
    double p = placed / (double) written;
    double n = Math.max(1, Math.min(written, 1.4 * freedom));
    double middle = (p + Z * Z / (2 * n)) / (1 + Z * Z / n);
    double half =
        Z / (1 + Z * Z / n) * Math.sqrt(Math.max(0, p * (1 - p)) / n + Z * Z / (4 * n * n));
    return new Interval(
        Round.percent(100 * Math.max(0, middle - half)),
        Round.percent(100 * Math.min(1, middle + half)));
  }

  /** Of a median, by ranks; the values ascend. */
  static Interval median(double[] values) {
    BinomialDistribution ranks = new BinomialDistribution(null, values.length, 0.5);
    int low = Math.max(0, ranks.inverseCumulativeProbability(LOW) - 1);
    int high = Math.min(values.length - 1, ranks.inverseCumulativeProbability(1 - LOW));
    return new Interval(Round.fine(values[low]), Round.fine(values[high]));
  }
}
