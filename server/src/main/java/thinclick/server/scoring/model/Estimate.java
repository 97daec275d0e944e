package thinclick.server.scoring.model;

import org.jspecify.annotations.Nullable;

/**
 * An estimated figure with its interval, or why it cannot be known.
 *
 * @param value the figure; null where it cannot be known
 * @param interval where it lies with 95 % confidence; null where it cannot be known
 * @param unknown why not; null where it is known
 */
public record Estimate(
    @Nullable Double value, @Nullable Interval interval, @Nullable Unknown unknown) {
  public Estimate {
    if (value == null ? unknown == null : !Double.isFinite(value)) {
      throw new IllegalArgumentException(
          "expected a finite value or a reason, found " + value + " and " + unknown);
    }
  }

  /**
   * Why a figure is not known.
   *
   * @param cause the kind of reason
   * @param says one sentence for people, with its numbers
   */
  public record Unknown(Cause cause, String says) {}

  /** The kinds of reason. */
  public enum Cause {
    /** Fewer attacks than the figure needs. */
    TOO_FEW,
    /** The estimate is less certain than the figure may be. */
    TOO_UNSURE,
    /** All attacks lie alike: there is nothing to estimate a noise from. */
    CONSTANT,
    /** No click sounded, or too few, to say how it was followed. */
    NO_CLICK,
    /** The player did not hear the other. */
    NOT_HEARD,
    /** Somebody's attacks are missing from the take. */
    PLAYER_MISSING,
    /** More players than can be told apart. */
    TOO_MANY_PLAYERS,
    /** The fitted players would run away from each other. */
    UNSTABLE,
    /** The attacks contradict the model. */
    VIOLATED,
    /** Not claimed for players who hear each other. */
    COUPLED
  }

  /** A figure that is known. */
  public static Estimate of(double value, Interval interval) {
    return new Estimate(value, interval, null);
  }

  /** A figure that cannot be known. */
  public static Estimate unknown(Cause cause, String says) {
    return new Estimate(null, null, new Unknown(cause, says));
  }

  /** True where there is a value. */
  public boolean known() {
    return value != null;
  }
}
