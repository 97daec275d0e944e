package thinclick.server.scoring.model;

import java.util.Arrays;

/**
 * Timekeeper and motor variance from the intervals of one player in silence with nobody to follow
 * (Wing and Kristofferson 1973): neighbouring intervals share an attack, so their covariance is
 * -Vm; what remains of an interval's variance is the timekeeper's, in proportion to the interval's
 * written beats. Intervals are never divided by their written length. Variance and covariance are
 * both divided by the number of intervals.
 *
 * @param timekeeper Vc, ms2 for one beat; 0 where the moments ask for less
 * @param motor Vm, ms2; 0 where the moments ask for less
 * @param correlation of neighbouring intervals; between -1/2 and 0 where the model holds
 * @param verdict whether it holds
 */
public record IntervalMoments(
    double timekeeper, double motor, double correlation, Verdict verdict) {
  /** What the correlation of neighbouring intervals says of the model. */
  public enum Verdict {
    /** Between -1/2 and 0. */
    HOLDS,
    /** Positive: the intervals drift together. */
    DRIFTS,
    /** Below -1/2: more alternation than motor noise can make; the timekeeper is clamped to 0. */
    ALTERNATES,
    /** Fewer than three intervals, or no variance. */
    UNKNOWN
  }

  /**
   * From intervals of equal written length.
   *
   * @param intervalMillis the intervals, in order
   */
  public static IntervalMoments of(double[] intervalMillis) {
    double[] beats = new double[intervalMillis.length];
    Arrays.fill(beats, 1);
    return of(intervalMillis, beats);
  }

  /**
   * From intervals of any written lengths.
   *
   * @param intervalMillis the intervals, in order
   * @param beats their written lengths, beats
   */
  public static IntervalMoments of(double[] intervalMillis, double[] beats) {
    int n = intervalMillis.length;
    if (n != beats.length) {
      throw new IllegalArgumentException("expected " + n + " lengths, found " + beats.length);
    }
    if (n < 3) {
      return new IntervalMoments(0, 0, 0, Verdict.UNKNOWN);
    }
    double millis = 0;
    double written = 0;
    for (int i = 0; i < n; i++) {
      millis += intervalMillis[i];
      written += beats[i];
    }
    double beat = millis / written;
    // Two passes: sums of squares about a mean found first lose no digits to a large mean.
    double rest = 0;
    for (int i = 0; i < n; i++) {
      rest += intervalMillis[i] - beat * beats[i];
    }
    double squares = 0;
    double products = 0;
    double before = 0;
    for (int i = 0; i < n; i++) {
      double away = intervalMillis[i] - beat * beats[i] - rest / n;
      squares += away * away;
      if (i > 0) {
        products += away * before;
      }
      before = away;
    }
    if (!(squares > 0)) {
      return new IntervalMoments(0, 0, 0, Verdict.UNKNOWN);
    }
    double correlation = products / squares;
    double variance = squares / n;
    double motor = -correlation * variance;
    double timekeeper = (1 + 2 * correlation) * variance * n / written;
    Verdict verdict =
        correlation > 0 ? Verdict.DRIFTS : correlation < -0.5 ? Verdict.ALTERNATES : Verdict.HOLDS;
    return new IntervalMoments(Math.max(0, timekeeper), Math.max(0, motor), correlation, verdict);
  }
}
