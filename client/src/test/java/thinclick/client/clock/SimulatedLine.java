package thinclick.client.clock;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A line between two clocks with named faults, seeded. Time runs on this computer's clock, in
 * nanoseconds from 0; the room's clock is ahead by an offset that skew, wander and steps move.
 */
final class SimulatedLine {
  /** What one way takes. */
  @FunctionalInterface
  interface Way {
    double millis(Random random);

    static Way normal(double mean, double sd) {
      return random -> Math.max(0.1, mean + sd * random.nextGaussian());
    }

    static Way exponential(double floor, double mean) {
      return random -> floor - mean * Math.log(1 - random.nextDouble());
    }

    static Way logNormal(double floor, double median, double sigma) {
      return random -> floor + median * Math.exp(sigma * random.nextGaussian());
    }
  }

  private record Step(double atSeconds, double micros) {}

  private final Random random;
  private final Way forward;
  private final Way backward;
  private final List<Step> steps = new ArrayList<>();
  private double offsetMicros;
  private double skewPpm;
  private double wanderPpm;
  private double lossShare;
  private double wanderNow;
  private double wanderedMicros;
  private double wanderedToSeconds;
  private List<Exchange> record = new ArrayList<>();

  SimulatedLine(long seed, Way forward, Way backward) {
    this.random = new Random(seed);
    this.forward = forward;
    this.backward = backward;
    this.offsetMicros = 5e6 + 10e6 * random.nextDouble();
  }

  SimulatedLine skew(double ppm) {
    skewPpm = ppm;
    return this;
  }

  /** The skew walks at random: by {@code ppm} a square root of a second, standard deviation. */
  SimulatedLine wander(double ppm) {
    wanderPpm = ppm;
    return this;
  }

  SimulatedLine loss(double share) {
    lossShare = share;
    return this;
  }

  /** The room's clock jumps ahead by {@code millis}. */
  SimulatedLine step(double atSeconds, double millis) {
    steps.add(new Step(atSeconds, millis * 1e3));
    return this;
  }

  /** Writes every exchange that is not lost down as well. */
  SimulatedLine recording(List<Exchange> into) {
    record = into;
    return this;
  }

  /** Room time minus this computer's time, microseconds; asked for in rising order. */
  double trueOffset(double nanos) {
    double seconds = nanos / 1e9;
    while (wanderPpm > 0 && wanderedToSeconds + 1 <= seconds) {
      wanderNow += wanderPpm * random.nextGaussian();
      wanderedMicros += wanderNow;
      wanderedToSeconds += 1;
    }
    double stepped =
        steps.stream().filter(s -> s.atSeconds() <= seconds).mapToDouble(Step::micros).sum();
    return offsetMicros
        + skewPpm * seconds
        + wanderedMicros
        + wanderNow * (wanderPpm > 0 ? seconds - wanderedToSeconds : 0)
        + stepped;
  }

  /** One exchange that begins at {@code sentNanos}; null where it is lost. */
  Exchange exchange(long sentNanos) {
    double there = forward.millis(random) * 1e6;
    double back = backward.millis(random) * 1e6;
    boolean lost = random.nextDouble() < lossShare;
    double heldNanos = 20_000;
    double receivedAt = sentNanos + there;
    double answeredAt = receivedAt + heldNanos;
    long received = Math.round(receivedAt / 1e3 + trueOffset(receivedAt));
    long answered = Math.round(answeredAt / 1e3 + trueOffset(answeredAt));
    long arrived = Math.round(answeredAt + back);
    if (lost) {
      return null;
    }
    Exchange exchange = new Exchange(sentNanos, received, answered, arrived);
    record.add(exchange);
    return exchange;
  }
}
