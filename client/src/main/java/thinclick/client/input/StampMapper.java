package thinclick.client.input;

/**
 * From a device's own microseconds to the computer's monotonic clock. A message cannot arrive
 * before it was stamped, so the smallest difference seen lately is the nearest to the truth; where
 * the device's stamps are missing, go backwards or stray, the arrival stands.
 */
final class StampMapper {
  /** How long a smallest difference is believed; crystals part by less than 1 ms in that time. */
  static final long MEMORY_NANOS = 10_000_000_000L;

  /** A stamp further from the arrival is not believed. */
  static final long STRAY_NANOS = 30_000_000L;

  private long lastDeviceMicros = Long.MIN_VALUE;
  private long least;
  private long leastSinceNanos;
  private long leastBefore;
  private boolean known;

  /**
   * When a message happened, nanoseconds of the monotonic clock.
   *
   * @param deviceMicros the device's stamp, -1 where it has none
   */
  long stamp(long arrivalNanos, long deviceMicros) {
    if (deviceMicros < 0 || deviceMicros < lastDeviceMicros) {
      known = false;
      lastDeviceMicros = Math.max(deviceMicros, -1);
      return arrivalNanos;
    }
    lastDeviceMicros = deviceMicros;
    long difference = arrivalNanos - deviceMicros * 1_000;
    if (!known) {
      known = true;
      least = difference;
      leastBefore = difference;
      leastSinceNanos = arrivalNanos;
      return arrivalNanos;
    }
    if (arrivalNanos - leastSinceNanos > MEMORY_NANOS) {
      leastBefore = least;
      least = difference;
      leastSinceNanos = arrivalNanos;
    }
    least = Math.min(least, difference);
    long mapped = deviceMicros * 1_000 + Math.min(least, leastBefore);
    if (arrivalNanos - mapped > STRAY_NANOS) {
      known = false;
      return arrivalNanos;
    }
    return mapped;
  }
}
