package thinclick.server.net;

import io.netty.util.concurrent.EventExecutor;
import io.netty.util.concurrent.Future;
import java.util.concurrent.TimeUnit;

/**
 * By when the other side must have done something. A host that comes to it late has slept or had
 * too much to do: what it waited for may lie in the socket, unread, so it waits once more from now.
 * On a channel's event loop only.
 */
final class Deadline {
  /** A loop that keeps up is not so late, however much there is to do. */
  static final long LATE_NANOS = TimeUnit.SECONDS.toNanos(1);

  private final EventExecutor loop;
  private final long nanos;
  private final Runnable missed;
  private Future<?> pending;
  private boolean waitedOnceMore;

  private Deadline(EventExecutor loop, long nanos, Runnable missed) {
    this.loop = loop;
    this.nanos = nanos;
    this.missed = missed;
    this.pending = from(loop.ticker().nanoTime());
  }

  /**
   * Begins.
   *
   * @param missed called once, at the end, unless cancelled
   */
  static Deadline in(EventExecutor loop, long millis, Runnable missed) {
    return new Deadline(loop, TimeUnit.MILLISECONDS.toNanos(millis), missed);
  }

  private Future<?> from(long nowNanos) {
    return loop.schedule(() -> due(nowNanos + nanos), nanos, TimeUnit.NANOSECONDS);
  }

  private void due(long dueNanos) {
    long now = loop.ticker().nanoTime();
    if (now - dueNanos > LATE_NANOS && !waitedOnceMore) {
      waitedOnceMore = true; // else a host that always lags would wait for ever
      pending = from(now);
    } else {
      missed.run();
    }
  }

  void cancel() {
    pending.cancel(false);
  }
}
