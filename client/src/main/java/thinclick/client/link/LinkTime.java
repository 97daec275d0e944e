package thinclick.client.link;

import thinclick.protocol.time.MonotonicClock;

/**
 * The clock a link lives by, which can also wake it. One thread owns it: every task runs there, and
 * {@link #run} brings work of other threads to it.
 */
public interface LinkTime extends MonotonicClock {
  /**
   * Wakes once, not before {@code atNanos} of this clock.
   *
   * @return call it to take the task back
   */
  Runnable at(long atNanos, Runnable task);

  /** Runs a task on the owning thread, soon, in the order handed in. */
  void run(Runnable task);

  /** The wall clock, milliseconds since 1970; only to notice a computer that slept. */
  long wallMillis();
}
