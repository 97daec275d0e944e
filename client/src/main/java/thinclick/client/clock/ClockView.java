package thinclick.client.clock;

import thinclick.protocol.message.PreparingMessage.ClockState;

/**
 * What is known of room time at one moment.
 *
 * @param mapping between this computer's clock and the room's
 * @param state how far the estimate has come
 * @param epoch the server's epoch that the room time belongs to
 * @param uncertaintyMicros how far the mapping may be out, either way
 * @param spreadMicros how much subsamples of the exchanges disagree; says how noisy the line is
 * @param bestRoundTripMicros the shortest round trip among the exchanges kept
 * @param roundTripMicros the median round trip
 */
public record ClockView(
    ClockMapping mapping,
    ClockState state,
    long epoch,
    double uncertaintyMicros,
    double spreadMicros,
    double bestRoundTripMicros,
    double roundTripMicros) {
  /** Nothing is known: the worst case. */
  public static final double UNKNOWN_MICROS = 16e6;

  /** Before the first answer: room time is anybody's guess. */
  public static ClockView unknown(long atNanos) {
    return new ClockView(
        new ClockMapping(atNanos, 0, 0),
        ClockState.FINDING,
        0,
        UNKNOWN_MICROS,
        UNKNOWN_MICROS,
        UNKNOWN_MICROS,
        UNKNOWN_MICROS);
  }

  /** Room time at an instant of this computer's monotonic clock. */
  public long roomMicros(long nanos) {
    return mapping.roomMicros(nanos);
  }

  /** The instant of this computer's monotonic clock at which the room's shows {@code micros}. */
  public long nanosOf(long micros) {
    return mapping.nanosOf((double) micros);
  }
}
