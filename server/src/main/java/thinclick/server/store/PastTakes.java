package thinclick.server.store;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;

/** Takes that have ended: their reviews, their removal, their players' names. */
final class PastTakes {
  private PastTakes() {}

  static List<Store.KeptTake> all(Handle handle) {
    return handle
        .createQuery(
            """
            SELECT id, begun_at, file, review FROM take
            WHERE ended IS NOT NULL ORDER BY begun_at, number
            """)
        .map(
            (row, context) ->
                new Store.KeptTake(
                    row.getString("id"),
                    Instant.parse(row.getString("begun_at")),
                    take(row.getString("file")),
                    row.getString("review")))
        .list();
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

  private record Row(long number, String id, String file) {}

  static Store.Renamed rename(Handle handle, String from, String to) {
    List<Row> rows =
        handle
            .createQuery(
                """
                SELECT t.number, t.id, t.file FROM take t
                JOIN take_player p ON p.take = t.number
                WHERE p.name = :name AND t.ended IS NOT NULL ORDER BY t.number
                """)
            .bind("name", from)
            .map(
                (row, context) ->
                    new Row(row.getLong("number"), row.getString("id"), row.getString("file")))
            .list();
    for (Row row : rows) {
      if (take(row.file()).parts().stream().anyMatch(part -> part.player().equals(to))) {
        return new Store.Renamed(0, row.id());
      }
    }
    for (Row row : rows) {
      String file =
          StoredTakes.text(
              FileCodec.write(take(row.file()).renamed(name -> name.equals(from) ? to : name)));
      handle
          .createUpdate(
              "UPDATE take SET file = :file, review = NULL, provisional = NULL WHERE number = :take")
          .bind("file", file)
          .bind("take", row.number())
          .execute();
      handle
          .createUpdate("UPDATE take_player SET name = :to WHERE take = :take AND name = :from")
          .bind("to", to)
          .bind("take", row.number())
          .bind("from", from)
          .execute();
    }
    return new Store.Renamed(rows.size(), null);
  }

  private static Take take(String file) {
    return FileCodec.readTake(file.getBytes(StandardCharsets.UTF_8));
  }
}
