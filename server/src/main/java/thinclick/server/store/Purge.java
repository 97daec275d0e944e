package thinclick.server.store;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import thinclick.server.season.NameKey;

/**
 * Deletes what has been kept long enough: takes, those written into classes, forgotten rooms; in a
 * backup also what was dropped since.
 */
public final class Purge {
  private Purge() {}

  /**
   * What went.
   *
   * @param takes ids of those that were old, with their reviews and attacks
   * @param dropped ids of those in a backup that somebody dropped since
   * @param members entries in lists of classes, of people who have not played for so long
   * @param classes that had nothing left in them
   * @param rooms that nobody had used for so long
   */
  public record Purged(
      List<String> takes, List<String> dropped, int members, int classes, int rooms) {
    public Purged {
      takes = List.copyOf(takes);
      dropped = List.copyOf(dropped);
    }

    /** True where nothing went. */
    public boolean nothing() {
      return takes.isEmpty() && dropped.isEmpty() && members + classes + rooms == 0;
    }
  }

  /** The instant before which things are too old; null where they are kept for ever. */
  private static @Nullable String before(Instant now, int months) {
    return months == 0
        ? null
        : now.atZone(ZoneOffset.UTC).minusMonths(months).toInstant().toString();
  }

  /**
   * Goes through a backup that nobody has open.
   *
   * @param kept what the database itself keeps, which stays here too, and what was dropped from it,
   *     which goes, also where it was running when the copy was made
   * @throws thinclick.protocol.json.BadInput where it is no database of ours
   */
  static Purged copy(Path backup, Instant now, int months, Kept kept) {
    try (Handle handle = Database.open(backup).handle()) {
      Purged purged = handle.inTransaction(inside -> of(inside, now, months, true, kept));
      if (!purged.nothing()) {
        Eraser.emptyLog(handle);
      }
      return purged;
    }
  }

  static Purged of(Handle handle, Instant now, int months, boolean starting, Kept kept) {
    List<String> dropped = dropped(handle, kept);
    List<String> takes = new ArrayList<>();
    int members = 0;
    int classes = 0;
    for (ClassStore.KeptClass one : ClassRows.all(handle)) {
      Integer own = kept.months(one.list());
      String before = before(now, own == null ? months : own);
      if (before == null) {
        continue;
      }
      takes.addAll(takes(handle, one.number(), before, kept));
      members += members(handle, one, before, kept);
      if (kept.has(one.list())) {
        continue;
      }
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
      return new Purged(takes, dropped, members, classes, 0);
    }
    takes.addAll(takes(handle, null, before, kept));
    int rooms = starting ? rooms(handle, before, now) : 0;
    return new Purged(takes, dropped, members, classes, rooms);
  }

  private static List<String> dropped(Handle handle, Kept kept) {
    return kept.dropped().stream()
        .filter(
            id ->
                handle.createUpdate("DELETE FROM take WHERE id = :id").bind("id", id).execute() > 0)
        .sorted()
        .toList();
  }

  private static List<String> takes(
      Handle handle, @Nullable Long classNumber, String before, Kept kept) {
    List<String> old =
        handle
            .createQuery(
                """
                SELECT id FROM take
                WHERE ended IS NOT NULL AND begun_at < :before AND class IS :class
                """)
            .bind("before", before)
            .bind("class", classNumber)
            .mapTo(String.class)
            .list();
    List<String> gone = old.stream().filter(id -> !kept.takes().contains(id)).toList();
    gone.forEach(id -> PastTakes.remove(handle, id));
    return gone;
  }

  /** Whoever still has a take in the class stays in its list. */
  private static int members(Handle handle, ClassStore.KeptClass one, String before, Kept kept) {
    List<String> old =
        handle
            .createQuery(
                "SELECT name FROM class_member WHERE class = :class AND written_at < :before")
            .bind("class", one.number())
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
            .bind("class", one.number())
            .mapTo(String.class)
            .list()
            .stream()
            .map(NameKey::of)
            .collect(Collectors.toSet());
    List<String> gone =
        old.stream()
            .filter(name -> !playing.contains(NameKey.of(name)) && !kept.has(one.list(), name))
            .toList();
    gone.forEach(name -> ClassRows.strike(handle, one.number(), name));
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
