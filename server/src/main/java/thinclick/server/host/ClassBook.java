package thinclick.server.host;

import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.SeasonFile;
import thinclick.protocol.file.SeasonFile.Member;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.server.history.Entry;
import thinclick.server.material.Nearest;
import thinclick.server.room.Nickname;
import thinclick.server.room.RoomEvent;
import thinclick.server.room.Shelf;
import thinclick.server.season.ClassList;
import thinclick.server.season.ClassTake;
import thinclick.server.season.Pupil;
import thinclick.server.season.Season;
import thinclick.server.season.SeatConflict;
import thinclick.server.store.ClassStore.KeptClass;
import thinclick.server.store.SeasonRows;
import thinclick.server.store.Store;
import thinclick.server.words.Speaker;

/**
 * The classes of a host, with or without the host running. Every call waits for the disk, so none
 * belongs on a window's thread; every complaint is a {@link BadInput} in one line.
 */
public final class ClassBook implements AutoCloseable {
  private final Store store;
  private final Shelf shelf;
  private final Erasing erasing;
  private final Speaker speaker;
  private final boolean own;

  private final OpenRooms rooms;

  /** Tells the rooms that are open in this program that a name was put right. */
  @FunctionalInterface
  interface OpenRooms {
    /** Tells those with these ids. */
    void renamed(List<String> rooms, RoomEvent.Renamed renamed);
  }

  private ClassBook(
      Store store, Shelf shelf, Erasing erasing, Speaker speaker, OpenRooms rooms, boolean own) {
    this.store = store;
    this.shelf = shelf;
    this.erasing = erasing;
    this.speaker = speaker;
    this.rooms = rooms;
    this.own = own;
  }

  /** Of a host that is running. */
  static ClassBook of(
      Store store,
      Shelf shelf,
      Path database,
      @Nullable Path backups,
      Speaker speaker,
      OpenRooms rooms) {
    return new ClassBook(
        store, shelf, new Erasing(store, database, backups, true), speaker, rooms, false);
  }

  /**
   * Of a database, made where it is missing; a host may have it open beside.
   *
   * @param material a folder of drills whose levels count beside the stock's, or null
   * @param speaker says what a take says that was never reviewed before
   */
  public static ClassBook open(
      Path database, @Nullable Path material, InstantSource wallClock, Speaker speaker) {
    Shelf shelf = HostMaterial.shelf(material);
    Store store = Store.open(database, wallClock, available -> {});
    return new ClassBook(
        store, shelf, new Erasing(store, database, null, false), speaker, (ids, name) -> {}, true);
  }

  private static <T> T wait(CompletableFuture<T> asked) {
    try {
      return asked.join();
    } catch (CompletionException problem) {
      throw new BadInput(
          "--db", "expected a database that can be used, found " + problem.getCause());
    }
  }

  /**
   * A line of the list of classes.
   *
   * @param list its title and who was written into it
   * @param takes how many it has played
   * @param last when the newest began; null where there is none
   */
  public record Line(ClassList list, int takes, @Nullable Instant last) {}

  /** All classes, by title. */
  public List<Line> classes() {
    return wait(store.classes().all()).stream()
        .map(one -> new Line(one.list(), one.takes(), one.last()))
        .toList();
  }

  private KeptClass found(String title) {
    List<KeptClass> all = wait(store.classes().all());
    String key = ClassList.key(title);
    return all.stream()
        .filter(one -> ClassList.key(one.list().title()).equals(key))
        .findFirst()
        .orElseThrow(
            () ->
                new BadInput(
                    "CLASS",
                    "expected a class that there is, found \""
                        + title
                        + "\"; "
                        + (all.isEmpty()
                            ? "there is none yet"
                            : Nearest.didYouMean(
                                title, all.stream().map(one -> one.list().title()).toList()))));
  }

  /** The number of a class, made where there is none of that title. */
  private long made(String title) {
    return wait(store.classes().make(ClassList.title("CLASS", title)));
  }

  /** Makes a class where there is none of that title. */
  public void make(String title) {
    made(title);
  }

  /**
   * Writes somebody into a class, made where it is missing, or over what was written of them.
   *
   * @param chair from 1, or null
   * @param instrument or null
   */
  public void write(
      String title, String name, @Nullable Integer chair, @Nullable String instrument) {
    Member member = new Member(Nickname.of(name).shown(), chair, instrument);
    wait(store.classes().write(made(title), member));
  }

  /** Where somebody sits from now on; their instrument stays. */
  public void seat(String title, String name, int chair) {
    Check.range("CHAIR", chair, 1L, 24);
    Pupil pupil = pupil(title, name);
    wait(
        store
            .classes()
            .write(
                found(title).number(),
                new Member(Nickname.of(pupil.name()).shown(), chair, pupil.instrument())));
  }

  /**
   * Those who play sit where they sit: written into a class, made where it is missing, with what
   * was written of them otherwise.
   *
   * @param chairs from 1 by name
   */
  public void sit(String title, Map<String, Integer> chairs) {
    long number = made(title);
    ClassList list = found(title).list();
    chairs.forEach(
        (name, chair) -> {
          Member written = list.member(name).orElse(null);
          String instrument = written == null ? null : written.instrument();
          Member now = new Member(Nickname.of(name).shown(), chair, instrument);
          if (!now.equals(written)) {
            wait(store.classes().write(number, now));
          }
        });
  }

  private Pupil pupil(String title, String name) {
    Season season = season(title);
    return season
        .pupil(name)
        .orElseThrow(
            () ->
                new BadInput(
                    "NAME",
                    "expected somebody of \""
                        + season.list().title()
                        + "\", found \""
                        + name
                        + "\""));
  }

  /** How long a class's takes are kept: months, 0 for ever, null as the host does it. */
  public void keep(String title, @Nullable Integer months) {
    Check.range("MONTHS", months, 0, SeasonFile.MOST_MONTHS);
    wait(store.classes().keep(found(title).number(), months));
  }

  /** Gives an open room to a class, made where it is missing, with the takes made in it so far. */
  public void hold(String title, String roomWord) {
    if (!wait(store.classes().hold(made(title), roomWord.strip().toLowerCase(Locale.ROOT)))) {
      throw new BadInput("ROOM", "expected the word of an open room, found \"" + roomWord + "\"");
    }
  }

  /** Gives a take to a class, made where it is missing. */
  public void adopt(String title, String takeId) {
    if (!wait(store.classes().adopt(made(title), takeId))) {
      throw new BadInput("TAKE", "expected a take that there is, found none named " + takeId);
    }
  }

  /** All takes that have ended, of whatever class, the oldest first, with their reviews. */
  List<Entry> history() {
    return KeptHistory.entries(store, speaker);
  }

  /** A class with all its takes; those that were never reviewed are reviewed now. */
  public Season season(String title) {
    KeptClass kept = found(title);
    List<ClassTake> takes = new ArrayList<>();
    for (Store.KeptTake take : wait(store.classes().takes(kept.number()))) {
      takes.add(ClassTake.of(KeptHistory.entry(store, take, speaker), take.take(), this::level));
    }
    return new Season(kept.list(), takes);
  }

  private OptionalInt level(String drill) {
    try {
      return OptionalInt.of(shelf.drill(drill).level());
    } catch (BadInput unknown) {
      return OptionalInt.empty();
    }
  }

  /**
   * Puts a wrong name right, in the list and in the takes.
   *
   * @param takeId where one take is meant alone; null for all
   * @return in how many places it was found
   */
  public int rename(String title, String from, String to, @Nullable String takeId) {
    String name = Nickname.of(to).shown();
    long number = found(title).number();
    Store.Renamed renamed = wait(store.classes().rename(number, from, name, takeId));
    if (renamed.takenIn() != null) {
      throw new BadInput(
          "NEW",
          "expected a name that nobody has, found \""
              + name
              + "\" in take "
              + renamed.takenIn()
              + "; where the two sat in each other's seat, swap them");
    }
    if (renamed.takes() > 0) {
      rooms.renamed(
          wait(store.classes().openRooms(number)), new RoomEvent.Renamed(from, name, takeId));
    }
    if (renamed.takes() == 0) {
      throw new BadInput("OLD", "expected somebody of \"" + title + "\", found \"" + from + "\"");
    }
    return renamed.takes();
  }

  /**
   * How many open rooms of the class still say a name: those of a host in another program, which a
   * renaming does not reach.
   */
  public int openRoomsSaying(String title, String name) {
    return wait(store.classes().openRoomsNaming(found(title).number(), name));
  }

  /** Gives each of two in one take what was the other's: they sat in each other's seat. */
  public void swap(String title, String takeId, String one, String other) {
    if (!wait(store.classes().swap(found(title).number(), takeId, one, other))) {
      throw new BadInput(
          "TAKE", "expected a take of the class in which both played, found \"" + takeId + "\"");
    }
  }

  /** Drops a spoilt take. */
  public void drop(String title, String takeId) {
    if (!wait(store.classes().drop(found(title).number(), takeId))) {
      throw new BadInput("TAKE", "expected an ended take of the class, found none named " + takeId);
    }
  }

  /** A class with everything that is known of it, for a file. */
  public SeasonFile save(String title) {
    Season season = season(title); // also reviews what was not
    KeptClass kept = found(title);
    return SeasonFiles.of(
        season,
        kept.list(),
        wait(store.classes().takes(kept.number())),
        id -> wait(store.take(id)).orElseThrow());
  }

  /** What opening a season came to. */
  public record Opened(
      String title,
      int takes,
      int there,
      List<String> elsewhere,
      int members,
      List<SeatConflict> conflicts) {}

  /**
   * Takes a season in; a second time changes nothing.
   *
   * @throws BadInput where it is no season, or a review in it does not fit its take
   */
  public Opened open(byte[] file) {
    SeasonFile season = SeasonFiles.read(file);
    SeasonRows.Opened opened = wait(store.classes().open(season));
    return new Opened(
        season.title(),
        opened.takes(),
        opened.there(),
        opened.elsewhere(),
        opened.members(),
        opened.conflicts());
  }

  /** What can be erased here, and what goes with it. */
  public Erasing erasing() {
    return erasing;
  }

  @Override
  public void close() {
    if (own) {
      store.close();
    }
  }
}
