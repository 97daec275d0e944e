package thinclick.server.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
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

  /** 16 MB of journal: whoever plays writes the same few pages again and again. */
  private static final int PAGES_BEFORE_COPYING = 4_000;

  final Handle handle;

  /** Numbers of takes and their players; they never change once committed. */
  final Map<String, TakeKeys> takes = new HashMap<>();

  /** Epochs as they are in this transaction, which keeps all other writers out. */
  final Map<String, Long> epochs = new HashMap<>();

  private long othersWrites = -1;
  private @Nullable PreparedStatement readOthersWrites;

  private @Nullable PreparedStatement insertAttack;

  /** Where a take's rows are found. */
  record TakeKeys(long number, Map<String, Integer> players) {
    int player(String playerId) {
      Integer player = players.get(playerId);
      if (player == null) {
        throw new IllegalStateException("no player " + playerId + " in the take");
      }
      return player;
    }
  }

  Session(Handle handle) {
    this.handle = handle;
    // The last of many versions of a page is the only one worth copying to the database.
    handle.execute("PRAGMA wal_autocheckpoint = " + PAGES_BEFORE_COPYING);
  }

  void begin() throws SQLException {
    if (takes.size() > 1_000) {
      takes.clear();
    }
    handle.begin();
    long writes = othersWrites();
    if (writes != othersWrites || epochs.size() > 1_000) {
      epochs.clear(); // somebody else has written: perhaps a newer opener of a room
      othersWrites = writes;
    }
  }

  /** Changes where another connection has committed since (SQLite, PRAGMA data_version). */
  private long othersWrites() throws SQLException {
    PreparedStatement ready = readOthersWrites;
    if (ready == null) {
      ready = handle.getConnection().prepareStatement("PRAGMA data_version");
      readOthersWrites = ready;
    }
    try (ResultSet version = ready.executeQuery()) {
      version.next();
      return version.getLong(1);
    }
  }

  void commit() {
    handle.commit();
  }

  /** Where the rows of a take are. */
  TakeKeys keys(String takeId) {
    return takes.computeIfAbsent(takeId, this::readKeys);
  }

  private TakeKeys readKeys(String takeId) {
    Map<String, Integer> players = new HashMap<>();
    long[] number = {-1};
    handle
        .createQuery(
            """
            SELECT t.number, p.player, p.id FROM take t JOIN take_player p ON p.take = t.number
            WHERE t.id = :take
            """)
        .bind("take", takeId)
        .map(
            (row, context) -> {
              number[0] = row.getLong("number");
              return players.put(row.getString("id"), row.getInt("player"));
            })
        .list();
    return new TakeKeys(number[0], players);
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
