package thinclick.server.scoring.model;

/**
 * Between which values a figure lies.
 *
 * @param low the lower end
 * @param high the upper end
 */
public record Interval(double low, double high) {
  /** How far the ends are apart. */
  public double width() {
    return high - low;
  }

  /** True where a value lies inside or on an end. */
  public boolean contains(double value) {
    return low <= value && value <= high;
  }
}
