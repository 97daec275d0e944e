package thinclick.server.host;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.time.Daemon;

/**
 * What a host does by itself every so many hours, one after another on one thread, so that no
 * backup is made of what is just being deleted.
 */
final class Chores implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Chores.class);
  private static final long LAST_ONE_SECONDS = 10;

  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(Daemon.called("thinclick-chores"));

  /** Something to do, which may fail and is done again the next time all the same. */
  interface Chore {
    void run() throws Exception;
  }

  /** After what was asked for before, once. */
  void once(String what, Chore chore) {
    thread.execute(() -> run(what, chore));
  }

  /**
   * Again and again; what a computer slept through is left out.
   *
   * @param what it is, for the log where it fails: "a backup"
   * @param firstHours until the first time
   */
  void every(String what, long firstHours, long hours, Chore chore) {
    var unused =
        thread.scheduleWithFixedDelay( // at a fixed rate, a night's sleep would be made up for
            () -> run(what, chore), firstHours, hours, TimeUnit.HOURS);
  }

  private static void run(String what, Chore chore) {
    try {
      chore.run();
    } catch (Exception problem) {
      LOG.error("{} failed, trying again at its next hour", what, problem);
    }
  }

  /** Lets what has begun, and what was to be done at once, come to its end. */
  @Override
  public void close() {
    thread.shutdown(); // what is due later is left out
    try {
      if (!thread.awaitTermination(LAST_ONE_SECONDS, TimeUnit.SECONDS)) {
        LOG.warn("a backup was still being made or gone through after {} s", LAST_ONE_SECONDS);
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }
}
