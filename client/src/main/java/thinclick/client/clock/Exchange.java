package thinclick.client.clock;

/**
 * Four timestamps on two clocks: sent and arrived on this computer's, received and answered on the
 * room's (RFC 5905 section 8, T1 and T4, T2 and T3).
 *
 * @param sentNanos when the question left, this computer's monotonic clock
 * @param receivedMicros when the server read it, room time
 * @param answeredMicros when the server wrote its answer, room time
 * @param arrivedNanos when the answer was read, this computer's monotonic clock
 */
public record Exchange(
    long sentNanos, long receivedMicros, long answeredMicros, long arrivedNanos) {

  /** T2 - T1: the offset plus what the way there took, microseconds; never less than the offset. */
  public double forwardMicros() {
    return receivedMicros - sentNanos / 1e3;
  }

  /** T4 - T3: what the way back took minus the offset, microseconds. */
  public double backwardMicros() {
    return arrivedNanos / 1e3 - answeredMicros;
  }

  /** Room time minus this computer's time if both ways took as long, microseconds. */
  public double offsetMicros() {
    return (forwardMicros() - backwardMicros()) / 2;
  }

  /** Both ways together, without the server's own time, microseconds. */
  public double delayMicros() {
    return forwardMicros() + backwardMicros();
  }

  /** The middle of the exchange on this computer's clock. */
  public long midNanos() {
    return sentNanos + (arrivedNanos - sentNanos) / 2;
  }
}
