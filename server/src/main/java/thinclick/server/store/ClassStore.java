package thinclick.server.store;

import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.SeasonFile;
import thinclick.protocol.file.SeasonFile.Member;
import thinclick.server.season.ClassList;
import thinclick.server.season.Erased;
import thinclick.server.season.NameKey;

/** Classes in the database, by what is done with them. Answers come after the commit. */
public final class ClassStore {
  private final StoreLoop loop;
  private final Database database;
  private final InstantSource wallClock;

  ClassStore(StoreLoop loop, Database database, InstantSource wallClock) {
    this.loop = loop;
    this.database = database;
    this.wallClock = wallClock;
  }

  /**
   * A class that is kept.
   *
   * @param number by which the calls below name it
   * @param list its title and who was written into it
   * @param takes how many have ended
   * @param last when the newest began; null where there is none
   */
  public record KeptClass(long number, ClassList list, int takes, @Nullable Instant last) {}

  /** All of them, by title. */
  public CompletableFuture<List<KeptClass>> all() {
    return loop.submit(session -> ClassRows.all(session.handle));
  }

  /** Makes one where there is none of that title. */
  public CompletableFuture<Long> make(String title) {
    return loop.submit(session -> ClassRows.make(session.handle, title, wallClock.instant()));
  }

  /** Writes somebody into a class, or over what was written of them. */
  public CompletableFuture<Boolean> write(long number, Member member) {
    return loop.submit(
        session -> {
          ClassRows.write(session.handle, number, member, wallClock.instant());
          return true;
        });
  }

  /** How long a class's takes are kept: months, 0 for ever, null as the host does it. */
  public CompletableFuture<Boolean> keep(long number, @Nullable Integer months) {
    return loop.submit(
        session ->
            session
                    .handle
                    .createUpdate("UPDATE class SET keep_months = :months WHERE number = :class")
                    .bind("months", months)
                    .bind("class", number)
                    .execute()
                > 0);
  }

  /**
   * Gives an open room to a class, with the takes that were made in it.
   *
   * @param word of the room
   * @return false where no open room has it
   */
  public CompletableFuture<Boolean> hold(long number, String word) {
    return loop.submit(
        session -> {
          Handle handle = session.handle;
          int rooms =
              handle
                  .createUpdate(
                      "UPDATE room SET class = :class WHERE word = :word AND closed_at IS NULL")
                  .bind("class", number)
                  .bind("word", word)
                  .execute();
          handle
              .createUpdate(
                  """
                  UPDATE take SET class = :class WHERE room =
                    (SELECT id FROM room WHERE word = :word AND closed_at IS NULL)
                  """)
              .bind("class", number)
              .bind("word", word)
              .execute();
          return rooms > 0;
        });
  }

  /** Gives a take to a class; false where there is none of that id. */
  public CompletableFuture<Boolean> adopt(long number, String takeId) {
    return loop.submit(
        session ->
            session
                    .handle
                    .createUpdate("UPDATE take SET class = :class WHERE id = :id")
                    .bind("class", number)
                    .bind("id", takeId)
                    .execute()
                > 0);
  }

  /** The takes of a class that have ended, the oldest first. */
  public CompletableFuture<List<Store.KeptTake>> takes(long number) {
    return loop.submit(session -> PastTakes.ofClass(session.handle, number));
  }

  /**
   * Puts a wrong name right, in the list and in the takes; where somebody of the new name is in the
   * list already, both are one from now on.
   *
   * @param from in any case and composition
   * @param takeId where one take is meant alone, so that the list stays; null for all
   */
  public CompletableFuture<Store.Renamed> rename(
      long number, String from, String to, @Nullable String takeId) {
    return loop.submit(
        session -> {
          String key = NameKey.of(from);
          Handle handle = session.handle;
          Store.Renamed renamed =
              PastTakes.rename(handle, name -> NameKey.of(name).equals(key), to, number, takeId);
          if (renamed.takenIn() != null || takeId != null) {
            return renamed;
          }
          List<Member> members = ClassRows.members(handle, number);
          Member old = member(members, key);
          if (old != null) {
            Member there = NameKey.of(to).equals(key) ? null : member(members, NameKey.of(to));
            ClassRows.strike(handle, number, from);
            ClassRows.write(
                handle,
                number,
                there == null
                    ? new Member(to, old.chair(), old.instrument())
                    : new Member(to, there.chair(), there.instrument()),
                wallClock.instant());
          }
          return new Store.Renamed(renamed.takes() + (old == null ? 0 : 1), null);
        });
  }

  /** The open rooms that are held for a class, by their ids. */
  public CompletableFuture<List<String>> openRooms(long number) {
    return loop.submit(
        session ->
            session
                .handle
                .createQuery("SELECT id FROM room WHERE class = :class AND closed_at IS NULL")
                .bind("class", number)
                .mapTo(String.class)
                .list());
  }

  /** How many of them have a member of that name. */
  public CompletableFuture<Integer> openRoomsNaming(long number, String name) {
    return loop.submit(session -> Eraser.naming(session.handle, NameKey.of(name), number).size());
  }

  private static @Nullable Member member(List<Member> members, String key) {
    return members.stream()
        .filter(member -> NameKey.of(member.name()).equals(key))
        .findFirst()
        .orElse(null);
  }

  /** Gives each of two in one take what was the other's; false where one is not in it. */
  public CompletableFuture<Boolean> swap(long number, String takeId, String one, String other) {
    return loop.submit(session -> PastTakes.swap(session.handle, number, takeId, one, other));
  }

  /**
   * Drops a take of a class with all that belongs to it, and from the backups when they are gone
   * through next; false where there is none of that id.
   */
  public CompletableFuture<Boolean> drop(long number, String takeId) {
    return loop.submit(
        session -> {
          session.takes.remove(takeId);
          return PastTakes.drop(session.handle, takeId, number, wallClock.instant());
        });
  }

  /** Takes a season in from another computer; a second time changes nothing. */
  public CompletableFuture<SeasonRows.Opened> open(SeasonFile season) {
    return loop.submit(session -> SeasonRows.open(session.handle, season, wallClock.instant()));
  }

  /**
   * Erases somebody, or a class.
   *
   * @param name null where the whole class is meant
   * @param number null where the whole database is meant
   * @param looking true to be told what would go, and erase nothing
   * @param hosting true while a host has the database open: nothing is erased then where open rooms
   *     name them, because the host would write them down again; else those rooms are closed
   */
  public CompletableFuture<Erased> erase(
      @Nullable String name, @Nullable Long number, boolean looking, boolean hosting) {
    return loop.submit(
            session -> {
              Handle handle = session.handle;
              handle.savepoint("erasing");
              Erased erased =
                  name != null
                      ? Eraser.person(handle, NameKey.of(name), number, !hosting)
                      : Eraser.wholeClass(handle, Objects.requireNonNull(number), !hosting);
              if (looking || (hosting && erased.rooms() > 0)) {
                handle.rollbackToSavepoint("erasing");
              } else {
                handle.releaseSavepoint("erasing");
              }
              session.takes.clear();
              return erased;
            })
        .thenApply(
            erased -> {
              if (!looking && (!hosting || erased.rooms() == 0)) {
                emptyLog();
              }
              return erased;
            });
  }

  /**
   * Deletes what has been kept long enough.
   *
   * @param months for whatever belongs to no class that says otherwise; 0 for ever
   * @param starting true before rooms are brought back: those that nobody has used for so long are
   *     closed as well
   */
  public CompletableFuture<Purge.Purged> purge(int months, boolean starting) {
    return loop.submit(
            session -> {
              session.takes.clear();
              return Purge.of(
                  session.handle, wallClock.instant(), months, starting, Kept.BY_ITSELF);
            })
        .thenApply(
            purged -> {
              if (!purged.nothing()) {
                emptyLog();
              }
              return purged;
            });
  }

  /**
   * Deletes in a backup what has been kept long enough, except for what is still kept here, and
   * what was dropped here; on the thread that waits for it.
   *
   * @param months as for {@link #purge}
   * @throws thinclick.protocol.json.BadInput where it is no database of ours
   */
  public Purge.Purged purgeCopy(Path backup, int months) {
    Kept kept = loop.submit(session -> Kept.of(session.handle)).join();
    return Purge.copy(backup, wallClock.instant(), months, kept);
  }

  private void emptyLog() {
    try (Handle handle = database.handle()) {
      Eraser.emptyLog(handle);
    }
  }
}
