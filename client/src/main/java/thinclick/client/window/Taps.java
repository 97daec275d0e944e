package thinclick.client.window;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.ListChangeListener;
import javafx.event.EventTarget;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyEvent;
import org.jspecify.annotations.Nullable;
import thinclick.client.input.Heartbeat;
import thinclick.client.input.KeyHalf;
import thinclick.client.input.KeyTaps;
import thinclick.client.input.MidiEar;
import thinclick.client.input.MidiInputs;
import thinclick.client.input.NoteFilter;
import thinclick.client.input.Shares;
import thinclick.client.link.PlayedAttack;
import thinclick.client.window.check.CheckModel;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.time.MonotonicClock;

/**
 * Everything that can be tapped on at this computer, for each of its chairs: letter keys while a
 * take runs, and every MIDI input.
 */
final class Taps implements MidiEar, AutoCloseable {
  /** What the computer's keys are called where an input has a name. */
  static final String KEYS = "keys";

  /** What mouse and finger are called where an input has a name. */
  static final String TOUCH = "touch";

  /** How late a touch may be reported (an estimate of the design's, not measured). */
  private static final double TOUCH_MILLIS = 8;

  /** A key that is down, and whose. */
  private record Stroke(Chair chair, PlayedAttack attack) {}

  private final Session session;
  private final Chairs chairs;
  private final Words words;
  private final CheckModel check;
  private final KeyTaps keys = new KeyTaps();
  private final Map<String, Stroke> held = new HashMap<>();
  private final Heartbeat heartbeat = new Heartbeat(MonotonicClock.SYSTEM, WindowThread.INSTANCE);
  private final MidiInputs midi = new MidiInputs(this);
  private final Shares shares = new Shares();
  private final ObjectProperty<KeyHalf> half = new SimpleObjectProperty<>(KeyHalf.ALL);
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper learnSays = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper learnedPad = new ReadOnlyBooleanWrapper(false);
  private List<String> inputs = List.of();
  private @Nullable Chair showing;
  private BiConsumer<Chair, PlayedAttack> played = (chair, attack) -> {};

  Taps(Session session, Chairs chairs, Words words, CheckModel check) {
    this.session = session;
    this.chairs = chairs;
    this.words = words;
    this.check = check;
    half.addListener(
        any -> {
          shares.half(half.get());
          tell();
        });
    chairs
        .all()
        .addListener(
            (ListChangeListener<Chair>)
                change -> {
                  while (change.next()) {
                    for (int i = 0; i < change.getRemovedSize(); i++) {
                      shares.gone(change.getFrom());
                    }
                  }
                  shares.chairs(chairs.all().size());
                  tell();
                });
    tell();
  }

  void start() {
    heartbeat.start();
    midi.start();
  }

  /** What can be tapped on, a sentence. */
  ReadOnlyStringProperty saysProperty() {
    return says.getReadOnlyProperty();
  }

  /** The letters of the only chair. */
  ObjectProperty<KeyHalf> halfProperty() {
    return half;
  }

  /** The letters of one of several chairs, as they are said. */
  String letters(int chair) {
    return String.join(" ", shares.letters(chair).split(""));
  }

  /** What came of learning a pad, a sentence; empty where nothing was asked. */
  ReadOnlyStringProperty learnSaysProperty() {
    return learnSays.getReadOnlyProperty();
  }

  /** True where notes count only as a pad was learned. */
  ReadOnlyBooleanProperty learnedPadProperty() {
    return learnedPad.getReadOnlyProperty();
  }

  /** From the next strokes on a pad what counts is learned. */
  void learn() {
    learnSays.set(words.say("taps.learn.begin"));
    midi.learn();
  }

  /** All notes on all channels count again. */
  void forget() {
    midi.filter(NoteFilter.USUAL);
    learnedPad.set(false);
    learnSays.set(words.say("taps.learn.forgotten"));
  }

  /** The pad that is struck next is this chair's from then on. */
  void show(Chair chair) {
    showing = chair;
    learnSays.set(words.say("taps.show.begin", chair.name()));
  }

  private void tapped(Chair chair, String from, PlayedAttack attack) {
    chair.inputIs(from);
    if (check.listens()) {
      ChairInput input = chair.inputOf(from);
      chairs.checks(input, chair);
      check.tapped(input.name(), attack.nanos());
    } else {
      chair.seat().play(attack);
      played.accept(chair, attack);
    }
  }

  /** Who is told of every attack of a take, as it was stamped. */
  void onPlayed(BiConsumer<Chair, PlayedAttack> listener) {
    played = listener;
  }

  /**
   * A key event, before anybody else has it.
   *
   * @param nanos when it came, read in the first line of the scene's filter
   * @return true where it was a tap or belongs to one, so that nobody else gets it
   */
  boolean key(KeyEvent event, long nanos) {
    String code = event.getCode().name();
    if (event.getEventType() == KeyEvent.KEY_RELEASED) {
      keys.released(code);
      Stroke stroke = held.remove(code);
      if (stroke != null) {
        stroke.chair().seat().released(stroke.attack(), nanos);
      }
      return false;
    }
    // A key that is held since before a take, or with Ctrl, repeats itself in it and is no attack.
    boolean fresh = event.getEventType() == KeyEvent.KEY_PRESSED && keys.pressed(code);
    boolean wanted = session.state().takeRuns() || check.listens();
    if (!wanted || !tappable(event)) {
      return false;
    }
    if (fresh) {
      Chair chair = chairs.get(shares.ofKey(event.getCode().getChar().charAt(0)));
      PlayedAttack attack =
          new PlayedAttack(nanos, null, null, null, heartbeat.lateByMillis(nanos));
      held.put(code, new Stroke(chair, attack));
      tapped(chair, KEYS, attack);
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
    tapped(chairs.first(), TOUCH, new PlayedAttack(nanos, null, null, null, late));
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
      return event.getCharacter().length() == 1
          && Character.isLetter(event.getCharacter().charAt(0));
    }
    return event.getCode().isLetterKey() && shares.ofKey(event.getCode().getChar().charAt(0)) >= 0;
  }

  /** Another window has the focus. */
  void focusLost() {
    keys.focusLost();
    held.clear();
  }

  @Override
  public void struck(String from, int channel, PlayedAttack attack) {
    WindowThread.INSTANCE.execute(
        () -> {
          Chair shown = showing;
          if (shown != null && chairs.all().contains(shown)) {
            showing = null;
            shares.show(from, channel, chairs.all().indexOf(shown));
            learnSays.set(words.say("taps.show.done", from, shown.name()));
          }
          tapped(chairs.get(shares.ofNote(from, channel)), from, attack);
        });
  }

  @Override
  public void released(String from, int channel, PlayedAttack attack, long nanos) {
    WindowThread.INSTANCE.execute(
        () -> chairs.get(shares.ofNote(from, channel)).seat().released(attack, nanos));
  }

  @Override
  public void learned(NoteFilter filter) {
    WindowThread.INSTANCE.execute(
        () -> {
          learnedPad.set(true);
          learnSays.set(
              filter.channel() < 0
                  ? words.say("taps.learn.done", filter.leastVelocity())
                  : words.say("taps.learn.channel", filter.leastVelocity(), filter.channel() + 1));
        });
  }

  @Override
  public void inputsChanged(List<String> names) {
    WindowThread.INSTANCE.execute(
        () -> {
          inputs = names;
          tell();
        });
  }

  private void tell() {
    int sitting = chairs.all().size();
    if (sitting > 1) {
      says.set(words.say("taps.several", sitting));
      return;
    }
    String keysSay = words.say(InputPane.key(half.get()));
    says.set(
        inputs.isEmpty()
            ? words.say("taps.keys", keysSay)
            : words.say("taps.midi", String.join(", ", inputs), keysSay));
  }

  @Override
  public void close() {
    heartbeat.close();
    midi.close();
  }
}
