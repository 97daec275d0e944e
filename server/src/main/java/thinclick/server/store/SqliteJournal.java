package thinclick.server.store;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.json.StrictJson;
import thinclick.protocol.message.ClientMessage.AttackLength;
import thinclick.protocol.message.ClientMessage.WireAttack;
import thinclick.server.room.JournalEntry;
import thinclick.server.room.RoomJournal;
import thinclick.server.room.RoomState;
import tools.jackson.databind.json.JsonMapper;

/** The journal of rooms in SQLite. */
final class SqliteJournal implements RoomJournal {
  private static final long LARGEST_STATE = 64L << 20;
  private static final JsonMapper JSON = StrictJson.mapper(false, LARGEST_STATE);

  private final StoreLoop loop;
  private final InstantSource wallClock;

  SqliteJournal(StoreLoop loop, InstantSource wallClock) {
    this.loop = loop;
    this.wallClock = wallClock;
  }

  @Override
  public CompletableFuture<Opened> open(String roomId, String word) {
    return loop.submit(
        () -> "opening room " + roomId,
        session -> {
          session.epochs.remove(roomId);
          return open(session.handle, roomId, word);
        });
  }

  private Opened open(Handle handle, String roomId, String word) {
    long epoch =
        handle
            .createQuery(
                """
                INSERT INTO room (id, word, epoch, opened_at) VALUES (:id, :word, 1, :now)
                ON CONFLICT (id) DO UPDATE SET epoch = epoch + 1
                RETURNING epoch
                """)
            .bind("id", roomId)
            .bind("word", word)
            .bind("now", wallClock.instant().toString())
            .mapTo(Long.class)
            .one();
    String state =
        handle
            .createQuery("SELECT state FROM room WHERE id = :id AND state IS NOT NULL")
            .bind("id", roomId)
            .mapTo(String.class)
            .findOne()
            .orElse(null);
    if (state == null) {
      return new Opened(epoch, null, Map.of());
    }
    RoomState read = JSON.readValue(state, RoomState.class);
    Map<String, StoredTake> takes = new HashMap<>();
    for (RoomState.TakeState take : read.takes()) {
      takes.put(take.announced().takeId(), storedTake(handle, take.announced().takeId()));
    }
    interruptForgotten(handle, roomId, List.copyOf(takes.keySet()));
    return new Opened(epoch, read, takes);
  }

  /** A take that began just before a kill, and that the last state does not know of. */
  private static void interruptForgotten(Handle handle, String roomId, List<String> known) {
    handle
        .createQuery("SELECT id FROM take WHERE room = :room AND ended IS NULL")
        .bind("room", roomId)
        .mapTo(String.class)
        .list()
        .stream()
        .filter(id -> !known.contains(id))
        .forEach(
            id ->
                handle
                    .createUpdate(
                        "UPDATE take SET ended = 'interrupted', end_micros = 0 WHERE id = :id")
                    .bind("id", id)
                    .execute());
  }

  private static StoredTake storedTake(Handle handle, String takeId) {
    Map<String, List<Long>> seqs = new LinkedHashMap<>();
    handle
        .createQuery(
            """
            SELECT p.id AS player, a.seq FROM take t
            JOIN take_player p ON p.take = t.number
            JOIN attack a ON a.take = t.number AND a.player = p.player
            WHERE t.id = :take ORDER BY p.player, a.seq
            """)
        .bind("take", takeId)
        .map(
            (row, context) ->
                seqs.computeIfAbsent(row.getString("player"), id -> new ArrayList<>())
                    .add(row.getLong("seq")))
        .list();
    Long last =
        handle
            .createQuery(
                """
                SELECT max(a.micros) FROM attack a JOIN take t ON t.number = a.take
                WHERE t.id = :take
                """)
            .bind("take", takeId)
            .mapTo(Long.class)
            .findOne()
            .orElse(null);
    return new StoredTake(seqs, last);
  }

  @Override
  public CompletableFuture<Outcome> append(String roomId, long epoch, JournalEntry entry) {
    return loop.submit(
            () -> entry.getClass().getSimpleName() + " of room " + roomId,
            session -> write(session, roomId, epoch, entry))
        .exceptionally(problem -> new Outcome.Refused(Failure.of(problem).code()));
  }

  private Outcome write(Session session, String roomId, long epoch, JournalEntry entry)
      throws SQLException {
    Long present = session.epochs.computeIfAbsent(roomId, id -> epochOf(session.handle, id));
    if (present != epoch) {
      return new Outcome.Fenced();
    }
    if (entry instanceof JournalEntry.Played played) {
      return played(session, played);
    }
    if (entry instanceof JournalEntry.Lengths lengths) {
      return lengths(session, lengths);
    }
    Handle handle = session.handle;
    if (entry instanceof JournalEntry.State state) {
      handle
          .createUpdate("UPDATE room SET state = :state, word = :word WHERE id = :id")
          .bind("state", JSON.writeValueAsString(state.state()))
          .bind("word", state.state().word())
          .bind("id", roomId)
          .execute();
    } else if (entry instanceof JournalEntry.TakeBegun begun) {
      begin(handle, roomId, epoch, begun);
    } else if (entry instanceof JournalEntry.Rewritten rewritten) {
      handle
          .createUpdate("UPDATE take SET file = :file WHERE id = :id")
          .bind("file", StoredTakes.text(FileCodec.write(rewritten.written())))
          .bind("id", rewritten.takeId())
          .execute();
    } else if (entry instanceof JournalEntry.Away away) {
      away(session, away);
    } else if (entry instanceof JournalEntry.PlayedThrough through) {
      handle
          .createUpdate(
              """
              UPDATE take_player SET last_seq = :seq
              WHERE id = :player AND take = (SELECT number FROM take WHERE id = :take)
              """)
          .bind("seq", through.lastSeq())
          .bind("player", through.playerId())
          .bind("take", through.takeId())
          .execute();
    } else if (entry instanceof JournalEntry.TakeEnded ended) {
      handle
          .createUpdate("UPDATE take SET ended = :reason, end_micros = :at WHERE id = :take")
          .bind("reason", StoredTakes.word(ended.reason()))
          .bind("at", ended.atMicros())
          .bind("take", ended.takeId())
          .execute();
    } else if (entry instanceof JournalEntry.Reviewed reviewed) {
      handle
          .createUpdate(
              "UPDATE take SET review = :review, provisional = :provisional WHERE id = :take")
          .bind("review", JSON.writeValueAsString(reviewed.review()))
          .bind("provisional", reviewed.provisional())
          .bind("take", reviewed.takeId())
          .execute();
    } else if (entry instanceof JournalEntry.Closed) {
      handle
          .createUpdate("UPDATE room SET closed_at = :now, state = NULL WHERE id = :id")
          .bind("now", wallClock.instant().toString())
          .bind("id", roomId)
          .execute();
    }
    return new Outcome.Stored();
  }

  private static Long epochOf(Handle handle, String roomId) {
    return handle
        .createQuery("SELECT epoch FROM room WHERE id = :id")
        .bind("id", roomId)
        .mapTo(Long.class)
        .findOne()
        .orElse(-1L);
  }

  private void begin(Handle handle, String roomId, long epoch, JournalEntry.TakeBegun begun) {
    long number =
        handle
            .createQuery(
                """
                INSERT INTO take (id, room, epoch, title, file, begun_at, class)
                VALUES (:id, :room, :epoch, :title, :file, :now,
                        (SELECT class FROM room WHERE id = :room)) RETURNING number
                """)
            .bind("id", begun.takeId())
            .bind("room", roomId)
            .bind("epoch", epoch)
            .bind("title", begun.written().title())
            .bind("file", StoredTakes.text(FileCodec.write(begun.written())))
            .bind("now", wallClock.instant().toString())
            .mapTo(Long.class)
            .one();
    StoredTakes.insertPlayers(handle, number, begun.seats());
  }

  private static void away(Session session, JournalEntry.Away away) {
    Session.TakeKeys keys = keys(session, away.takeId());
    session
        .handle
        .createUpdate(
            """
            INSERT INTO gone (take, player, from_micros, to_micros)
            VALUES (:take, :player, :from, :to) ON CONFLICT DO NOTHING
            """)
        .bind("take", keys.number())
        .bind("player", player(keys, away.playerId()))
        .bind("from", away.span().fromMicros())
        .bind("to", away.span().toMicros())
        .execute();
  }

  // ------------------------------------------------------------------ attacks

  private static Outcome played(Session session, JournalEntry.Played played) throws SQLException {
    Session.TakeKeys keys = keys(session, played.takeId());
    int player = player(keys, played.playerId());
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

  private static Outcome lengths(Session session, JournalEntry.Lengths lengths) {
    Session.TakeKeys keys = keys(session, lengths.takeId());
    int player = player(keys, lengths.playerId());
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

  private static Session.TakeKeys keys(Session session, String takeId) {
    return session.takes.computeIfAbsent(takeId, id -> readKeys(session.handle, id));
  }

  private static Session.TakeKeys readKeys(Handle handle, String takeId) {
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
    return new Session.TakeKeys(number[0], players);
  }

  private static int player(Session.TakeKeys keys, String playerId) {
    Integer player = keys.players().get(playerId);
    if (player == null) {
      throw new IllegalStateException("no player " + playerId + " in the take");
    }
    return player;
  }
}
