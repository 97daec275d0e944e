package thinclick.client.clock;

import java.util.Random;

/** How often the server is asked for its time: often at first, then seldom, never in step. */
final class AskSchedule {
  private static final long SECOND = 1_000_000_000L;
  private final Random spread;
  private long begunNanos;

  /**
   * @param seed spreads the questions of many players apart
   */
  AskSchedule(long nowNanos, long seed) {
    begunNanos = nowNanos;
    spread = new Random(seed);
  }

  /** Begins again with the frequent questions. */
  void restart(long nowNanos) {
    begunNanos = nowNanos;
  }

  /** When to ask after a question at {@code nowNanos}. */
  long nextNanos(long nowNanos) {
    long age = nowNanos - begunNanos;
    if (age < 2 * SECOND) {
      return nowNanos + SECOND / 10;
    }
    if (age < 30 * SECOND) {
      return nowNanos + SECOND / 5;
    }
    return nowNanos + Math.round(SECOND / 2.0 * (0.8 + 0.4 * spread.nextDouble()));
  }
}
