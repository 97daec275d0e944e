package thinclick.protocol.time;

import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/** Timers by {@link MonotonicClock#SYSTEM}: one daemon thread that all tasks share. */
public final class SystemTimers implements Timers, AutoCloseable {
  private final ScheduledThreadPoolExecutor thread;

  /**
   * @param name of the thread
   */
  public SystemTimers(String name) {
    thread = new ScheduledThreadPoolExecutor(1, Daemon.called(name));
    thread.setRemoveOnCancelPolicy(true);
    thread.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
  }

  @Override
  public Pending at(long nanos, Runnable task) {
    long delayNanos = Math.max(0, nanos - MonotonicClock.SYSTEM.nanos());
    ScheduledFuture<?> future = thread.schedule(task, delayNanos, TimeUnit.NANOSECONDS);
    return () -> future.cancel(false);
  }

  @Override
  public void close() {
    thread.shutdownNow();
  }
}
