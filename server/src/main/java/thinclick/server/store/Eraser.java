package thinclick.server.store;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.server.room.Nickname;
import thinclick.server.season.Erased;
import thinclick.server.season.NameKey;

/**
 * Takes a person's name, or a class, out of a database. A person's takes stay, under a name that
 * says nothing, because the others played in them too; what held the name otherwise goes. Of a
 * class everything goes. Deleted text is overwritten (secure_delete) and the write-ahead log is
 * emptied, so that the name is in no file any more.
 */
public final class Eraser {
  private Eraser() {}

  /**
   * Erases a name from a database that no host has open.
   *
   * @param name in any case and composition; names that look the same go too
   * @param classTitle where only one class is meant; null for the whole database
   * @throws thinclick.protocol.json.BadInput where the database cannot be had
   */
  public static Erased erase(Path file, String name, @Nullable String classTitle) {
    String key = Nickname.of(name).key();
    return with(
        file,
        handle -> {
          Long number = classTitle == null ? null : ClassRows.number(handle, classTitle);
          return classTitle != null && number == null
              ? nothing()
              : person(handle, key, number, true);
        });
  }

  /**
   * Erases a class from a database that no host has open: its list, its takes, its open rooms.
   *
   * @throws thinclick.protocol.json.BadInput where the database cannot be had
   */
  public static Erased eraseClass(Path file, String classTitle) {
    return with(
        file,
        handle -> {
          Long number = ClassRows.number(handle, classTitle);
          return number == null ? nothing() : wholeClass(handle, number, true);
        });
  }

  private static Erased nothing() {
    return new Erased(List.of(), List.of(), 0, 0, 0);
  }

  private static Erased with(Path file, Function<Handle, Erased> erasing) {
    try (Handle handle = Database.open(file).handle()) {
      Erased erased = handle.inTransaction(erasing::apply);
      emptyLog(handle);
      return erased;
    }
  }

  /** What was written over is still in the write-ahead log until it is empty. */
  static void emptyLog(Handle handle) {
    handle.execute("PRAGMA wal_checkpoint(TRUNCATE)");
  }

  /**
   * Inside a transaction.
   *
   * @param classNumber where only one class is meant
   * @param closing whether open rooms that name them are closed; a host that has them open would
   *     write them again
   */
  static Erased person(Handle handle, String key, @Nullable Long classNumber, boolean closing) {
    List<String> takes = new ArrayList<>();
    int reviews = 0;
    for (Row row : rows(handle, classNumber)) {
      List<String> names = names(handle, row.number());
      if (names.stream().noneMatch(name -> is(name, key))) {
        continue;
      }
      takes.add(row.id());
      rename(handle, row, key, pseudonym(names));
      reviews += row.reviewed() ? 1 : 0;
    }
    int members =
        handle
            .createUpdate(
                "DELETE FROM class_member WHERE key = :key AND (:class IS NULL OR class = :class)")
            .bind("key", key)
            .bind("class", classNumber)
            .execute();
    List<String> rooms = naming(handle, key, classNumber);
    if (closing) {
      close(handle, rooms);
    }
    return new Erased(takes, List.of(), reviews, members, rooms.size());
  }

  /** The same for a whole class. */
  static Erased wholeClass(Handle handle, long classNumber, boolean closing) {
    List<Row> rows = rows(handle, classNumber);
    handle
        .createUpdate("DELETE FROM take WHERE class = :class")
        .bind("class", classNumber)
        .execute();
    int members =
        handle
            .createQuery("SELECT count(*) FROM class_member WHERE class = :class")
            .bind("class", classNumber)
            .mapTo(Integer.class)
            .one();
    List<String> rooms =
        handle
            .createQuery("SELECT id FROM room WHERE class = :class AND state IS NOT NULL")
            .bind("class", classNumber)
            .mapTo(String.class)
            .list();
    if (closing) {
      close(handle, rooms);
    }
    handle
        .createUpdate("DELETE FROM class WHERE number = :class")
        .bind("class", classNumber)
        .execute();
    return new Erased(
        List.of(),
        rows.stream().map(Row::id).toList(),
        (int) rows.stream().filter(Row::reviewed).count(),
        members,
        rooms.size());
  }

  private record Row(long number, String id, String file, boolean reviewed) {}

  private static List<Row> rows(Handle handle, @Nullable Long classNumber) {
    return handle
        .createQuery(
            """
            SELECT number, id, file, review IS NOT NULL AS reviewed FROM take
            WHERE :class IS NULL OR class = :class
            """)
        .bind("class", classNumber)
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
    return NameKey.of(name).equals(key);
  }

  /** A name that says nothing and that nobody of those has. */
  static String pseudonym(List<String> taken) {
    Set<String> names = new HashSet<>(taken);
    String pseudonym = Erased.NAME;
    for (int i = 2; names.contains(pseudonym); i++) {
      pseudonym = Erased.NAME + " " + i;
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

  /** An open room's state names its members in many places. */
  static List<String> naming(Handle handle, String key, @Nullable Long classNumber) {
    return handle
        .createQuery(
            """
            SELECT r.id, json_extract(m.value, '$.name') AS name
            FROM room r, json_each(r.state, '$.members') m
            WHERE r.state IS NOT NULL AND (:class IS NULL OR r.class = :class)
            """)
        .bind("class", classNumber)
        .map((row, context) -> is(row.getString("name"), key) ? row.getString("id") : "")
        .list()
        .stream()
        .filter(id -> !id.isEmpty())
        .distinct()
        .toList();
  }

  /** The rooms are closed and what they were is forgotten. */
  private static void close(Handle handle, List<String> rooms) {
    for (String id : rooms) {
      handle
          .createUpdate(
              """
              UPDATE room SET state = NULL, closed_at = coalesce(closed_at, datetime('now'))
              WHERE id = :id
              """)
          .bind("id", id)
          .execute();
    }
  }
}
