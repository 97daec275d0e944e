package thinclick.server.net;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;

/**
 * How much of a core the strangers' event loop may take while takes run, so that nobody who plays
 * waits for those who are let in nowhere. What a loop has overdrawn it rests for; whoever is let in
 * has paid for themselves, and a class comes in at once. While nobody plays there is no ration.
 *
 * <p>On that loop only, but for {@link #letIn}.
 */
final class DoorRation {
  /** The part of a core that comes back all the time. */
  static final double SHARE = .005;

  /** So much at once: fifty lines that come with a word that is wrong. */
  static final long AT_ONCE_NANOS = TimeUnit.MILLISECONDS.toNanos(10);

  /**
   * No rest is longer, whatever was overdrawn: when very many come at once, those among them who
   * belong here have to get in within the 5 s they are given.
   */
  static final long LONGEST_REST_NANOS = TimeUnit.MILLISECONDS.toNanos(100);

  /**
   * What comes back with each who is let in: about what an encrypted line costs, and a plain one
   * while what it needs is not compiled.
   */
  static final long ENTRY_NANOS = TimeUnit.MILLISECONDS.toNanos(2);

  private final BooleanSupplier takesRun;
  private final AtomicLong entries = new AtomicLong();
  private double leftNanos = AT_ONCE_NANOS;
  private long usedNanos;
  private long atNanos;

  /**
   * @param takesRun true while anybody plays on this host
   * @param usedNanos processor time that the loop has had until now
   */
  DoorRation(BooleanSupplier takesRun, long usedNanos, long nowNanos) {
    this.takesRun = takesRun;
    this.usedNanos = usedNanos;
    this.atNanos = nowNanos;
  }

  /** A stranger is let in; from any thread. */
  void letIn() {
    entries.incrementAndGet();
  }

  /**
   * How long the loop has to rest before its next turn, nanoseconds; 0 as a rule.
   *
   * @param used processor time that the loop has had until now, nanoseconds
   */
  long restNanos(long used, long nowNanos) {
    double given = (nowNanos - atNanos) * SHARE + (double) (entries.getAndSet(0) * ENTRY_NANOS);
    leftNanos = Math.min((double) AT_ONCE_NANOS, leftNanos + given) - (used - usedNanos);
    usedNanos = used;
    atNanos = nowNanos;
    if (leftNanos >= 0) {
      return 0;
    }
    if (!takesRun.getAsBoolean()) {
      leftNanos = AT_ONCE_NANOS;
      return 0;
    }
    leftNanos = Math.max(leftNanos, -SHARE * LONGEST_REST_NANOS);
    return (long) (-leftNanos / SHARE);
  }
}
