package thinclick.server.store;

import java.sql.SQLException;
import org.jdbi.v3.core.JdbiException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * What went wrong in the database, sorted by whether the same may succeed later. SQLite's own
 * result codes decide, their meaning as in <a
 * href="https://sqlite.org/rescode.html">sqlite.org</a>.
 *
 * @param kind whether to try again
 * @param code SQLite's name of it, extended where there is one; the exception's where it says none
 */
record Failure(Kind kind, String code) {
  /** The low eight bits of an extended code are its primary code. */
  private static final int PRIMARY = 0xff;

  /** Whether to try again. */
  enum Kind {
    /** The disk or another writer is in the way: the same may succeed as soon as that is over. */
    PASSING,

    /** Perhaps only this connection is broken: once more on a new one tells. */
    OF_THE_CONNECTION,

    /** The statement or its content is at fault: it will never succeed. */
    LASTING
  }

  static Failure of(Throwable problem) {
    for (Throwable cause = problem; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLiteException sqlite) {
        SQLiteErrorCode code = sqlite.getResultCode();
        return new Failure(kind(SQLiteErrorCode.getErrorCode(code.code & PRIMARY)), code.name());
      }
    }
    // The driver says without a code that a connection is closed, Jdbi that a statement is wrong.
    boolean unsaid = problem instanceof JdbiException || problem instanceof SQLException;
    return new Failure(
        unsaid ? Kind.OF_THE_CONNECTION : Kind.LASTING, problem.getClass().getSimpleName());
  }

  private static Kind kind(SQLiteErrorCode primary) {
    return switch (primary) {
      case SQLITE_FULL, // the disk, or the size that the database may have
          SQLITE_IOERR, // reading, writing, syncing
          SQLITE_BUSY, // another process has the database
          SQLITE_LOCKED, // another connection of this one
          SQLITE_READONLY, // the file's permissions, or a log that must be recovered first
          SQLITE_PERM,
          SQLITE_CANTOPEN,
          SQLITE_PROTOCOL, // two that open it at once
          SQLITE_NOMEM,
          SQLITE_INTERRUPT ->
          Kind.PASSING;
      case SQLITE_ABORT, // a statement that another's rollback took along
          SQLITE_SCHEMA,
          SQLITE_MISUSE,
          SQLITE_CORRUPT,
          SQLITE_NOTADB ->
          Kind.OF_THE_CONNECTION;
      default -> Kind.LASTING; // SQLITE_ERROR (no such table), SQLITE_CONSTRAINT, SQLITE_TOOBIG
    };
  }
}
