package thinclick.server.store;

import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Take;
import thinclick.server.room.RoomJournal;
import thinclick.server.season.NameKey;

/** The host's database, by what is done with it. Answers come after the commit. */
public final class Store implements AutoCloseable {
  private final StoreLoop loop;
  private final SqliteJournal journal;
  private final ClassStore classes;
  private final InstantSource wallClock;

  private Store(StoreLoop loop, Database database, InstantSource wallClock) {
    this.loop = loop;
    this.classes = new ClassStore(loop, database, wallClock);
    this.wallClock = wallClock;
    this.journal = new SqliteJournal(loop, wallClock);
  }

  /**
   * Opens the database, made where it is missing.
   *
   * @param availability told at each change whether the disk can be written
   * @throws thinclick.protocol.json.BadInput where it cannot be had, in one line
   */
  public static Store open(Path file, InstantSource wallClock, Consumer<Boolean> availability) {
    return over(Database.open(file), wallClock, StoreLoop.COMMIT_GAP_NANOS, availability);
  }

  /**
   * The same for a host whose clock is moved by hand: while it stands still nobody else writes, so
   * that no commit waits for others.
   */
  public static Store openInLockStep(
      Path file, InstantSource wallClock, Consumer<Boolean> availability) {
    return over(Database.open(file), wallClock, 0, availability);
  }

  /** The same over a database that is open. */
  static Store over(
      Database database, InstantSource wallClock, long gapNanos, Consumer<Boolean> availability) {
    return new Store(new StoreLoop(database, gapNanos, availability), database, wallClock);
  }

  /** Gets through what takes long at first use only, on a database in memory that goes again. */
  public static void warmUp() {
    Database.warmUp();
  }

  /**
   * Refuses a place where no database can be, before anything is made there.
   *
   * @throws thinclick.protocol.json.BadInput in one line
   */
  public static void checkPlace(Path file) {
    Database.checkPlace(file);
  }

  /** Where rooms write. */
  public RoomJournal journal() {
    return journal;
  }

  /** The classes in it. */
  public ClassStore classes() {
    return classes;
  }

  /** A room that was open when the host last went. */
  public record SavedRoom(String id, String word) {}

  /** All of them. */
  public CompletableFuture<List<SavedRoom>> openRooms() {
    return loop.submit(
        session ->
            session
                .handle
                .createQuery(
                    """
                    SELECT id, word FROM room
                    WHERE closed_at IS NULL AND state IS NOT NULL ORDER BY opened_at, id
                    """)
                .map((row, context) -> new SavedRoom(row.getString("id"), row.getString("word")))
                .list());
  }

  /** A take with all its attacks; empty where there is none of that id. */
  public CompletableFuture<Optional<Take>> take(String takeId) {
    return loop.submit(session -> StoredTakes.find(session.handle, takeId));
  }

  /**
   * What is known of a take without its attacks.
   *
   * @param ended how it ended, in the words of {@code stopped}; null while it runs
   */
  public record TakeLine(
      String id,
      String title,
      Instant begunAt,
      @Nullable String ended,
      List<String> players,
      long attacks) {}

  /** All takes, the oldest first. */
  public CompletableFuture<List<TakeLine>> takes() {
    return loop.submit(session -> StoredTakes.list(session.handle));
  }

  /**
   * A take of the past without its attacks.
   *
   * @param ended how it ended, in the words of {@code stopped}
   * @param take what was written
   * @param review the review as JSON; null where none was kept
   */
  public record KeptTake(
      String id, Instant begunAt, String ended, Take take, @Nullable String review) {}

  /** All takes that have ended, the oldest first. */
  public CompletableFuture<List<KeptTake>> history() {
    return loop.submit(session -> PastTakes.all(session.handle));
  }

  /**
   * A reviewed take of the past that a room may know of.
   *
   * @param take what was written, with its end where it did not run to its own
   * @param sameRoom true where it was made in that room
   * @param inClass true where it belongs to the class that the room is held for
   * @param players their names in it by playerId, which is the same person's only in its own room
   */
  public record PastTake(
      String id,
      Instant begunAt,
      Take take,
      boolean sameRoom,
      boolean inClass,
      Map<String, String> players) {}

  /**
   * Reviewed takes of a drill that a room may know of, the newest first: its own, and those of the
   * class it is held for; for a room without a class those that belong to none.
   */
  public CompletableFuture<List<PastTake>> knownIn(String roomId, String title, int most) {
    return loop.submit(session -> PastTakes.knownIn(session.handle, roomId, title, most));
  }

  /** The review that is kept of a take, as JSON; empty where there is none. */
  public CompletableFuture<Optional<String>> review(String takeId) {
    return loop.submit(session -> PastTakes.review(session.handle, takeId));
  }

  /** Keeps a take's review beside it. */
  public CompletableFuture<Boolean> keepReview(String takeId, String reviewJson) {
    return loop.submit(session -> PastTakes.keepReview(session.handle, takeId, reviewJson));
  }

  /**
   * Removes an ended take with all that belongs to it, and from the backups when they are gone
   * through next; false where there is none of that id.
   */
  public CompletableFuture<Boolean> removeTake(String takeId) {
    return loop.submit(
        session -> {
          session.takes.remove(takeId);
          return PastTakes.drop(session.handle, takeId, null, wallClock.instant());
        });
  }

  /**
   * What a renaming came to.
   *
   * @param takes in how many takes
   * @param takenIn a take in which somebody has the new name already, so that nothing was renamed;
   *     null where all is well
   */
  public record Renamed(int takes, @Nullable String takenIn) {}

  /** Renames a player in every take that has ended; their reviews are to be made anew. */
  public CompletableFuture<Renamed> renamePlayer(String from, String to) {
    return loop.submit(session -> PastTakes.rename(session.handle, from, to));
  }

  /**
   * How many open rooms have a member of that name. What they hold is theirs: a renaming does not
   * reach it, and their next takes say the name again.
   */
  public CompletableFuture<Integer> openRoomsNaming(String name) {
    return loop.submit(session -> Eraser.naming(session.handle, NameKey.of(name), null).size());
  }

  /** Takes a take in from a file. */
  public CompletableFuture<String> importTake(String takeId, Take take) {
    return loop.submit(
        session -> {
          StoredTakes.insert(session.handle, takeId, take, wallClock.instant());
          return takeId;
        });
  }

  /** True while little enough waits to be written. */
  public boolean hasRoom() {
    return loop.hasRoom();
  }

  /** Calls, on any thread, once there is room again. */
  public void whenRoom(Runnable call) {
    loop.whenRoom(call);
  }

  /** Transactions committed since it was opened. */
  public long commits() {
    return loop.commits();
  }

  /** How much the database has refused for good since it was opened. */
  public long refusals() {
    return loop.refusals();
  }

  /** What was asked for and not yet answered. */
  public long unanswered() {
    return loop.unanswered();
  }

  /** Writes what waits and closes. */
  @Override
  public void close() {
    loop.close();
  }
}
