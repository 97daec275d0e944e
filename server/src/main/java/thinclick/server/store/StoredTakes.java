package thinclick.server.store;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Span;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.TakeNews.StopReason;

/** Takes as they are kept: listed, put together, taken in from a file. */
final class StoredTakes {
  /** So near the end of a span a tap is of the time before it or after it. */
  private static final long EDGE_MICROS = 500_000;

  private StoredTakes() {}

  private record Row(long number, String file, @Nullable String ended, @Nullable Long endMicros) {}

  static String word(StopReason reason) {
    return reason.name().toLowerCase(Locale.ROOT);
  }

  static String text(byte[] json) {
    return new String(json, StandardCharsets.UTF_8);
  }

  static void insertPlayers(Handle handle, long take, Map<String, String> names) {
    int player = 0;
    for (Map.Entry<String, String> seat : names.entrySet()) {
      handle
          .createUpdate(
              """
              INSERT INTO take_player (take, player, id, name) VALUES (:take, :player, :id, :name)
              """)
          .bind("take", take)
          .bind("player", ++player)
          .bind("id", seat.getKey())
          .bind("name", seat.getValue())
          .execute();
    }
  }

  static List<Store.TakeLine> list(Handle handle) {
    return handle
        .createQuery(
            """
            SELECT t.id, t.title, t.begun_at, t.ended,
                   (SELECT count(*) FROM attack a WHERE a.take = t.number) AS attacks,
                   (SELECT json_group_array(name) FROM
                     (SELECT name FROM take_player p WHERE p.take = t.number ORDER BY player)
                   ) AS players
            FROM take t ORDER BY t.number
            """)
        .map(
            (row, context) ->
                new Store.TakeLine(
                    row.getString("id"),
                    row.getString("title"),
                    Instant.parse(row.getString("begun_at")),
                    row.getString("ended"),
                    Names.fromJson(row.getString("players")),
                    row.getLong("attacks")))
        .list();
  }

  /** The take with everything that is stored of it; empty where there is none of that id. */
  static Optional<Take> find(Handle handle, String takeId) {
    return handle
        .createQuery("SELECT number, file, ended, end_micros FROM take WHERE id = :id")
        .bind("id", takeId)
        .map(
            (row, context) ->
                new Row(
                    row.getLong("number"),
                    row.getString("file"),
                    row.getString("ended"),
                    Columns.longOrNull(row, "end_micros")))
        .findOne()
        .map(row -> whole(handle, row));
  }

  private static Take whole(Handle handle, Row row) {
    Take written = FileCodec.readTake(row.file().getBytes(StandardCharsets.UTF_8));
    List<Attack> attacks = attacks(handle, row.number());
    Map<String, List<Span>> gone = gone(handle, row.number());
    List<Part> parts = new ArrayList<>();
    for (Part part : written.parts()) {
      List<Span> away = new ArrayList<>(part.away());
      for (Span span : gone.getOrDefault(part.player(), List.of())) {
        Span silent = silent(span, part.player(), attacks);
        if (silent != null) {
          away.add(silent);
        }
      }
      parts.add(part.edited().away(away).part());
    }
    return written
        .edited()
        .parts(parts)
        .attacks(attacks)
        .endMicros(endMicros(row, written, attacks))
        .take();
  }

  /**
   * The part of a span in which a player was away, null for none. Cut off is not away: a player who
   * goes on playing sends it all later. A tap as the computer fell asleep or woke makes the span
   * shorter, and no more.
   */
  private static @Nullable Span silent(Span span, String player, List<Attack> attacks) {
    long from = span.fromMicros();
    long to = span.toMicros();
    long edge = Math.min(EDGE_MICROS, (to - from) / 8);
    for (Attack attack : attacks) { // ascending
      long at = attack.micros();
      if (!attack.player().equals(player) || at < from || at >= to) {
        continue;
      }
      if (at - span.fromMicros() < edge) {
        from = at + 1;
      } else if (span.toMicros() - at < edge) {
        to = at;
      } else {
        return null;
      }
    }
    return from < to ? new Span(from, to) : null;
  }

  /** Null where it ran to its end; half a step after the last attack where the host died. */
  private static @Nullable Long endMicros(Row row, Take written, List<Attack> attacks) {
    if (row.ended() == null || row.ended().equals(word(StopReason.FINISHED))) {
      return written.endMicros();
    }
    long end = row.endMicros() == null ? written.startMicros() : row.endMicros();
    if (row.ended().equals(word(StopReason.INTERRUPTED))) {
      long margin = Math.round(written.grid().stepMicros() / 2);
      for (Attack attack : attacks) {
        end = Math.max(end, attack.micros() + margin);
      }
    }
    return Math.max(0, end);
  }

  private static List<Attack> attacks(Handle handle, long take) {
    return handle
        .createQuery(
            """
            SELECT p.name, a.micros, a.velocity, a.pitch, a.length_millis, a.late_by_millis,
                   a.set_aside, a.unsure
            FROM attack a JOIN take_player p ON p.take = a.take AND p.player = a.player
            WHERE a.take = :take ORDER BY a.micros, a.player, a.seq
            """)
        .bind("take", take)
        .map(
            (row, context) ->
                new Attack(
                    row.getString("name"),
                    row.getLong("micros"),
                    Columns.intOrNull(row, "velocity"),
                    Columns.intOrNull(row, "pitch"),
                    Columns.doubleOrNull(row, "length_millis"),
                    Columns.doubleOrNull(row, "late_by_millis"),
                    row.getInt("set_aside") == 1,
                    row.getInt("unsure") == 1))
        .list();
  }

  private static Map<String, List<Span>> gone(Handle handle, long take) {
    Map<String, List<Span>> gone = new HashMap<>();
    handle
        .createQuery(
            """
            SELECT p.name, g.from_micros, g.to_micros
            FROM gone g JOIN take_player p ON p.take = g.take AND p.player = g.player
            WHERE g.take = :take ORDER BY g.player, g.from_micros
            """)
        .bind("take", take)
        .map(
            (row, context) ->
                gone.computeIfAbsent(row.getString("name"), name -> new ArrayList<>())
                    .add(new Span(row.getLong("from_micros"), row.getLong("to_micros"))))
        .list();
    return gone;
  }

  /** Takes a take in from a file, under an id that is not used yet. */
  static void insert(Handle handle, String takeId, Take take, Instant now) {
    insert(handle, takeId, take, now, word(StopReason.FINISHED), null, null);
  }

  /**
   * The same with what else is known of it.
   *
   * @param ended how it ended, in the words of {@code stopped}
   * @param review as JSON, or null
   * @param classNumber of the class it belongs to, or null
   */
  static void insert(
      Handle handle,
      String takeId,
      Take take,
      Instant begunAt,
      String ended,
      @Nullable String review,
      @Nullable Long classNumber) {
    long number =
        handle
            .createQuery(
                """
                INSERT INTO take (id, title, file, begun_at, ended, end_micros, review, class)
                VALUES (:id, :title, :file, :begun, :ended, :end, :review, :class)
                RETURNING number
                """)
            .bind("id", takeId)
            .bind("title", take.title())
            .bind("file", text(FileCodec.write(take.withAttacks(List.of()))))
            .bind("begun", begunAt.toString())
            .bind("ended", ended)
            .bind("end", take.endMicros())
            .bind("review", review)
            .bind("class", classNumber)
            .mapTo(Long.class)
            .one();
    Map<String, String> names = new LinkedHashMap<>();
    Map<String, Integer> players = new HashMap<>();
    for (Part part : take.parts()) {
      names.put(takeId + "-p" + (names.size() + 1), part.player());
      players.put(part.player(), names.size());
    }
    insertPlayers(handle, number, names);
    Map<String, Long> seqs = new HashMap<>();
    for (Attack attack : take.attacks()) {
      handle
          .createUpdate(
              """
              INSERT INTO attack (take, player, seq, micros, velocity, pitch, length_millis,
                                  late_by_millis, unsure, set_aside)
              VALUES (:take, :player, :seq, :micros, :velocity, :pitch, :length, :late, :unsure,
                      :aside)
              """)
          .bind("take", number)
          .bind("player", players.get(attack.player()))
          .bind("seq", seqs.merge(attack.player(), 1L, Long::sum))
          .bind("micros", attack.micros())
          .bind("velocity", attack.velocity())
          .bind("pitch", attack.pitch())
          .bind("length", attack.lengthMillis())
          .bind("late", attack.lateByMillis())
          .bind("unsure", attack.unsure())
          .bind("aside", attack.setAside())
          .execute();
    }
  }
}
