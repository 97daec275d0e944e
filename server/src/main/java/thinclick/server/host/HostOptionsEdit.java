package thinclick.server.host;

import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.time.MonotonicClock;
import thinclick.protocol.time.Timers;
import thinclick.server.net.RoomNews;

/** Host options on their way to others that differ in something. */
final class HostOptionsEdit {
  Reach reach;
  private final Path database;
  MonotonicClock clock;
  @Nullable Timers timers;
  @Nullable String hostKey;
  @Nullable Path backupFolder;
  int backupHours;
  @Nullable Path material;
  Locale language;
  RoomNews news;
  Keeping keeping;

  HostOptionsEdit(HostOptions from) {
    reach = from.reach();
    database = from.database();
    clock = from.clock();
    timers = from.timers();
    hostKey = from.hostKey();
    backupFolder = from.backupFolder();
    backupHours = from.backupHours();
    material = from.material();
    language = from.language();
    news = from.news();
    keeping = from.keeping();
  }

  HostOptions done() {
    return new HostOptions(
        reach,
        database,
        clock,
        timers,
        hostKey,
        backupFolder,
        backupHours,
        material,
        language,
        news,
        keeping);
  }
}
