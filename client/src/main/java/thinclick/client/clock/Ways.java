package thinclick.client.clock;

import java.util.Arrays;
import java.util.List;

/**
 * What the two ways of some exchanges took, brought to one instant: forward is the way's time plus
 * the offset, backward the way's time minus it. Microseconds.
 */
final class Ways {
  private final double[] forward;
  private final double[] backward;
  private final double[] risingForward;
  private final double[] risingBackward;

  private Ways(double[] forward, double[] backward) {
    this.forward = forward;
    this.backward = backward;
    this.risingForward = Numbers.rising(forward);
    this.risingBackward = Numbers.rising(backward);
  }

  /**
   * @param exchanges not empty
   * @param atNanos the instant of this computer's clock at which the offset is asked for
   * @param skewPpm by how much the offset grows; taken out
   */
  static Ways of(List<Exchange> exchanges, long atNanos, double skewPpm) {
    double[] forward = new double[exchanges.size()];
    double[] backward = new double[exchanges.size()];
    for (int i = 0; i < forward.length; i++) {
      Exchange e = exchanges.get(i);
      forward[i] = e.forwardMicros() - (e.sentNanos() - atNanos) / 1e3 * skewPpm / 1e6;
      backward[i] = e.backwardMicros() + (e.arrivedNanos() - atNanos) / 1e3 * skewPpm / 1e6;
    }
    return new Ways(forward, backward);
  }

  int count() {
    return forward.length;
  }

  /** The same without every {@code step}-th exchange, counted from {@code first}. */
  Ways without(int step, int first) {
    return new Ways(without(forward, step, first), without(backward, step, first));
  }

  private static double[] without(double[] values, int step, int first) {
    double[] others = new double[values.length];
    int n = 0;
    for (int i = 0; i < values.length; i++) {
      if (i % step != first) {
        others[n++] = values[i];
      }
    }
    return Arrays.copyOf(others, n);
  }

  /** The offset is certainly not below this, if no clock jumped. */
  double low() {
    return -risingBackward[0];
  }

  /** The offset is certainly not above this, if no clock jumped. */
  double high() {
    return risingForward[0];
  }

  /** The middle of the certain interval: half the difference of the two ways' minima. */
  double byMinima() {
    return (risingForward[0] - risingBackward[0]) / 2;
  }

  /** Half the difference of the means of each way's lowest quarter. */
  double byLowestQuarter() {
    return (Numbers.lowestQuarter(risingForward) - Numbers.lowestQuarter(risingBackward)) / 2;
  }

  /** Half the difference of the two ways' medians. */
  double byMedians() {
    return (Numbers.middle(risingForward) - Numbers.middle(risingBackward)) / 2;
  }
}
