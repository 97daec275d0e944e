package thinclick.server.words;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.StageReview;

/**
 * A number that was measured, shown with no more digits than it carries: rounded to the largest
 * step of 1, 5, 10, 50 ... units that does not exceed half its interval. Whatever number a person
 * reads is written here, as the language writes it, so that one figure reads the same in prose,
 * table and picture; files have their own, without one.
 *
 * @param value the number; its sign is shown only where the message asks for it
 * @param halfWidth half of its 95 % interval; 0 where it is exact or its interval is not known
 * @param finest the finest step that is ever shown, in its own unit: 1 for ms, 0.1 for drift
 */
public record Quantity(double value, double halfWidth, double finest) {
  /** What stands before a number below nought. */
  static final char MINUS = '\u2212';

  private static final double EXACT = 0.01;
  private static final double ALL = 100;

  /** Milliseconds. */
  public static Quantity millis(double value, @Nullable Interval interval) {
    return new Quantity(value, halfWidth(interval), 1);
  }

  /** Milliseconds of a figure that is known. */
  public static Quantity millis(Figure figure) {
    return millis(figure.get(), figure.interval());
  }

  /**
   * Percent of hold, to whole ones; it is a count, so that its interval costs no digits. What falls
   * short of being held, or of all that is written, is not rounded up to it: 79.6 is 79.
   */
  public static Quantity percent(double value) {
    double whole = Math.rint(value);
    boolean crosses = value < whole && (whole == StageReview.HELD_PERCENT || whole == ALL);
    return new Quantity(crosses ? whole - 1 : whole, 0, 1);
  }

  /** Percent of hold of a figure that is known. */
  public static Quantity percent(Figure figure) {
    return percent(figure.get());
  }

  /** A share that was estimated, such as a gain, in percent of the whole. */
  public static Quantity share(double share, @Nullable Interval interval) {
    return new Quantity(100 * share, 100 * halfWidth(interval), 1);
  }

  /** Percent of drift, to tenths. */
  public static Quantity drift(Figure figure) {
    return new Quantity(figure.get(), halfWidth(figure.interval()), 0.1);
  }

  /** A number that is known and not measured, such as a tempo, to hundredths at most. */
  public static Quantity exact(double value) {
    return new Quantity(value, 0, EXACT);
  }

  /** Another number in the same digits, such as an end of the interval. */
  public Quantity at(double other) {
    return new Quantity(other, halfWidth, finest);
  }

  /** The side of what is shown: 0 where it rounds to nothing, whatever the number's own side. */
  public int side() {
    return (int) Math.signum(rounded());
  }

  /** The same without its sign. */
  public Quantity size() {
    return new Quantity(Math.abs(value), halfWidth, finest);
  }

  /** The step it is rounded to. */
  double step() {
    double step = finest;
    for (double factor = 5; step * factor <= halfWidth; factor = factor == 5 ? 2 : 5) {
      step *= factor;
    }
    return step;
  }

  private double rounded() {
    return Math.rint(value / step()) * step();
  }

  /** As it is shown, with a true minus; decimals only where there are some. */
  public String shown(Locale locale) {
    double rounded = rounded();
    String text = String.format(locale, "%." + decimals(rounded) + "f", Math.abs(rounded));
    return rounded < 0 ? MINUS + text : text;
  }

  private int decimals(double rounded) {
    if (step() >= 1) {
      return 0;
    }
    double tenths = Math.abs(Math.rint(10 * rounded) - 10 * rounded);
    return Math.rint(rounded) == rounded ? 0 : tenths < EXACT ? 1 : 2;
  }

  /** Half the width of an interval; 0 where there is none. */
  static double halfWidth(@Nullable Interval interval) {
    return interval == null ? 0 : (interval.high() - interval.low()) / 2;
  }
}
