package thinclick.server.host;

import java.io.IOException;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.server.store.Backups;

/** Makes a backup at the start and every so many hours, on a thread of its own. */
final class BackupSchedule implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(BackupSchedule.class);

  private final ScheduledExecutorService thread;

  private BackupSchedule(ScheduledExecutorService thread) {
    this.thread = thread;
  }

  /** Refuses a folder that is not there before anything is started. */
  static void check(HostOptions options) {
    Path folder = options.backupFolder();
    if (folder != null) {
      new Backups(options.database(), folder, InstantSource.system());
    }
  }

  /** Null where no backups are wanted. */
  static @Nullable BackupSchedule of(HostOptions options) {
    Path folder = options.backupFolder();
    if (folder == null) {
      return null;
    }
    Backups backups = new Backups(options.database(), folder, InstantSource.system());
    ScheduledExecutorService thread =
        Executors.newSingleThreadScheduledExecutor(
            task -> {
              Thread made = new Thread(task, "thinclick-backup");
              made.setDaemon(true);
              return made;
            });
    var unused =
        thread.scheduleAtFixedRate(() -> make(backups), 0, options.backupHours(), TimeUnit.HOURS);
    return new BackupSchedule(thread);
  }

  private static void make(Backups backups) {
    try {
      backups.make();
    } catch (IOException | RuntimeException problem) {
      LOG.error("no backup could be made, trying again at the next hour of it", problem);
    }
  }

  /** Lets a backup that has begun come to its end. */
  @Override
  public void close() {
    thread.shutdown();
    try {
      if (!thread.awaitTermination(10, TimeUnit.SECONDS)) {
        LOG.warn("a backup was still being made after 10 s");
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }
}
