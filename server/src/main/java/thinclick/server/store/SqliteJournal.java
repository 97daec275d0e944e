package thinclick.server.store;

import java.sql.SQLException;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.jdbi.v3.core.Handle;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.StrictJson;
import thinclick.server.room.JournalEntry;
import thinclick.server.room.RoomJournal;
import thinclick.server.room.RoomState;
import thinclick.server.season.NameKey;
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
      return AttackRows.played(session, played);
    }
    if (entry instanceof JournalEntry.Lengths lengths) {
      return AttackRows.lengths(session, lengths);
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
          .bind("file", StoredTakes.text(FileCodec.write(named(handle, rewritten))))
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
    } else if (entry instanceof JournalEntry.Renamed renamed) {
      String key = NameKey.of(renamed.from());
      PastTakes.rename(
          handle, name -> NameKey.of(name).equals(key), renamed.to(), null, renamed.takeId());
    } else if (entry instanceof JournalEntry.Reviewed reviewed) {
      boolean ofThese = PastTakes.names(reviewed.review(), handle, reviewed.takeId());
      handle
          .createUpdate(
              "UPDATE take SET review = :review, provisional = :provisional WHERE id = :take")
          .bind("review", ofThese ? JSON.writeValueAsString(reviewed.review()) : null)
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

  /** A room that is open while names are put right beside it does not put them wrong again. */
  private static Take named(Handle handle, JournalEntry.Rewritten rewritten) {
    return PastTakes.inStoredNames(handle, rewritten.takeId(), rewritten.written());
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
    Session.TakeKeys keys = session.keys(away.takeId());
    session
        .handle
        .createUpdate(
            """
            INSERT INTO gone (take, player, from_micros, to_micros)
            VALUES (:take, :player, :from, :to) ON CONFLICT DO NOTHING
            """)
        .bind("take", keys.number())
        .bind("player", keys.player(away.playerId()))
        .bind("from", away.span().fromMicros())
        .bind("to", away.span().toMicros())
        .execute();
  }
}
