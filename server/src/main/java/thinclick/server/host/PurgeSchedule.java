package thinclick.server.host;

import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.spi.LoggingEventBuilder;
import thinclick.server.store.Backups;
import thinclick.server.store.Purge.Purged;
import thinclick.server.store.Store;

/**
 * Deletes what has been kept long enough, at the start and every day: in the database, and then in
 * its backups, with what was dropped from the database since they were made.
 */
final class PurgeSchedule {
  private static final Logger LOG = LoggerFactory.getLogger(PurgeSchedule.class);
  private static final long DAY_HOURS = 24;

  private final Store store;
  private final Keeping keeping;
  private final @Nullable Path backups;

  private final CompletableFuture<Purged> first;

  private PurgeSchedule(Store store, HostOptions options) {
    this.store = store;
    this.keeping = options.keeping();
    this.backups = options.backupFolder();
    this.first = store.classes().purge(keeping.months(), true);
  }

  /**
   * Queues the first purge of the database, so that whatever is read afterwards is read without
   * what went.
   */
  static PurgeSchedule atStart(Store store, HostOptions options) {
    return new PurgeSchedule(store, options);
  }

  /** Goes on with the backups, and then every day with all of it. */
  void goOn(Chores chores) {
    String what = "deleting what is old";
    chores.once(what, () -> purged(first));
    chores.every(
        what, DAY_HOURS, DAY_HOURS, () -> purged(store.classes().purge(keeping.months(), false)));
  }

  private void purged(CompletableFuture<Purged> purging) {
    tell(LOG.atInfo(), purging.join());
    if (backups != null) {
      Backups.in(backups).forEach(this::purge);
    }
  }

  private void purge(Path backup) {
    try {
      Purged purged = store.classes().purgeCopy(backup, keeping.months());
      tell(LOG.atInfo().addKeyValue("backup", backup.getFileName()), purged);
    } catch (RuntimeException unreadable) {
      LOG.atWarn()
          .addKeyValue("backup", backup.getFileName())
          .log("could not be gone through, trying again in a day: {}", unreadable.getMessage());
    }
  }

  private void tell(LoggingEventBuilder line, Purged purged) {
    if (purged.nothing()) {
      return;
    }
    LoggingEventBuilder told =
        purged.dropped().isEmpty()
            ? line
            : line.addKeyValue("dropped", String.join(",", purged.dropped()));
    told.addKeyValue("months", keeping.months())
        .addKeyValue("takes", purged.takes().size())
        .addKeyValue("ids", String.join(",", purged.takes()))
        .addKeyValue("members", purged.members())
        .addKeyValue("classes", purged.classes())
        .addKeyValue("rooms", purged.rooms())
        .log("deleted what has been kept long enough, or was dropped");
  }
}
