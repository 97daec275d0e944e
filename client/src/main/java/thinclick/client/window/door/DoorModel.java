package thinclick.client.window.door;

import java.util.function.Consumer;
import java.util.stream.Collectors;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.jspecify.annotations.Nullable;
import thinclick.client.find.FoundHost;
import thinclick.client.link.LeftRoom;
import thinclick.client.link.LinkState;
import thinclick.client.link.RoomAddress;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.FromAfar;
import thinclick.client.window.words.Words;
import thinclick.protocol.json.Visible;

/** The ways from the door with what is written there: a room here, one elsewhere, or alone. */
public final class DoorModel {
  private final Session session;
  private final Words words;
  private final FromAfar afar;
  private final Entries entries;
  private final BooleanProperty forOthers = new SimpleBooleanProperty(false);
  private final ObservableList<FoundHost> found = FXCollections.observableArrayList();
  private final StringProperty classTitle = new SimpleStringProperty("");
  private ObservableList<String> classes = FXCollections.observableArrayList();
  private Consumer<String> chosen = title -> {};
  private Consumer<Entry> wrong = entry -> {};
  private Runnable practise = () -> {};
  private Runnable check = () -> {};
  private boolean saidAtEntry;

  public DoorModel(Session session, Words words) {
    this.session = session;
    this.words = words;
    afar = new FromAfar(words);
    entries = new Entries(words);
    session.stateProperty().addListener((any, old, now) -> refused(old, now));
  }

  /** Who comes in. */
  public Entry name() {
    return entries.name;
  }

  /** Where a host is, or the link that leads into its room. */
  public Entry address() {
    return entries.address;
  }

  /** The word of a room there. */
  public Entry word() {
    return entries.word;
  }

  /** Whether other computers of the network may come into a room opened here; never unasked. */
  public BooleanProperty forOthersProperty() {
    return forOthers;
  }

  /**
   * Who is told which entry is wrong, the first of them, whenever one keeps somebody out: here or
   * by the host that was asked. What was written stays.
   */
  public void onWrong(Consumer<Entry> told) {
    wrong = told;
  }

  /** True where what kept somebody out last was said at the entry it is about. */
  public boolean saidAtEntry() {
    return saidAtEntry;
  }

  /** What a host, or the line to it, does not take is said where it was written. */
  private void refused(RoomState old, RoomState now) {
    if (now.link() != LinkState.CLOSED) {
      saidAtEntry = false;
    }
    if (now.link() != LinkState.CLOSED || old.link() == LinkState.CLOSED || old.inside()) {
      return;
    }
    Entry about = entries.about(FromAfar.about(now.linkSays()));
    saidAtEntry = about != null;
    if (about != null) {
      about.wrong(Words.sentence(afar.say(now.linkSays())));
    }
    tellWrong();
  }

  private void tellWrong() {
    entries.firstWrong().ifPresent(wrong);
  }

  /** Opens a room on this computer; says what is wrong where it cannot. */
  public void openHere() {
    entries.right();
    String name = entries.checkedName();
    if (name != null) {
      session.openHere(name, forOthers.get());
      chosen.accept(classTitle.get().strip());
    }
    tellWrong();
  }

  /**
   * Which classes a room can be opened for.
   *
   * @param titles of those that are kept here
   * @param opens told which one it is; empty for none
   */
  public void choosesFrom(ObservableList<String> titles, Consumer<String> opens) {
    classes = titles;
    chosen = opens;
  }

  /** The classes that are kept here. */
  public ObservableList<String> classes() {
    return classes;
  }

  /** The class that a room is opened for, one that is kept or a new one; empty for none. */
  public StringProperty classTitleProperty() {
    return classTitle;
  }

  /** The hosts that say in this network that they are there. */
  public ObservableList<FoundHost> found() {
    return found;
  }

  /**
   * A found host in a line. Anybody in the network can call a host anything: what would turn the
   * direction of what follows, or show nothing at all, is written out.
   */
  public String foundSays(FoundHost host) {
    String name = host.name().codePoints().mapToObj(Visible::shown).collect(Collectors.joining());
    return words.say("door.found", name, host.address().said());
  }

  /** Takes a found host's address; the room word is still needed. */
  public void take(FoundHost host) {
    entries.address.write(host.address().link(null).toString());
  }

  /** Comes into the room; says what is wrong where it cannot. */
  public void join() {
    entries.right();
    String name = entries.checkedName();
    RoomAddress where = entries.checkedAddress();
    String word = entries.checkedWord(where);
    if (name != null && where != null && word != null) {
      session.join(where, word, name);
    } else {
      tellWrong();
    }
  }

  /** True where the address alone leads into a room. */
  public boolean addressIsEnough() {
    return entries.addressIsEnough();
  }

  /** The room that an earlier run ended in without leaving it; null for none. */
  public @Nullable LeftRoom left() {
    return session.leftRooms().stream().findFirst().orElse(null);
  }

  /** That room in a line. */
  public String leftSays(LeftRoom room) {
    return words.say(room.led() ? "door.left.led" : "door.left", room.room(), room.name());
  }

  /** Goes back into it. */
  public void comeBack() {
    LeftRoom room = left();
    if (room != null) {
      session.comeBack(room);
    }
  }

  /** What is to happen where somebody wants to practise alone. */
  public void onPractise(Runnable does) {
    practise = does;
  }

  /** Goes on to practising alone; says what is wrong where one cannot. */
  public void practise() {
    entries.right();
    if (entries.checkedName() != null) {
      practise.run();
    }
    tellWrong();
  }

  /** What is to happen where somebody wants to measure the chair. */
  public void onCheck(Runnable does) {
    check = does;
  }

  /** Goes on to the sound check. */
  public void check() {
    check.run();
  }

  /** What Enter does: comes in where a room is written down, else opens one here. */
  public void enter() {
    if (entries.word.written().isBlank() && entries.address.written().isBlank()) {
      openHere();
    } else {
      join();
    }
  }

  /** Opens a room at the host whose address is written; says what is wrong where it cannot. */
  public void openThere() {
    entries.right();
    String name = entries.checkedName();
    RoomAddress where = entries.checkedAddress();
    if (name != null && where != null) {
      session.openAt(where, name);
    }
    tellWrong();
  }
}
