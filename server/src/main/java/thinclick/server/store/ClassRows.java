package thinclick.server.store;

import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.SeasonFile.Member;
import thinclick.server.season.ClassList;
import thinclick.server.season.NameKey;

/** The rows of classes and those written into them. */
final class ClassRows {
  private ClassRows() {}

  /** The number of a class by its title in any case; null where there is none. */
  static @Nullable Long number(Handle handle, String title) {
    return handle
        .createQuery("SELECT number FROM class WHERE key = :key")
        .bind("key", ClassList.key(title))
        .mapTo(Long.class)
        .findOne()
        .orElse(null);
  }

  /** Makes a class where there is none of that title. */
  static long make(Handle handle, String title, Instant now) {
    Long there = number(handle, title);
    if (there != null) {
      return there;
    }
    return handle
        .createQuery(
            """
            INSERT INTO class (title, key, made_at) VALUES (:title, :key, :now) RETURNING number
            """)
        .bind("title", title)
        .bind("key", ClassList.key(title))
        .bind("now", now.toString())
        .mapTo(Long.class)
        .one();
  }

  static List<ClassStore.KeptClass> all(Handle handle) {
    return handle
        .createQuery(
            """
            SELECT c.number, c.title, c.keep_months, count(t.number) AS takes,
                   max(t.begun_at) AS last
            FROM class c LEFT JOIN take t ON t.class = c.number AND t.ended IS NOT NULL
            GROUP BY c.number ORDER BY c.key
            """)
        .map(
            (row, context) -> {
              long number = row.getLong("number");
              String last = row.getString("last");
              return new ClassStore.KeptClass(
                  number,
                  new ClassList(
                      row.getString("title"),
                      Columns.intOrNull(row, "keep_months"),
                      members(handle, number)),
                  row.getInt("takes"),
                  last == null ? null : Instant.parse(last));
            })
        .list();
  }

  static List<Member> members(Handle handle, long number) {
    return handle
        .createQuery(
            """
            SELECT name, chair, instrument FROM class_member WHERE class = :class
            ORDER BY chair IS NULL, chair, key
            """)
        .bind("class", number)
        .map(
            (row, context) ->
                new Member(
                    row.getString("name"),
                    Columns.intOrNull(row, "chair"),
                    row.getString("instrument")))
        .list();
  }

  /** Writes somebody in, or over what was written of them. */
  static void write(Handle handle, long number, Member member, Instant now) {
    handle
        .createUpdate(
            """
            INSERT INTO class_member (class, key, name, chair, instrument, written_at)
            VALUES (:class, :key, :name, :chair, :instrument, :now)
            ON CONFLICT (class, key) DO UPDATE
            SET name = :name, chair = :chair, instrument = :instrument, written_at = :now
            """)
        .bind("class", number)
        .bind("key", NameKey.of(member.name()))
        .bind("name", member.name())
        .bind("chair", member.chair())
        .bind("instrument", member.instrument())
        .bind("now", now.toString())
        .execute();
  }

  static void strike(Handle handle, long number, String name) {
    handle
        .createUpdate("DELETE FROM class_member WHERE class = :class AND key = :key")
        .bind("class", number)
        .bind("key", NameKey.of(name))
        .execute();
  }
}
