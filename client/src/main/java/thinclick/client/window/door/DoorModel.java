package thinclick.client.window.door;

import java.text.Normalizer;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
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
import thinclick.protocol.invite.JoinLink;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Visible;

/** What is written at the door, and whether one can come in with it. */
public final class DoorModel {
  /** What is written at the door. */
  public enum Entry {
    NAME,
    ADDRESS,
    WORD
  }

  private static final int LONGEST_NAME = 32;
  private static final Pattern WORD = Pattern.compile("[\\p{L} -]{1,32}");

  private final Session session;
  private final Words words;

  private final FromAfar afar;

  private Consumer<Entry> wrong = entry -> {};
  private boolean saidAtEntry;
  private Runnable practise = () -> {};
  private Runnable check = () -> {};

  private final StringProperty classTitle = new SimpleStringProperty("");
  private ObservableList<String> classes = FXCollections.observableArrayList();
  private Consumer<String> chosen = title -> {};

  private final ObservableList<FoundHost> found = FXCollections.observableArrayList();

  private final StringProperty name = new SimpleStringProperty("");
  private final StringProperty address = new SimpleStringProperty("");
  private final StringProperty word = new SimpleStringProperty("");
  private final BooleanProperty forOthers = new SimpleBooleanProperty(false);
  private final ReadOnlyStringWrapper nameSays = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper addressSays = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper wordSays = new ReadOnlyStringWrapper("");

  public DoorModel(Session session, Words words) {
    this.session = session;
    this.words = words;
    afar = new FromAfar(words);
    session.stateProperty().addListener((any, old, now) -> refused(old, now));
    name.addListener(any -> nameSays.set(""));
    address.addListener(any -> addressSays.set(""));
    word.addListener(any -> wordSays.set(""));
  }

  public StringProperty nameProperty() {
    return name;
  }

  public StringProperty addressProperty() {
    return address;
  }

  public StringProperty wordProperty() {
    return word;
  }

  /** Whether other computers of the network may come into a room opened here; never unasked. */
  public BooleanProperty forOthersProperty() {
    return forOthers;
  }

  /** What is wrong with the name; empty where nothing is. */
  public ReadOnlyStringProperty nameSaysProperty() {
    return nameSays.getReadOnlyProperty();
  }

  /** What is wrong with the address; empty where nothing is. */
  public ReadOnlyStringProperty addressSaysProperty() {
    return addressSays.getReadOnlyProperty();
  }

  /** What is wrong with the room word; empty where nothing is. */
  public ReadOnlyStringProperty wordSaysProperty() {
    return wordSays.getReadOnlyProperty();
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
    String said = Words.sentence(afar.say(now.linkSays()));
    FromAfar.About about = FromAfar.about(now.linkSays());
    saidAtEntry = about != FromAfar.About.NOTHING;
    switch (about) {
      case NAME -> nameSays.set(said);
      case ADDRESS -> addressSays.set(said);
      case WORD -> wordSays.set(said);
      case NOTHING -> {}
    }
    tellWrong();
  }

  private void tellWrong() {
    if (!nameSays.get().isEmpty()) {
      wrong.accept(Entry.NAME);
    } else if (!addressSays.get().isEmpty()) {
      wrong.accept(Entry.ADDRESS);
    } else if (!wordSays.get().isEmpty()) {
      wrong.accept(Entry.WORD);
    }
  }

  private void nothingWrong() {
    nameSays.set("");
    addressSays.set("");
    wordSays.set("");
  }

  /** Opens a room on this computer; says what is wrong where it cannot. */
  public void openHere() {
    nothingWrong();
    String checked = checkedName();
    if (checked != null) {
      session.openHere(checked, forOthers.get());
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
    address.set(host.address().link(null).toString());
  }

  /** Comes into the room; says what is wrong where it cannot. */
  public void join() {
    nothingWrong();
    String checked = checkedName();
    RoomAddress where = checkedAddress();
    String called = word.get().strip();
    String linked = where == null ? null : linkedWord();
    if (linked != null) {
      called = linked;
    }
    if (called.isEmpty()) {
      wordSays.set(words.say("door.word.missing"));
    } else if (linked == null && !WORD.matcher(called).matches()) {
      wordSays.set(words.say("door.word.wrong"));
    }
    if (checked != null && where != null && wordSays.get().isEmpty()) {
      session.join(where, called, checked);
    } else {
      tellWrong();
    }
  }

  /** The word that a join link brings along; null where the address is none or has none. */
  private @Nullable String linkedWord() {
    String written = address.get();
    return JoinLink.isOne(written) ? JoinLink.parse(written).word() : null;
  }

  /** True where the address alone leads into a room. */
  public boolean addressIsEnough() {
    try {
      return linkedWord() != null;
    } catch (BadInput wrong) {
      return false;
    }
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
    nothingWrong();
    if (checkedName() != null) {
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
    if (word.get().isBlank() && address.get().isBlank()) {
      openHere();
    } else {
      join();
    }
  }

  /** Opens a room at the host whose address is written; says what is wrong where it cannot. */
  public void openThere() {
    nothingWrong();
    String checked = checkedName();
    RoomAddress where = checkedAddress();
    if (checked != null && where != null) {
      session.openAt(where, checked);
    }
    tellWrong();
  }

  private @Nullable String checkedName() {
    String written = Normalizer.normalize(name.get().strip(), Normalizer.Form.NFC);
    int length = written.codePointCount(0, written.length());
    if (length == 0) {
      nameSays.set(words.say("door.name.missing"));
      return null;
    }
    if (length > LONGEST_NAME) {
      nameSays.set(words.say("door.name.long", LONGEST_NAME, length));
      return null;
    }
    return written;
  }

  private @Nullable RoomAddress checkedAddress() {
    try {
      return RoomAddress.parse(address.get().strip());
    } catch (BadInput wrong) {
      boolean link = JoinLink.isOne(address.get());
      addressSays.set(words.say(link ? "door.link.wrong" : "door.address.wrong"));
      return null;
    }
  }
}
