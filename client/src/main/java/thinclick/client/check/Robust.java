package thinclick.client.check;

import java.util.Arrays;

/** Centres and errors that a few strange values do not move far. */
final class Robust {
  /** Normal values have this many median deviations in a standard deviation. */
  private static final double MAD_TO_SD = 1.4826;

  /** Huber's constant: full weight within so many standard deviations (95 % efficient). */
  private static final double HUBER = 1.345;

  private static final int ROUNDS = 30;

  private Robust() {}

  static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }

  /** The standard deviation that the median distance from the median stands for. */
  static double spread(double[] values) {
    double median = median(values);
    return MAD_TO_SD * median(Arrays.stream(values).map(v -> Math.abs(v - median)).toArray());
  }

  /** Huber's centre: values far out count less the further out they are. */
  static double centre(double[] values) {
    double scale = Math.max(spread(values), 1e-9);
    double centre = median(values);
    for (int round = 0; round < ROUNDS; round++) {
      double sum = 0;
      double weights = 0;
      for (double value : values) {
        double weight = Math.min(1, HUBER * scale / Math.max(Math.abs(value - centre), 1e-12));
        sum += weight * value;
        weights += weight;
      }
      centre = sum / weights;
    }
    return centre;
  }

  /**
   * The standard error of the centre where each value resembles the one before it, as taps do: the
   * error of independent values times sqrt((1 + r) / (1 - r)).
   */
  static double centreError(double[] values) {
    double[] tame = tamed(values);
    double mean = Arrays.stream(tame).average().orElse(0);
    double variance = 0;
    double lagged = 0;
    for (int i = 0; i < tame.length; i++) {
      variance += (tame[i] - mean) * (tame[i] - mean);
      lagged += i == 0 ? 0 : (tame[i] - mean) * (tame[i - 1] - mean);
    }
    double r = variance == 0 ? 0 : lagged / variance;
    // A short series shows less likeness than there is: Marriott and Pope 1954.
    double mended = Math.max(0, Math.min(0.8, r + (1 + 4 * r) / tame.length));
    double sd = Math.sqrt(variance / Math.max(1, tame.length - 1));
    return sd / Math.sqrt(tame.length) * Math.sqrt((1 + mended) / (1 - mended));
  }

  /** Values further out than three spreads are brought in to there. */
  private static double[] tamed(double[] values) {
    double median = median(values);
    double most = 3 * spread(values);
    return Arrays.stream(values)
        .map(v -> Math.max(median - most, Math.min(median + most, v)))
        .toArray();
  }
}
