package thinclick.server.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationState;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementExceptions;
import org.jdbi.v3.core.statement.StatementExceptions.MessageRendering;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteConfig.TransactionMode;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteException;
import thinclick.protocol.json.BadInput;

/** The SQLite file: how it is opened and brought to the schema that this code knows. */
final class Database {
  private static final String OPTION = "--db";
  private static final int BUSY_MILLIS = 5_000;

  private final Jdbi jdbi;

  private Database(Jdbi jdbi) {
    this.jdbi = jdbi;
  }

  /**
   * Opens the file, made where it is missing, and brings its schema up to date.
   *
   * @throws BadInput where it cannot be had, is something else, or was written by a newer Thinclick
   */
  static Database open(Path file) {
    return open(file, BUSY_MILLIS);
  }

  /**
   * The same where another writer is waited for at most so long before the disk counts as at fault.
   */
  static Database open(Path file, int busyMillis) {
    checkPlace(file);
    SQLiteDataSource source = source(file.toAbsolutePath().toString(), busyMillis);
    try {
      migrate(source, file);
    } catch (FlywayException problem) {
      throw new BadInput(OPTION, "expected a database of Thinclick, found " + file + why(problem));
    }
    return new Database(jdbi(source));
  }

  /** A connection to a database that is known to be one. */
  static Handle connect(Path file) {
    return jdbi(source(file.toAbsolutePath().toString(), BUSY_MILLIS)).open();
  }

  /** Loads what every database needs, by making one in memory. */
  static void warmUp() {
    SQLiteDataSource source = source(":memory:", BUSY_MILLIS);
    migrate(source, Path.of("memory"));
    jdbi(source).open().close();
  }

  private static Jdbi jdbi(SQLiteDataSource source) {
    Jdbi jdbi = Jdbi.create(source);
    // What was to be written names people; a log must not.
    jdbi.getConfig(StatementExceptions.class).setMessageRendering(MessageRendering.NONE);
    return jdbi;
  }

  private static SQLiteDataSource source(String place, int busyMillis) {
    SQLiteDataSource source = new SQLiteDataSource(config(busyMillis));
    source.setUrl("jdbc:sqlite:" + place);
    return source;
  }

  static void checkPlace(Path file) {
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new BadInput(OPTION, "expected a file in a folder that exists, found " + file);
    }
    if (Files.isDirectory(file)) {
      throw new BadInput(OPTION, "expected a file, found the folder " + file);
    }
  }

  private static SQLiteConfig config(int busyMillis) {
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(JournalMode.WAL);
    // A commit is on the disk when it returns: a process kill cannot tell FULL from NORMAL, a power
    // cut can.
    config.setSynchronous(SynchronousMode.FULL);
    config.setTransactionMode(TransactionMode.IMMEDIATE);
    config.setBusyTimeout(busyMillis);
    config.enforceForeignKeys(true);
    config.setPragma(SQLiteConfig.Pragma.SECURE_DELETE, "true");
    return config;
  }

  private static void migrate(SQLiteDataSource source, Path file) {
    Flyway flyway =
        Flyway.configure(Database.class.getClassLoader())
            .dataSource(source)
            .resourceProvider(new Migrations())
            .javaMigrationClassProvider(List::of)
            .load();
    for (MigrationInfo migration : flyway.info().all()) {
      if (migration.getState() == MigrationState.FUTURE_SUCCESS) {
        throw new BadInput(
            OPTION,
            "expected a database of a version this program knows, found "
                + file
                + " of version "
                + migration.getVersion()
                + "; a newer Thinclick wrote it");
      }
    }
    flyway.migrate();
  }

  private static String why(Throwable problem) {
    for (Throwable cause = problem; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLiteException sqlite) {
        return " (" + sqlite.getResultCode().message + ")";
      }
    }
    return "";
  }

  /** A connection of one's own. */
  Handle handle() {
    return jdbi.open();
  }
}
