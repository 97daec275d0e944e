package thinclick.server.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.json.BadInput;

/**
 * Copies of the database made while it is in use, by SQLite's online backup. A copy is a whole
 * database of its own: to restore one, stop the host and put it in the database's place.
 */
public final class Backups {
  private static final Logger LOG = LoggerFactory.getLogger(Backups.class);
  private static final String PREFIX = "thinclick-";

  /** The newest stay. */
  static final int KEPT = 14;

  private final Path database;
  private final Path folder;
  private final InstantSource wallClock;

  /**
   * @throws BadInput where the folder is not there
   */
  public Backups(Path database, Path folder, InstantSource wallClock) {
    if (!Files.isDirectory(folder)) {
      throw new BadInput("--backup-to", "expected a folder that exists, found " + folder);
    }
    this.database = database;
    this.folder = folder;
    this.wallClock = wallClock;
  }

  /** Makes one now; it appears under its name only when it is whole. */
  public Path make() throws IOException {
    Instant now = wallClock.instant().truncatedTo(ChronoUnit.SECONDS);
    String name = PREFIX + now.toString().replace(':', '-') + ".db";
    Path beside = folder.resolve("." + name + ".part");
    Files.deleteIfExists(beside);
    copyTo(beside);
    Path whole = folder.resolve(name);
    Files.move(beside, whole, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    forgetOld();
    LOG.info("backup {} made, {} bytes", whole.getFileName(), Files.size(whole));
    return whole;
  }

  /** The driver's own words for the online backup; a plain statement only. */
  private void copyTo(Path file) throws IOException {
    String quoted = file.toAbsolutePath().toString().replace("'", "''");
    try (Handle handle = Database.connect(database);
        Statement statement = handle.getConnection().createStatement()) {
      statement.executeUpdate("backup to '" + quoted + "'");
    } catch (SQLException problem) {
      throw new IOException("no backup to " + file, problem);
    }
  }

  private void forgetOld() throws IOException {
    List<Path> all = in(folder);
    for (Path old : all.subList(0, Math.max(0, all.size() - KEPT))) {
      Files.delete(old);
    }
  }

  /** Those in a folder that a host made, the oldest first; none where it cannot be read. */
  public static List<Path> in(Path folder) {
    try (Stream<Path> found = Files.list(folder)) {
      return found
          .filter(file -> file.getFileName().toString().matches(PREFIX + "[^.]*\\.db"))
          .sorted()
          .toList();
    } catch (IOException unreadable) {
      LOG.warn("no backups can be listed in {}: {}", folder, unreadable.toString());
      return List.of();
    }
  }
}
