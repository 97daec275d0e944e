package thinclick.client.clock;

import java.util.Arrays;

/** The numbers' level: order statistics and a robust slope, without any notion of a clock. */
final class Numbers {
  private Numbers() {}

  /** The values in rising order; the input stays. */
  static double[] rising(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted;
  }

  /** The middle of values in any order, or the mean of the middle two; there is at least one. */
  static double median(double[] values) {
    return middle(rising(values));
  }

  /** The middle of rising values, or the mean of the middle two. */
  static double middle(double[] rising) {
    int half = rising.length / 2;
    return rising.length % 2 == 1 ? rising[half] : (rising[half - 1] + rising[half]) / 2;
  }

  /** The mean of the lowest quarter of rising values, of one value at least. */
  static double lowestQuarter(double[] rising) {
    int count = Math.max(1, rising.length / 4);
    double sum = 0;
    for (int i = 0; i < count; i++) {
      sum += rising[i];
    }
    return sum / count;
  }

  /** The variance with n - 1; 0 for fewer than two values. */
  static double variance(double[] values) {
    if (values.length < 2) {
      return 0;
    }
    double mean = Arrays.stream(values).average().orElseThrow();
    return Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum() / (values.length - 1);
  }

  /**
   * Theil and Sen's slope: the median of the slopes between all pairs of points. Up to 29 % of the
   * points may be anywhere.
   *
   * @param x differ from each other
   */
  static double theilSen(double[] x, double[] y) {
    double[] slopes = new double[x.length * (x.length - 1) / 2];
    int n = 0;
    for (int i = 0; i < x.length; i++) {
      for (int j = i + 1; j < x.length; j++) {
        slopes[n++] = (y[j] - y[i]) / (x[j] - x[i]);
      }
    }
    return median(slopes);
  }

  /**
   * The standard error of a straight line's slope where each point is out by {@code sd}.
   *
   * @param sd standard deviation of a point about the line
   */
  static double slopeError(double[] x, double sd) {
    double mean = Arrays.stream(x).average().orElseThrow();
    return sd / Math.sqrt(Arrays.stream(x).map(v -> (v - mean) * (v - mean)).sum());
  }
}
