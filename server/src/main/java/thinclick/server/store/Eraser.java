package thinclick.server.store;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.server.room.Nickname;

/**
 * Takes a person's name out of a database: takes stay, under a name that says nothing, because the
 * others played in them too; what held the name otherwise goes. Deleted text is overwritten
 * (secure_delete) and the write-ahead log is emptied, so that the name is in no file any more.
 */
public final class Eraser {
  private static final String NOBODY = "Somebody";

  private Eraser() {}

  /**
   * What went.
   *
   * @param takes those in which the name was replaced
   * @param reviews stored reviews that were deleted; they can be made again from the take
   * @param rooms open rooms that were closed, because their members were named
   */
  public record Erased(List<String> takes, int reviews, int rooms) {
    /** True where the name was nowhere. */
    public boolean nothing() {
      return takes.isEmpty() && rooms == 0;
    }
  }

  /**
   * Erases a name from a database that no host has open.
   *
   * @param name in any case and composition; names that look the same go too
   * @throws BadInput where the database cannot be had
   */
  public static Erased erase(Path file, String name) {
    String key = Nickname.of(name).key();
    try (Handle handle = Database.open(file).handle()) {
      Erased erased = handle.inTransaction(inside -> inside(inside, key));
      handle.execute("PRAGMA wal_checkpoint(TRUNCATE)");
      return erased;
    }
  }

  private static Erased inside(Handle handle, String key) {
    List<String> takes = new ArrayList<>();
    int reviews = 0;
    for (Row row : rows(handle)) {
      if (names(handle, row.number()).stream().noneMatch(name -> is(name, key))) {
        continue;
      }
      takes.add(row.id());
      String pseudonym = pseudonym(names(handle, row.number()));
      rename(handle, row, key, pseudonym);
      reviews += row.reviewed() ? 1 : 0;
    }
    return new Erased(takes, reviews, closeRooms(handle, key));
  }

  private record Row(long number, String id, String file, boolean reviewed) {}

  private static List<Row> rows(Handle handle) {
    return handle
        .createQuery("SELECT number, id, file, review IS NOT NULL AS reviewed FROM take")
        .map(
            (row, context) ->
                new Row(
                    row.getLong("number"),
                    row.getString("id"),
                    row.getString("file"),
                    row.getBoolean("reviewed")))
        .list();
  }

  private static List<String> names(Handle handle, long take) {
    return handle
        .createQuery("SELECT name FROM take_player WHERE take = :take")
        .bind("take", take)
        .mapTo(String.class)
        .list();
  }

  private static boolean is(String name, String key) {
    try {
      return Nickname.of(name).key().equals(key);
    } catch (BadInput notFromARoom) {
      return name.equals(key);
    }
  }

  private static String pseudonym(List<String> taken) {
    Set<String> names = new HashSet<>(taken);
    String pseudonym = NOBODY;
    for (int i = 2; names.contains(pseudonym); i++) {
      pseudonym = NOBODY + " " + i;
    }
    return pseudonym;
  }

  private static void rename(Handle handle, Row row, String key, String pseudonym) {
    Take renamed =
        FileCodec.readTake(row.file().getBytes(StandardCharsets.UTF_8))
            .renamed(name -> is(name, key) ? pseudonym : name);
    handle
        .createUpdate("UPDATE take SET file = :file, review = NULL WHERE number = :number")
        .bind("file", StoredTakes.text(FileCodec.write(renamed)))
        .bind("number", row.number())
        .execute();
    for (String name : names(handle, row.number())) {
      if (is(name, key)) {
        handle
            .createUpdate("UPDATE take_player SET name = :new WHERE take = :take AND name = :old")
            .bind("new", pseudonym)
            .bind("old", name)
            .bind("take", row.number())
            .execute();
      }
    }
  }

  /** An open room's state names its members in many places: the room is closed and forgotten. */
  private static int closeRooms(Handle handle, String key) {
    List<String> ids =
        handle
            .createQuery(
                """
                SELECT r.id, json_extract(m.value, '$.name') AS name
                FROM room r, json_each(r.state, '$.members') m WHERE r.state IS NOT NULL
                """)
            .map((row, context) -> is(row.getString("name"), key) ? row.getString("id") : "")
            .list()
            .stream()
            .filter(id -> !id.isEmpty())
            .distinct()
            .toList();
    for (String id : ids) {
      handle
          .createUpdate(
              """
              UPDATE room SET state = NULL, closed_at = coalesce(closed_at, datetime('now'))
              WHERE id = :id
              """)
          .bind("id", id)
          .execute();
    }
    return ids.size();
  }
}
