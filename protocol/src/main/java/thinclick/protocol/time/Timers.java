package thinclick.protocol.time;

/**
 * Runs something later, by the instants of a {@link MonotonicClock}. Given to whoever waits, so
 * that a whole rehearsal can run on a clock that a test moves.
 */
@FunctionalInterface
public interface Timers {
  /**
   * Runs the task once, not before {@code nanos} on the clock; at once where that is past. The task
   * must be short: it may run on a thread that all timers share.
   */
  Pending at(long nanos, Runnable task);

  /** Something that will run unless it is cancelled. */
  @FunctionalInterface
  interface Pending {
    /** Prevents the run where it has not begun; does nothing otherwise. */
    void cancel();
  }
}
