package thinclick.client.input;

import java.util.concurrent.Executor;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.time.Daemon;
import thinclick.protocol.time.MonotonicClock;

/**
 * Bounds how late a key's stamp can be. The thread that stamps keys is asked every few milliseconds
 * to write down the time; a key stamped later than that cannot have waited since before, because
 * the thread was free then.
 */
public final class Heartbeat implements AutoCloseable {
  private static final long EVERY_MILLIS = 4;
  private static final double NANOS_A_MILLI = 1e6;

  private final MonotonicClock clock;
  private final Executor stampingThread;
  private final ScheduledExecutorService pulse;
  private volatile long freeNanos;
  private volatile boolean waiting;
  private @Nullable Future<?> beating;

  /**
   * @param stampingThread hands a task to the thread that stamps keys
   */
  public Heartbeat(MonotonicClock clock, Executor stampingThread) {
    this.clock = clock;
    this.stampingThread = stampingThread;
    this.freeNanos = clock.nanos();
    this.pulse = new ScheduledThreadPoolExecutor(1, Daemon.called("heartbeat"));
  }

  /** Begins to beat. */
  public void start() {
    beating = pulse.scheduleWithFixedDelay(this::beat, 0, EVERY_MILLIS, TimeUnit.MILLISECONDS);
  }

  /** Asks the stamping thread once, unless an earlier question still waits. */
  void beat() {
    if (!waiting) {
      waiting = true;
      stampingThread.execute(
          () -> {
            freeNanos = clock.nanos();
            waiting = false;
          });
    }
  }

  /**
   * How late a stamp may be at most, milliseconds; called on the stamping thread.
   *
   * @param stampNanos the stamp
   */
  public double lateByMillis(long stampNanos) {
    return Math.max(0, stampNanos - freeNanos) / NANOS_A_MILLI;
  }

  @Override
  public void close() {
    if (beating != null) {
      beating.cancel(false);
    }
    pulse.shutdownNow();
  }
}
