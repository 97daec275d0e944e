package thinclick.client.clock;

/** How the mapping in use follows the estimate while a take runs: never by a jump. */
final class Slew {
  /** The fastest a mapping in use is bent, parts in a million: 12 ms in a minute. */
  static final double MOST_PPM = 200;

  /** Over what time a difference is taken out, where the limit allows it. */
  private static final double OVER_MICROS = 10e6;

  private Slew() {}

  /**
   * The mapping in use from now on: continuous with {@code used} at {@code nowNanos}, bent towards
   * {@code wanted}, never steeper or flatter than the one the take began with by more than {@link
   * #MOST_PPM}.
   *
   * @param beganPpm the skew of the mapping that the take began with
   */
  static ClockMapping towards(
      ClockMapping used, ClockMapping wanted, double beganPpm, long nowNanos) {
    double outMicros = wanted.roomAt(nowNanos) - used.roomAt(nowNanos);
    double ppm = wanted.skewPpm() + outMicros / OVER_MICROS * 1e6;
    double bent = Math.max(beganPpm - MOST_PPM, Math.min(beganPpm + MOST_PPM, ppm));
    return new ClockMapping(nowNanos, used.roomAt(nowNanos), bent);
  }
}
