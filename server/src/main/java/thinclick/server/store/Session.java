package thinclick.server.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The store thread's connection, with what is worth keeping between groups. */
final class Session implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Session.class);

  final Handle handle;

  /** Numbers of takes and their players; they never change once committed. */
  final Map<String, TakeKeys> takes = new HashMap<>();

  /** Epochs read in this transaction, which keeps all other writers out. */
  final Map<String, Long> epochs = new HashMap<>();

  private @Nullable PreparedStatement insertAttack;

  /** Where a take's rows are found. */
  record TakeKeys(long number, Map<String, Integer> players) {}

  Session(Handle handle) {
    this.handle = handle;
  }

  void begin() {
    epochs.clear();
    if (takes.size() > 1_000) {
      takes.clear();
    }
    handle.begin();
  }

  void commit() {
    handle.commit();
  }

  /** The hottest statement of all, prepared once. */
  PreparedStatement insertAttack() throws SQLException {
    PreparedStatement ready = insertAttack;
    if (ready == null) {
      Connection connection = handle.getConnection();
      ready =
          connection.prepareStatement(
              """
              INSERT INTO attack (take, player, seq, micros, raw_micros, velocity, pitch,
                                  length_millis, late_by_millis, unsure)
              VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
              ON CONFLICT DO NOTHING
              """);
      insertAttack = ready;
    }
    return ready;
  }

  @Override
  public void close() {
    try {
      handle.close();
    } catch (RuntimeException broken) {
      LOG.debug("closing a broken connection", broken);
    }
  }
}
