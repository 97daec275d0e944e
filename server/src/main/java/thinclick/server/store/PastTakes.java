package thinclick.server.store;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.TakeNews.StopReason;
import thinclick.server.season.NameKey;
import tools.jackson.databind.JsonNode;

/** Takes that have ended: their reviews, their removal, their players' names. */
final class PastTakes {
  private PastTakes() {}

  static List<Store.KeptTake> all(Handle handle) {
    return kept(
        handle.createQuery(
            """
            SELECT id, begun_at, ended, file, review FROM take
            WHERE ended IS NOT NULL ORDER BY begun_at, number
            """));
  }

  /** Those of one class. */
  static List<Store.KeptTake> ofClass(Handle handle, long classNumber) {
    return kept(
        handle
            .createQuery(
                """
                SELECT id, begun_at, ended, file, review FROM take
                WHERE ended IS NOT NULL AND class = :class ORDER BY begun_at, number
                """)
            .bind("class", classNumber));
  }

  private static List<Store.KeptTake> kept(Query query) {
    return query
        .map(
            (row, context) ->
                new Store.KeptTake(
                    row.getString("id"),
                    Instant.parse(row.getString("begun_at")),
                    row.getString("ended"),
                    take(row.getString("file")),
                    row.getString("review")))
        .list();
  }

  /**
   * Ended takes of a drill that a room may know of, the newest first: its own, and those of the
   * class it is held for; for a room without a class those that belong to none.
   */
  static List<Store.PastTake> knownIn(Handle handle, String roomId, String title, int most) {
    return handle
        .createQuery(
            """
            SELECT t.number, t.id, t.begun_at, t.end_micros, t.ended, t.file,
                   t.room IS :room AS same_room, t.class IS NOT NULL AS in_class
            FROM take t
            WHERE t.ended IS NOT NULL AND t.title = :title AND t.review IS NOT NULL
              AND (t.room IS :room OR t.class IS (SELECT class FROM room WHERE id = :room))
            ORDER BY t.begun_at DESC, t.number DESC LIMIT :most
            """)
        .bind("room", roomId)
        .bind("title", title)
        .bind("most", most)
        .map(
            (row, context) ->
                new Store.PastTake(
                    row.getString("id"),
                    Instant.parse(row.getString("begun_at")),
                    ended(row),
                    row.getBoolean("same_room"),
                    row.getBoolean("in_class"),
                    playersById(handle, row.getLong("number"))))
        .list();
  }

  /** What was written, with its end where it did not run to its own. */
  private static Take ended(ResultSet row) throws SQLException {
    Take written = take(row.getString("file"));
    Long end = Columns.longOrNull(row, "end_micros");
    boolean whole = StoredTakes.word(StopReason.FINISHED).equals(row.getString("ended"));
    return whole || end == null ? written : written.edited().endMicros(Math.max(0, end)).take();
  }

  private static Map<String, String> playersById(Handle handle, long take) {
    Map<String, String> names = new LinkedHashMap<>();
    handle
        .createQuery("SELECT id, name FROM take_player WHERE take = :take ORDER BY player")
        .bind("take", take)
        .map((row, context) -> names.put(row.getString("id"), row.getString("name")))
        .list();
    return names;
  }

  /** The review that is kept of a take; empty where there is none. */
  static Optional<String> review(Handle handle, String takeId) {
    return handle
        .createQuery("SELECT review FROM take WHERE id = :id AND review IS NOT NULL")
        .bind("id", takeId)
        .mapTo(String.class)
        .findOne();
  }

  static boolean keepReview(Handle handle, String takeId, String review) {
    return handle
            .createUpdate(
                "UPDATE take SET review = :review, provisional = FALSE"
                    + " WHERE id = :id AND ended IS NOT NULL")
            .bind("review", review)
            .bind("id", takeId)
            .execute()
        > 0;
  }

  static boolean remove(Handle handle, String takeId) {
    // What belongs to it goes with it, by the foreign keys.
    return handle
            .createUpdate("DELETE FROM take WHERE id = :id AND ended IS NOT NULL")
            .bind("id", takeId)
            .execute()
        > 0;
  }

  /**
   * Drops an ended take by hand: what was kept of it goes, and its id is noted, so that it goes
   * from the backups too.
   *
   * @param classNumber the class it must be of; null for any or none
   * @return false where there is none of that id
   */
  static boolean drop(Handle handle, String takeId, @Nullable Long classNumber, Instant now) {
    boolean gone =
        handle
                .createUpdate(
                    """
                    DELETE FROM take WHERE id = :id AND ended IS NOT NULL
                      AND (:class IS NULL OR class = :class)
                    """)
                .bind("id", takeId)
                .bind("class", classNumber)
                .execute()
            > 0;
    if (gone) {
      handle
          .createUpdate("INSERT OR REPLACE INTO dropped_take (id, dropped_at) VALUES (:id, :now)")
          .bind("id", takeId)
          .bind("now", now.toString())
          .execute();
    }
    return gone;
  }

  private record Row(long number, String id, String file) {}

  static Store.Renamed rename(Handle handle, String from, String to) {
    return rename(handle, from::equals, to, null, null);
  }

  /**
   * Renames in ended takes.
   *
   * @param from told of every player
   * @param classNumber where only the takes of a class are meant
   * @param takeId where only one take is meant
   */
  static Store.Renamed rename(
      Handle handle,
      Predicate<String> from,
      String to,
      @Nullable Long classNumber,
      @Nullable String takeId) {
    List<Row> rows =
        rows(handle, classNumber, takeId).stream()
            .filter(row -> players(handle, row.number()).stream().anyMatch(from))
            .toList();
    for (Row row : rows) {
      List<String> others = players(handle, row.number()).stream().filter(from.negate()).toList();
      if (others.contains(to)) {
        return new Store.Renamed(0, row.id());
      }
    }
    rows.forEach(row -> rewrite(handle, row, name -> from.test(name) ? to : name));
    return new Store.Renamed(rows.size(), null);
  }

  /** Gives each of two in a take what was the other's; false where one of them is not in it. */
  static boolean swap(Handle handle, long classNumber, String takeId, String one, String other) {
    List<Row> rows = rows(handle, classNumber, takeId);
    if (rows.isEmpty()) {
      return false;
    }
    List<String> players = players(handle, rows.get(0).number());
    String first = spelled(players, one);
    String second = spelled(players, other);
    if (first == null || second == null || first.equals(second)) {
      return false;
    }
    rewrite(
        handle,
        rows.get(0),
        name -> name.equals(first) ? second : name.equals(second) ? first : name);
    return true;
  }

  private static @Nullable String spelled(List<String> players, String name) {
    String key = NameKey.of(name);
    return players.stream().filter(one -> NameKey.of(one).equals(key)).findFirst().orElse(null);
  }

  private static List<Row> rows(
      Handle handle, @Nullable Long classNumber, @Nullable String takeId) {
    return handle
        .createQuery(
            """
            SELECT number, id, file FROM take
            WHERE ended IS NOT NULL AND (:class IS NULL OR class = :class)
              AND (:id IS NULL OR id = :id) ORDER BY number
            """)
        .bind("class", classNumber)
        .bind("id", takeId)
        .map(
            (row, context) ->
                new Row(row.getLong("number"), row.getString("id"), row.getString("file")))
        .list();
  }

  private static List<String> players(Handle handle, long take) {
    return handle
        .createQuery("SELECT name FROM take_player WHERE take = :take ORDER BY player")
        .bind("take", take)
        .mapTo(String.class)
        .list();
  }

  /** A take under the names that its players have in what is stored, chair by chair. */
  static Take inStoredNames(Handle handle, String takeId, Take written) {
    List<String> stored = storedNames(handle, takeId);
    List<String> here = written.parts().stream().map(Part::player).toList();
    if (stored.size() != here.size() || stored.equals(here)) {
      return written;
    }
    Map<String, String> names = new LinkedHashMap<>();
    for (int i = 0; i < here.size(); i++) {
      names.put(here.get(i), stored.get(i));
    }
    return written.renamed(name -> names.getOrDefault(name, name));
  }

  /** True where a review is of the players by the names that are stored. */
  static boolean names(JsonNode review, Handle handle, String takeId) {
    List<String> reviewed = new ArrayList<>();
    for (JsonNode player : review.path("players")) {
      reviewed.add(player.path("player").asString(""));
    }
    return reviewed.isEmpty() || reviewed.equals(storedNames(handle, takeId));
  }

  private static List<String> storedNames(Handle handle, String takeId) {
    return rows(handle, takeId).stream()
        .flatMap(file -> take(file).parts().stream())
        .map(Part::player)
        .toList();
  }

  private static List<String> rows(Handle handle, String takeId) {
    return handle
        .createQuery("SELECT file FROM take WHERE id = :id")
        .bind("id", takeId)
        .mapTo(String.class)
        .list();
  }

  /** New names for the players of a take; its review is to be made anew. */
  private static void rewrite(Handle handle, Row row, UnaryOperator<String> names) {
    String file = StoredTakes.text(FileCodec.write(take(row.file()).renamed(names)));
    handle
        .createUpdate(
            "UPDATE take SET file = :file, review = NULL, provisional = NULL WHERE number = :take")
        .bind("file", file)
        .bind("take", row.number())
        .execute();
    handle
        .createQuery("SELECT player, name FROM take_player WHERE take = :take")
        .bind("take", row.number())
        .map((player, context) -> Map.entry(player.getInt("player"), player.getString("name")))
        .list()
        .forEach(
            player ->
                handle
                    .createUpdate(
                        "UPDATE take_player SET name = :name"
                            + " WHERE take = :take AND player = :player")
                    .bind("name", names.apply(player.getValue()))
                    .bind("take", row.number())
                    .bind("player", player.getKey())
                    .execute());
  }

  private static Take take(String file) {
    return FileCodec.readTake(file.getBytes(StandardCharsets.UTF_8));
  }
}
