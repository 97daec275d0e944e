package thinclick.client.clock;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * The samples' level: the offset behind many exchanges.
 *
 * <p>No single rule is best on every line. Where delays have a floor the minima are sharp, where
 * they scatter evenly the medians are, between them the lowest quarter is. So all three are taken,
 * each weighted by how little it moves when a tenth of the exchanges is left out. (Five separate
 * fifths were tried first: minima of a fifth scatter far more than a fifth of them predicts, so the
 * sharpest rule on an exponential line lost its weight: .38 against .24 ms after 5 s.)
 */
final class OffsetEstimator {
  /** Below this many exchanges leaving some out says nothing; the lowest quarter stands alone. */
  static final int ENOUGH = 15;

  private static final int PARTS = 10;

  private static final List<ToDoubleFunction<Ways>> RULES =
      List.of(Ways::byMinima, Ways::byLowestQuarter, Ways::byMedians);

  private OffsetEstimator() {}

  /** The estimate from all three rules, inside the certain interval. */
  static OffsetEstimate estimate(Ways ways) {
    double low = ways.low();
    double high = ways.high();
    if (ways.count() < ENOUGH) {
      double offset = clamp(ways.byLowestQuarter(), low, high);
      return new OffsetEstimate(offset, low, high, Math.abs(high - low) / 2);
    }
    Ways[] without = new Ways[PARTS];
    Arrays.setAll(without, part -> ways.without(PARTS, part));
    double weights = 0;
    double sum = 0;
    double[] combined = new double[PARTS];
    for (ToDoubleFunction<Ways> rule : RULES) {
      double[] moved = Arrays.stream(without).mapToDouble(rule).toArray();
      // A thousandth of a microsecond keeps a perfectly still line from dividing by zero.
      double precision = 1 / (Numbers.variance(moved) + 1e-6);
      // The rules err together, so the better one deserves more than its inverse variance.
      double weight = precision * precision;
      weights += weight;
      sum += weight * rule.applyAsDouble(ways);
      for (int part = 0; part < PARTS; part++) {
        combined[part] += weight * moved[part];
      }
    }
    // The jackknife's standard error of groups left out: (n - 1)^2 / n times the variance.
    double spread = Math.sqrt(Numbers.variance(combined) / PARTS) * (PARTS - 1) / weights;
    return new OffsetEstimate(clamp(sum / weights, low, high), low, high, spread);
  }

  /** A clock that jumped can leave the interval empty; then its middle is as good as anything. */
  private static double clamp(double value, double low, double high) {
    return low > high ? (low + high) / 2 : Math.max(low, Math.min(high, value));
  }
}
