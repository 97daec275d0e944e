package thinclick.client.window;

import java.util.concurrent.Executor;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.time.Daemon;

/**
 * Asks the window to look at the time again, often enough for bars and counts. Nothing moves
 * between two looks, so this is no animation and costs nothing where nothing has changed.
 */
final class Ticker implements AutoCloseable {
  private static final long EVERY_MILLIS = 20;

  private final Executor windowThread;
  private final Runnable look;
  private final ScheduledThreadPoolExecutor timer;
  private volatile boolean waiting;
  private @Nullable ScheduledFuture<?> ticking;

  Ticker(Executor windowThread, Runnable look) {
    this.windowThread = windowThread;
    this.look = look;
    this.timer = new ScheduledThreadPoolExecutor(1, Daemon.called("ticker"));
  }

  void start() {
    ticking =
        timer.scheduleWithFixedDelay(this::ask, EVERY_MILLIS, EVERY_MILLIS, TimeUnit.MILLISECONDS);
  }

  private void ask() {
    if (!waiting) {
      waiting = true;
      windowThread.execute(
          () -> {
            waiting = false;
            look.run();
          });
    }
  }

  @Override
  public void close() {
    if (ticking != null) {
      ticking.cancel(false);
    }
    timer.shutdownNow();
  }
}
