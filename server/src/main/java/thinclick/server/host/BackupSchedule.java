package thinclick.server.host;

import java.nio.file.Path;
import java.time.InstantSource;
import thinclick.server.store.Backups;

/** Makes a backup at the start and every so many hours. */
final class BackupSchedule {
  private BackupSchedule() {}

  /** Refuses a folder that is not there before anything is started. */
  static void check(HostOptions options) {
    Path folder = options.backupFolder();
    if (folder != null) {
      new Backups(options.database(), folder, InstantSource.system());
    }
  }

  /** Begins, where backups are wanted. */
  static void begin(Chores chores, HostOptions options) {
    Path folder = options.backupFolder();
    if (folder != null) {
      Backups backups = new Backups(options.database(), folder, InstantSource.system());
      chores.every("a backup", 0, options.backupHours(), backups::make);
    }
  }
}
