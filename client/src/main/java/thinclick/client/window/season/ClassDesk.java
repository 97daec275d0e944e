package thinclick.client.window.season;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.server.host.ClassBook;
import thinclick.server.season.Fitting;
import thinclick.server.season.Season;
import thinclick.server.words.Speaker;

/**
 * The class that is open: it is given the room that is opened for it, those who come are put on
 * their chairs, what it has played is read anew after each take. Properties change on the window's
 * thread.
 */
public final class ClassDesk implements AutoCloseable {
  private final Session session;
  private final Words words;
  private final BookDisk disk;
  private final ObservableList<String> titles = FXCollections.observableArrayList();
  private final ReadOnlyStringWrapper open = new ReadOnlyStringWrapper("");
  private final ReadOnlyObjectWrapper<@Nullable Season> season = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");
  private String briefly = "";
  private boolean erasing;
  private final LastSeats seats;
  private String heldRoom = "";
  private String seatedTake = "";

  public ClassDesk(Session session, Executor windowThread, Words words) {
    this.session = session;
    this.words = words;
    this.disk = new BookDisk(session, windowThread, words);
    this.seats = new LastSeats(session);
    session.stateProperty().addListener((any, old, now) -> follow(old, now));
  }

  /** Levels for a deal. */
  @FunctionalInterface
  public interface Levels {
    /** 1 to 10 by playerId, of those who have shown one. */
    Map<String, Integer> of(List<Person> players);
  }

  /** The titles of all classes that are kept here. */
  public ObservableList<String> titles() {
    return titles;
  }

  /** The class that is open; empty for none. */
  public ReadOnlyStringProperty openProperty() {
    return open.getReadOnlyProperty();
  }

  /** What it has played; null until that is read, or where none is open. */
  public ReadOnlyObjectProperty<@Nullable Season> seasonProperty() {
    return season.getReadOnlyProperty();
  }

  /** What was done last, or why it could not be; the first of its lines says it all. */
  public ReadOnlyStringProperty saysProperty() {
    return says.getReadOnlyProperty();
  }

  /** The same in the one sentence that the window's foot has room for; empty for nothing. */
  public String briefly() {
    return briefly;
  }

  /** True while it is asked whether something is to be erased. */
  public boolean asksToErase() {
    return erasing;
  }

  /** Whether that is asked. */
  void asksToErase(boolean now) {
    erasing = now;
  }

  /** How the server's words are said here. */
  Speaker speaker() {
    return Speaker.of(words.language()).withDaysAsIn(words.locale());
  }

  /** True where a room is open: what names people there cannot be erased meanwhile. */
  boolean inRoom() {
    return session.state().inside();
  }

  // ---------------------------------------------------------------- which class

  /** Reads which classes there are. */
  public void look() {
    if (session.hasKept()) {
      work(
          book -> book.classes().stream().map(line -> line.list().title()).toList(),
          titles::setAll);
    }
  }

  /** Opens a class, made where there is none of that title; an empty one closes what is open. */
  public void open(String title) {
    String wanted = title.strip();
    tell("");
    if (wanted.isEmpty()) {
      open.set("");
      season.set(null);
      return;
    }
    open.set(wanted);
    work(
        book -> {
          book.make(wanted);
          return book.season(wanted);
        },
        read -> {
          shown(read);
          look();
          hold(session.state());
        });
  }

  private void shown(Season read) {
    open.set(read.list().title());
    season.set(read);
    seats.seat(session.state(), read);
  }

  /** Reads anew what the open class has played. */
  public void again() {
    String title = open.get();
    if (!title.isEmpty()) {
      work(book -> book.season(title), this::shown);
    }
  }

  // ---------------------------------------------------------------- the room

  private void follow(RoomState old, RoomState now) {
    if (!now.inside()) {
      heldRoom = "";
      seatedTake = "";
      seats.forget();
      if (old.inside()) {
        open("");
        look();
      }
      return;
    }
    hold(now);
    Season read = season.get();
    if (read != null) {
      seats.seat(now, read);
    }
    Announced announced = now.announced();
    if (mine(now) && announced != null && !announced.takeId().equals(seatedTake)) {
      seatedTake = announced.takeId();
      String title = open.get();
      Map<String, Integer> chairs = LastSeats.taken(now);
      work(
          book -> {
            book.sit(title, chairs);
            return true;
          },
          done -> {});
    }
    if (mine(now) && now.review() != null && !Objects.equals(old.review(), now.review())) {
      again();
    }
  }

  /** True in a room of this window's host that was opened for a class. */
  private boolean mine(RoomState room) {
    return room.leader()
        && !open.get().isEmpty()
        && session.hosting() != null
        && !session.practising();
  }

  private void hold(RoomState room) {
    String word = room.word();
    if (room.inside() && mine(room) && !word.isEmpty() && !word.equals(heldRoom)) {
      heldRoom = word;
      String title = open.get();
      work(
          book -> {
            book.hold(title, word);
            return true;
          },
          done -> {});
    }
  }

  // ---------------------------------------------------------------- the next deal

  /** True where a deal can be fitted: the class has played before. */
  public boolean canFit() {
    Season read = season.get();
    return read != null && !read.takes().isEmpty() && mine(session.state());
  }

  /** The levels that the next deal is fitted to. */
  public Map<String, Integer> levels(List<Person> players) {
    Season read = season.get();
    Map<String, Integer> levels = new LinkedHashMap<>();
    if (read != null && canFit()) {
      Map<String, Integer> byName =
          Fitting.levels(
              read, players.stream().filter(one -> !one.standIn()).map(Person::name).toList());
      players.stream()
          .filter(one -> byName.containsKey(one.name()))
          .forEach(one -> levels.put(one.playerId(), byName.get(one.name())));
    }
    return levels;
  }

  /** Why each chair was dealt what it was; empty where nothing is dealt. */
  public List<String> reasons() {
    Season read = season.get();
    return read == null || session.state().dealt() == null
        ? List.of()
        : Fitting.sentences(read, session.state().dealt().parts(), speaker());
  }

  // ---------------------------------------------------------------- what is done

  /**
   * Does something with the open class, says what it came to, and reads the class anew.
   *
   * @param does what; what it answers is said, empty for nothing
   */
  void change(Function<ClassBook, String> does) {
    work(
        does,
        done -> {
          tell(done);
          again();
        });
  }

  /** Says what was done. */
  void tell(String done) {
    tell(done, "");
  }

  /** Says what was done, and the same briefly at the window's foot. */
  void tell(String done, String brief) {
    says.set(done);
    briefly = brief;
  }

  /** Works with the book elsewhere, then with what it answers here; a complaint is said. */
  <T> void work(Function<ClassBook, T> does, Consumer<T> then) {
    disk.work(does, then, this::tell);
  }

  @Override
  public void close() {
    disk.close();
  }
}
