package thinclick.server.store;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import thinclick.server.season.NameKey;

/** Deletes what has been kept long enough: takes, those written into classes, forgotten rooms. */
public final class Purge {
  private Purge() {}

  /**
   * What went.
   *
   * @param takes with their reviews and attacks
   * @param members entries in lists of classes, of people who have not played for so long
   * @param classes that had nothing left in them
   * @param rooms that nobody had used for so long
   */
  public record Purged(int takes, int members, int classes, int rooms) {
    /** True where nothing was old enough. */
    public boolean nothing() {
      return takes + members + classes + rooms == 0;
    }
  }

  /** The instant before which things are too old; null where they are kept for ever. */
  private static @Nullable String before(Instant now, int months) {
    return months == 0
        ? null
        : now.atZone(ZoneOffset.UTC).minusMonths(months).toInstant().toString();
  }

  static Purged of(Handle handle, Instant now, int months, boolean starting) {
    int takes = 0;
    int members = 0;
    int classes = 0;
    for (ClassStore.KeptClass one : ClassRows.all(handle)) {
      Integer own = one.list().keepMonths();
      String before = before(now, own == null ? months : own);
      if (before == null) {
        continue;
      }
      takes += takes(handle, "class = :class", one.number(), before);
      members += members(handle, one.number(), before);
      classes +=
          handle
              .createUpdate(
                  """
                  DELETE FROM class WHERE number = :class AND made_at < :before
                    AND NOT EXISTS (SELECT 1 FROM class_member WHERE class = :class)
                    AND NOT EXISTS (SELECT 1 FROM take WHERE class = :class)
                  """)
              .bind("class", one.number())
              .bind("before", before)
              .execute();
    }
    String before = before(now, months);
    if (before == null) {
      return new Purged(takes, members, classes, 0);
    }
    takes += takes(handle, "class IS :class", null, before);
    int rooms = starting ? rooms(handle, before, now) : 0;
    return new Purged(takes, members, classes, rooms);
  }

  private static int takes(Handle handle, String which, @Nullable Long number, String before) {
    return handle
        .createUpdate(
            "DELETE FROM take WHERE ended IS NOT NULL AND begun_at < :before AND " + which)
        .bind("before", before)
        .bind("class", number)
        .execute();
  }

  /** Whoever still has a take in the class stays in its list. */
  private static int members(Handle handle, long number, String before) {
    List<String> old =
        handle
            .createQuery(
                "SELECT name FROM class_member WHERE class = :class AND written_at < :before")
            .bind("class", number)
            .bind("before", before)
            .mapTo(String.class)
            .list();
    if (old.isEmpty()) {
      return 0;
    }
    Set<String> playing =
        handle
            .createQuery(
                """
                SELECT DISTINCT p.name FROM take_player p JOIN take t ON t.number = p.take
                WHERE t.class = :class
                """)
            .bind("class", number)
            .mapTo(String.class)
            .list()
            .stream()
            .map(NameKey::of)
            .collect(Collectors.toSet());
    List<String> gone = old.stream().filter(name -> !playing.contains(NameKey.of(name))).toList();
    gone.forEach(name -> ClassRows.strike(handle, number, name));
    return gone.size();
  }

  private static int rooms(Handle handle, String before, Instant now) {
    return handle
        .createUpdate(
            """
            UPDATE room SET state = NULL, closed_at = :now
            WHERE closed_at IS NULL AND opened_at < :before
              AND NOT EXISTS (SELECT 1 FROM take WHERE take.room = room.id)
            """)
        .bind("now", now.toString())
        .bind("before", before)
        .execute();
  }
}
