package thinclick.client.window.lectern;

import thinclick.protocol.time.MonotonicClock;

/** When a class rests: the lesson's clock stands meanwhile, and a long enough one is a break. */
final class LessonBreak {
  /** A rest as long as this is a break. */
  private static final long BREAK_NANOS = 300_000_000_000L;

  private static final double NANOS_A_MINUTE = 60e9;

  private final MonotonicClock clock;
  private boolean taken;
  private long sinceNanos;
  private long restedNanos;

  LessonBreak(MonotonicClock clock) {
    this.clock = clock;
  }

  /** A lesson begins with everybody rested. */
  void begin() {
    taken = false;
    restedNanos = clock.nanos();
  }

  /** True while the lesson's clock stands. */
  boolean taken() {
    return taken;
  }

  /** The lesson's clock stands from now on. */
  void take() {
    taken = true;
    sinceNanos = clock.nanos();
  }

  /** The lesson's clock goes on; answers for how many nanoseconds it stood. */
  long end() {
    long nanos = clock.nanos();
    long gone = nanos - sinceNanos;
    taken = false;
    if (gone >= BREAK_NANOS) {
      restedNanos = nanos;
    }
    return gone;
  }

  /** The lesson's own now, monotonic clock: it stands in a break. */
  long lessonNanos() {
    return taken ? sinceNanos : clock.nanos();
  }

  /** Whole minutes since the class last rested. */
  int minutesWithout() {
    return (int) ((clock.nanos() - restedNanos) / NANOS_A_MINUTE);
  }
}
