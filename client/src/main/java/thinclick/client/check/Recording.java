package thinclick.client.check;

/**
 * What a microphone heard.
 *
 * @param samples one channel, between -1 and 1
 * @param rate samples a second
 * @param firstNanos when sample 0 was handed over, monotonic clock; late by the microphone's own
 *     delay, which is the same for all samples
 */
@SuppressWarnings("ArrayRecordComponent") // seconds of sound, never changed after it was made
public record Recording(float[] samples, double rate, long firstNanos) {
  /** The sample, with its fraction, at an instant. */
  double sampleAt(long nanos) {
    return (nanos - firstNanos) * rate / 1e9;
  }

  /** The instant of a sample, relative to {@code fromNanos}, milliseconds. */
  double millisAfter(double sample, long fromNanos) {
    return (firstNanos - fromNanos) / 1e6 + sample / rate * 1e3;
  }
}
