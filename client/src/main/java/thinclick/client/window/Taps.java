package thinclick.client.window;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.event.EventTarget;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyEvent;
import thinclick.client.input.ChairReach;
import thinclick.client.input.Heartbeat;
import thinclick.client.input.KeyHalf;
import thinclick.client.input.KeyTaps;
import thinclick.client.input.MidiEar;
import thinclick.client.input.MidiInputs;
import thinclick.client.input.NoteFilter;
import thinclick.client.link.PlayedAttack;
import thinclick.client.window.check.CheckModel;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.time.MonotonicClock;

/** Everything this player can tap on: letter keys while a take runs, and every MIDI input. */
final class Taps implements MidiEar, AutoCloseable {
  /** What the computer's keys are called where an input has a name. */
  static final String KEYS = "keys";

  /** What mouse and finger are called where an input has a name. */
  static final String TOUCH = "touch";

  /** How late a touch may be reported (an estimate of the design's, not measured). */
  private static final double TOUCH_MILLIS = 8;

  private static final ChairReach NOTHING = new ChairReach(null, false, -1);

  /** A key that is down, and whose. */
  private record Stroke(boolean guest, PlayedAttack attack) {}

  private final Session session;
  private final Words words;
  private final CheckModel check;
  private final KeyTaps keys = new KeyTaps();
  private final Heartbeat heartbeat = new Heartbeat(MonotonicClock.SYSTEM, WindowThread.INSTANCE);
  private final MidiInputs midi = new MidiInputs(this);
  private final BooleanProperty twoChairs = new SimpleBooleanProperty();
  private final ObjectProperty<KeyHalf> half = new SimpleObjectProperty<>(KeyHalf.ALL);
  private final ReadOnlyStringWrapper learnSays = new ReadOnlyStringWrapper("");
  private final Map<String, Stroke> held = new HashMap<>();
  private ChairReach first = ChairReach.ALL;
  private ChairReach second = NOTHING;
  private List<String> inputs = List.of();
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper input = new ReadOnlyStringWrapper(KEYS);

  Taps(Session session, Words words, CheckModel check) {
    this.session = session;
    this.words = words;
    this.check = check;
    twoChairs.addListener(any -> share());
    half.addListener(any -> share());
    inputsAre(List.of());
  }

  void start() {
    heartbeat.start();
    midi.start();
  }

  /** What can be tapped on, a sentence. */
  ReadOnlyStringProperty saysProperty() {
    return says.getReadOnlyProperty();
  }

  /** What was tapped on last: {@link #KEYS} or the name of a MIDI input. */
  ReadOnlyStringProperty inputProperty() {
    return input.getReadOnlyProperty();
  }

  /** The input that is played on from now on. */
  void inputIs(String name) {
    input.set(name);
  }

  /** Whether two play at this computer: the left half of the letters one, the right half two. */
  BooleanProperty twoChairsProperty() {
    return twoChairs;
  }

  /** The letters of the only chair. */
  ObjectProperty<KeyHalf> halfProperty() {
    return half;
  }

  /** What came of learning a pad, a sentence; empty where nothing was asked. */
  ReadOnlyStringProperty learnSaysProperty() {
    return learnSays.getReadOnlyProperty();
  }

  /** From the next strokes on a pad what counts is learned. */
  void learn() {
    learnSays.set(words.say("taps.learn.begin"));
    midi.learn();
  }

  /** All notes on all channels count again. */
  void forget() {
    midi.filter(NoteFilter.USUAL);
    learnSays.set(words.say("taps.learn.forgotten"));
  }

  /**
   * Two at one computer: letters by halves; MIDI channel 2 is the second's, all else the first's.
   */
  private void share() {
    if (twoChairs.get()) {
      first = new ChairReach(KeyHalf.LEFT, true, -1);
      second = new ChairReach(KeyHalf.RIGHT, true, 1);
    } else {
      first = new ChairReach(half.get(), true, -1);
      second = NOTHING;
    }
    inputsAre(inputs);
  }

  private void tapped(String from, boolean guest, PlayedAttack attack) {
    if (guest && !check.listens()) {
      session.playGuest(attack);
      return;
    }
    inputIs(from);
    if (check.listens()) {
      check.tapped(from, attack.nanos());
    } else {
      session.play(attack);
    }
  }

  private void released(boolean guest, PlayedAttack attack, long nanos) {
    if (guest) {
      session.guestReleased(attack, nanos);
    } else {
      session.released(attack, nanos);
    }
  }

  /**
   * A key event, before anybody else has it.
   *
   * @param nanos when it came, read in the first line of the scene's filter
   * @return true where it was a tap or belongs to one, so that nobody else gets it
   */
  boolean key(KeyEvent event, long nanos) {
    if (event.getEventType() == KeyEvent.KEY_RELEASED) {
      keys.released(event.getCode().name());
      Stroke stroke = held.remove(event.getCode().name());
      if (stroke != null) {
        released(stroke.guest(), stroke.attack(), nanos);
      }
      return false;
    }
    boolean wanted = session.state().takeRuns() || check.listens();
    if (!wanted || !tappable(event)) {
      return false;
    }
    if (event.getEventType() == KeyEvent.KEY_PRESSED && keys.pressed(event.getCode().name())) {
      boolean guest = second.hasKey(event.getCode().getChar().charAt(0));
      PlayedAttack attack =
          new PlayedAttack(nanos, null, null, null, heartbeat.lateByMillis(nanos));
      held.put(event.getCode().name(), new Stroke(guest, attack));
      tapped(KEYS, guest, attack);
    }
    return true;
  }

  /**
   * A press of the mouse or a finger on the stand: for practice alone, because it is too uneven to
   * be judged beside keys; its stamps say how late they may be.
   *
   * @return true where it was a tap
   */
  boolean pressed(long nanos) {
    if (!session.practising() || !session.state().takeRuns() || check.listens()) {
      return false;
    }
    double late = TOUCH_MILLIS + heartbeat.lateByMillis(nanos);
    tapped(TOUCH, false, new PlayedAttack(nanos, null, null, null, late));
    return true;
  }

  private boolean tappable(KeyEvent event) {
    EventTarget target = event.getTarget();
    if (target instanceof TextInputControl) {
      return false;
    }
    if (event.isControlDown() || event.isAltDown() || event.isMetaDown()) {
      return false;
    }
    if (event.getEventType() == KeyEvent.KEY_TYPED) {
      return event.getCharacter().length() == 1 && isLetter(event.getCharacter());
    }
    if (!event.getCode().isLetterKey()) {
      return false;
    }
    char letter = event.getCode().getChar().charAt(0);
    return first.hasKey(letter) || second.hasKey(letter);
  }

  private static boolean isLetter(String typed) {
    return Character.isLetter(typed.charAt(0));
  }

  /** Another window has the focus. */
  void focusLost() {
    keys.focusLost();
    held.clear();
  }

  @Override
  public void struck(String from, int channel, PlayedAttack attack) {
    WindowThread.INSTANCE.execute(() -> tapped(from, second.hasNote(channel), attack));
  }

  @Override
  public void released(String from, int channel, PlayedAttack attack, long nanos) {
    WindowThread.INSTANCE.execute(() -> released(second.hasNote(channel), attack, nanos));
  }

  @Override
  public void learned(NoteFilter filter) {
    WindowThread.INSTANCE.execute(
        () ->
            learnSays.set(
                filter.channel() < 0
                    ? words.say("taps.learn.done", filter.leastVelocity())
                    : words.say(
                        "taps.learn.channel", filter.leastVelocity(), filter.channel() + 1)));
  }

  @Override
  public void inputsChanged(List<String> names) {
    WindowThread.INSTANCE.execute(() -> inputsAre(names));
  }

  private void inputsAre(List<String> names) {
    inputs = names;
    if (twoChairs.get()) {
      says.set(words.say("taps.two"));
      return;
    }
    String keysSay = half.get().words();
    says.set(
        names.isEmpty()
            ? words.say("taps.keys", keysSay)
            : words.say("taps.midi", String.join(", ", names), keysSay));
  }

  @Override
  public void close() {
    heartbeat.close();
    midi.close();
  }
}
