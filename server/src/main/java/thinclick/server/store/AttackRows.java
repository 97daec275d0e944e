package thinclick.server.store;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.TakeMessage.AttackLength;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.server.room.JournalEntry;
import thinclick.server.room.RoomJournal.Outcome;

/** Attacks as they are journaled, and how long they were held: the first content stays. */
final class AttackRows {
  private AttackRows() {}

  static Outcome played(Session session, JournalEntry.Played played) throws SQLException {
    Session.TakeKeys keys = session.keys(played.takeId());
    int player = keys.player(played.playerId());
    int written = 0;
    List<Long> conflicts = new ArrayList<>();
    PreparedStatement insert = session.insertAttack();
    for (int i = 0; i < played.attacks().size(); i++) {
      long seq = played.firstSeq() + i;
      WireAttack attack = played.attacks().get(i);
      if (insert(insert, keys.number(), player, seq, attack)) {
        written++;
      } else if (!same(attack, stored(session.handle, keys.number(), player, seq))) {
        conflicts.add(seq);
      }
    }
    if (!conflicts.isEmpty()) {
      return new Outcome.Conflict(List.copyOf(conflicts));
    }
    return written == 0 ? new Outcome.Duplicate() : new Outcome.Stored();
  }

  /** A length that came later is no other content: the attack as it was sent first has none. */
  private static boolean same(WireAttack sent, WireAttack stored) {
    return sent.lengthMillis() == null ? sent.equals(stored.withLength(null)) : sent.equals(stored);
  }

  static Outcome lengths(Session session, JournalEntry.Lengths lengths) {
    Session.TakeKeys keys = session.keys(lengths.takeId());
    int player = keys.player(lengths.playerId());
    PreparedBatch batch =
        session.handle.prepareBatch(
            """
            UPDATE attack SET length_millis = :length
            WHERE take = :take AND player = :player AND seq = :seq AND length_millis IS NULL
            """);
    for (AttackLength item : lengths.items()) {
      batch
          .bind("length", item.lengthMillis())
          .bind("take", keys.number())
          .bind("player", player)
          .bind("seq", item.seq())
          .add();
    }
    int written = Arrays.stream(batch.execute()).sum();
    return written == 0 ? new Outcome.Duplicate() : new Outcome.Stored();
  }

  private static boolean insert(
      PreparedStatement insert, long take, int player, long seq, WireAttack attack)
      throws SQLException {
    insert.setLong(1, take);
    insert.setInt(2, player);
    insert.setLong(3, seq);
    insert.setLong(4, attack.micros());
    set(insert, 5, attack.rawMicros(), Types.INTEGER);
    set(insert, 6, attack.velocity(), Types.INTEGER);
    set(insert, 7, attack.pitch(), Types.INTEGER);
    set(insert, 8, attack.lengthMillis(), Types.REAL);
    set(insert, 9, attack.lateByMillis(), Types.REAL);
    insert.setInt(10, attack.unsure() ? 1 : 0);
    return insert.executeUpdate() == 1;
  }

  private static void set(PreparedStatement insert, int at, @Nullable Number value, int type)
      throws SQLException {
    if (value == null) {
      insert.setNull(at, type);
    } else if (type == Types.REAL) {
      insert.setDouble(at, value.doubleValue());
    } else {
      insert.setLong(at, value.longValue());
    }
  }

  private static WireAttack stored(Handle handle, long take, int player, long seq) {
    return handle
        .createQuery(
            """
            SELECT micros, raw_micros, velocity, pitch, length_millis, late_by_millis, unsure
            FROM attack WHERE take = :take AND player = :player AND seq = :seq
            """)
        .bind("take", take)
        .bind("player", player)
        .bind("seq", seq)
        .map(
            (row, context) ->
                new WireAttack(
                    row.getLong("micros"),
                    Columns.longOrNull(row, "raw_micros"),
                    Columns.intOrNull(row, "velocity"),
                    Columns.intOrNull(row, "pitch"),
                    Columns.doubleOrNull(row, "length_millis"),
                    Columns.doubleOrNull(row, "late_by_millis"),
                    row.getInt("unsure") == 1))
        .one();
  }
}
