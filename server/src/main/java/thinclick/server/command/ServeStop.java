package thinclick.server.command;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.server.host.RehearsalHost;

/** How {@code serve} ends: told to stop, or drained; in a bounded time either way. */
final class ServeStop {
  /** Rooms are told and their last rows written within milliseconds; this is for a sick disk. */
  private static final long LONGEST_MILLIS = 10_000;

  private static final Logger LOG = LoggerFactory.getLogger(ServeStop.class);

  private static final AtomicBoolean STOPPED = new AtomicBoolean();

  private ServeStop() {}

  /** Comes back once the host is closed. */
  static void waitForTheEnd(RehearsalHost hosting) {
    CountDownLatch over = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  close(hosting);
                  over.countDown();
                },
                "thinclick-stop"));
    var unused = hosting.drained().thenRun(over::countDown);
    try {
      over.await();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
    close(hosting);
  }

  private static void close(RehearsalHost hosting) {
    if (STOPPED.getAndSet(true)) {
      return; // drained, and now the process ends
    }
    long began = System.nanoTime();
    Thread closing = new Thread(hosting::close, "thinclick-close");
    closing.setDaemon(true);
    closing.start();
    try {
      closing.join(LONGEST_MILLIS);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
    long millis = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - began);
    if (closing.isAlive()) {
      LOG.atError().addKeyValue("millis", millis).log("ending without the last of it");
    } else {
      LOG.atInfo().addKeyValue("millis", millis).log("stopped");
    }
  }
}
