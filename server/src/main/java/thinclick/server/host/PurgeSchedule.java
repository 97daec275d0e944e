package thinclick.server.host;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.server.store.Purge.Purged;
import thinclick.server.store.Store;

/** Deletes what has been kept long enough, at the start and every day. */
final class PurgeSchedule implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(PurgeSchedule.class);

  private final ScheduledExecutorService thread;

  private PurgeSchedule(ScheduledExecutorService thread) {
    this.thread = thread;
  }

  /** Queued before this returns, so that what is read afterwards is read without it. */
  static void atStart(Store store, Keeping keeping) {
    purge(store, keeping, true);
  }

  /** From tomorrow on. */
  static PurgeSchedule daily(Store store, Keeping keeping) {
    ScheduledExecutorService thread =
        Executors.newSingleThreadScheduledExecutor(
            task -> {
              Thread made = new Thread(task, "thinclick-purge");
              made.setDaemon(true);
              return made;
            });
    var unused =
        thread.scheduleAtFixedRate(() -> purge(store, keeping, false), 1, 1, TimeUnit.DAYS);
    return new PurgeSchedule(thread);
  }

  private static void purge(Store store, Keeping keeping, boolean starting) {
    CompletableFuture<Purged> purging = store.classes().purge(keeping.months(), starting);
    var unused =
        purging.whenComplete(
            (purged, problem) -> {
              if (problem != null) {
                LOG.error("what is old could not be deleted, trying again in a day", problem);
              } else if (!purged.nothing()) {
                LOG.atInfo()
                    .addKeyValue("months", keeping.months())
                    .addKeyValue("takes", purged.takes())
                    .addKeyValue("members", purged.members())
                    .addKeyValue("classes", purged.classes())
                    .addKeyValue("rooms", purged.rooms())
                    .log("deleted what has been kept long enough");
              }
            });
  }

  @Override
  public void close() {
    thread.shutdownNow();
  }
}
