package thinclick.server.watch;

import java.util.concurrent.TimeUnit;
import java.util.function.LongConsumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Notices when the whole process stood still, whatever the reason: garbage collection, a busy or
 * sleeping computer. A thread that wants to wake often measures how late it was woken.
 */
public final class PauseWatch implements AutoCloseable {
  /** What is shorter is not told. */
  public static final long WORTH_TELLING_NANOS = TimeUnit.MILLISECONDS.toNanos(50);

  private static final Logger LOG = LoggerFactory.getLogger(PauseWatch.class);
  private static final long NAP_NANOS = TimeUnit.MILLISECONDS.toNanos(10);

  /** A computer that is too slow throughout must not drown its log as well. */
  private static final long LOG_GAP_NANOS = TimeUnit.SECONDS.toNanos(10);

  private final Thread thread;

  private PauseWatch(LongConsumer told) {
    thread = new Thread(() -> watch(told), "thinclick-pauses");
    thread.setDaemon(true);
    thread.start();
  }

  /**
   * Begins.
   *
   * @param told of each pause, nanoseconds
   */
  public static PauseWatch start(LongConsumer told) {
    return new PauseWatch(told);
  }

  private static void watch(LongConsumer told) {
    Naps naps = new Naps(System.nanoTime(), told);
    while (true) {
      try {
        TimeUnit.NANOSECONDS.sleep(NAP_NANOS);
      } catch (InterruptedException stopped) {
        return;
      }
      naps.woke(System.nanoTime());
    }
  }

  /** One nap after another, each of which should have taken as long as the others. */
  static final class Naps {
    private final LongConsumer told;
    private long before;
    private long loggedNanos;
    private int pauses;
    private long longest;

    Naps(long nowNanos, LongConsumer told) {
      this.told = told;
      this.before = nowNanos;
      this.loggedNanos = nowNanos - LOG_GAP_NANOS;
    }

    /** A nap is over. */
    void woke(long now) {
      long late = late(before, now);
      if (late >= WORTH_TELLING_NANOS) {
        told.accept(late);
        pauses++;
        longest = Math.max(longest, late);
      }
      if (pauses > 0 && now - loggedNanos >= LOG_GAP_NANOS) {
        LOG.atWarn()
            .addKeyValue("pauses", pauses)
            .addKeyValue("longestMillis", longest / 1_000_000)
            .log("nothing ran for a while");
        loggedNanos = now;
        pauses = 0;
        longest = 0;
      }
      before = now;
    }
  }

  /** How much later than it wanted a nap from {@code before} ended at {@code now}, nanoseconds. */
  static long late(long before, long now) {
    return now - before - NAP_NANOS;
  }

  @Override
  public void close() {
    thread.interrupt();
  }
}
