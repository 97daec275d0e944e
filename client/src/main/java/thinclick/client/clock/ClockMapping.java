package thinclick.client.clock;

/**
 * A line between the two clocks: at {@code atNanos} of this computer's monotonic clock the room's
 * shows {@code roomMicros}, and from there it gains {@code skewPpm}.
 *
 * @param atNanos an instant of this computer's monotonic clock
 * @param roomMicros room time at that instant
 * @param skewPpm by how much the room's clock runs faster than this computer's, parts in a million
 */
public record ClockMapping(long atNanos, double roomMicros, double skewPpm) {

  /** Room time at an instant of this computer's clock, unrounded microseconds. */
  public double roomAt(long nanos) {
    return roomMicros + (nanos - atNanos) / 1e3 * (1 + skewPpm / 1e6);
  }

  /** Room time at an instant of this computer's clock, whole microseconds. */
  public long roomMicros(long nanos) {
    return Math.round(roomAt(nanos));
  }

  /** The instant of this computer's clock at which the room's shows {@code micros}. */
  public long nanosOf(double micros) {
    return atNanos + Math.round((micros - roomMicros) * 1e3 / (1 + skewPpm / 1e6));
  }

  /** The same line, written down at another instant. */
  public ClockMapping anchoredAt(long nanos) {
    return new ClockMapping(nanos, roomAt(nanos), skewPpm);
  }
}
