package thinclick.server.scoring;

import org.jspecify.annotations.Nullable;

/**
 * One figure of a review: a value, with its interval where one can be given, or the reason why it
 * is not known. Never NaN, never a zero that stands for "unknown".
 *
 * <p>In JSON a figure is written flat: {@code leanMillis}, then {@code leanMillisInterval} and,
 * where one of the two is null, {@code leanMillisReason}.
 *
 * @param value the figure in the unit its field names; null where it cannot be known
 * @param interval its 95 % interval; null where it cannot be known
 * @param reason why the value, or else the interval, is null
 */
public record Figure(@Nullable Double value, @Nullable Interval interval, @Nullable Reason reason) {
  public Figure {
    if (value != null && !Double.isFinite(value)) {
      throw new IllegalArgumentException("expected a finite figure, found " + value);
    }
    if (value == null && reason == null) {
      throw new IllegalArgumentException("expected a reason where there is no value");
    }
  }

  /** A figure with its interval. */
  static Figure of(double value, Interval interval) {
    return new Figure(value, interval, null);
  }

  /** A figure that is known, whose interval is not. */
  static Figure of(double value, Reason whyNoInterval) {
    return new Figure(value, null, whyNoInterval);
  }

  /** A figure that is exact: counted, not estimated. */
  static Figure exact(double value) {
    return new Figure(value, null, null);
  }

  /** A figure that cannot be known. */
  static Figure unknown(Reason reason) {
    return new Figure(null, null, reason);
  }

  static Figure unknown(Reason.Code code, String says) {
    return unknown(new Reason(code, says));
  }

  /** True where there is a value. */
  public boolean known() {
    return value != null;
  }

  /** The value; only where {@link #known()}. */
  public double get() {
    if (value == null) {
      throw new IllegalStateException("this figure is not known, " + reason);
    }
    return value;
  }

  /** The value where it is known, else the other. */
  public double orElse(double other) {
    return value == null ? other : value;
  }
}
