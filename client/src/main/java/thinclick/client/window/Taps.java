package thinclick.client.window;

import java.util.List;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.event.EventTarget;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyEvent;
import thinclick.client.input.Heartbeat;
import thinclick.client.input.KeyHalf;
import thinclick.client.input.KeyTaps;
import thinclick.client.input.MidiEar;
import thinclick.client.input.MidiInputs;
import thinclick.client.link.PlayedAttack;
import thinclick.client.window.check.CheckModel;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.time.MonotonicClock;

/** Everything this player can tap on: letter keys while a take runs, and every MIDI input. */
final class Taps implements MidiEar, AutoCloseable {
  /** What the computer's keys are called where an input has a name. */
  static final String KEYS = "keys";

  private final Session session;
  private final Words words;
  private final CheckModel check;
  private final KeyTaps keys = new KeyTaps();
  private final Heartbeat heartbeat = new Heartbeat(MonotonicClock.SYSTEM, WindowThread.INSTANCE);
  private final MidiInputs midi = new MidiInputs(this);
  private final KeyHalf half = KeyHalf.ALL;
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper input = new ReadOnlyStringWrapper(KEYS);

  Taps(Session session, Words words, CheckModel check) {
    this.session = session;
    this.words = words;
    this.check = check;
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

  private void tapped(String from, PlayedAttack attack) {
    inputIs(from);
    if (check.listens()) {
      check.tapped(from, attack.nanos());
    } else {
      session.play(attack);
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
      return false;
    }
    boolean wanted = session.state().takeRuns() || check.listens();
    if (!wanted || !tappable(event)) {
      return false;
    }
    if (event.getEventType() == KeyEvent.KEY_PRESSED && keys.pressed(event.getCode().name())) {
      tapped(KEYS, new PlayedAttack(nanos, null, null, null, heartbeat.lateByMillis(nanos)));
    }
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
    return event.getCode().isLetterKey() && half.has(event.getCode().getChar().charAt(0));
  }

  private static boolean isLetter(String typed) {
    return Character.isLetter(typed.charAt(0));
  }

  /** Another window has the focus. */
  void focusLost() {
    keys.focusLost();
  }

  @Override
  public void struck(String from, PlayedAttack attack) {
    WindowThread.INSTANCE.execute(() -> tapped(from, attack));
  }

  @Override
  public void inputsChanged(List<String> names) {
    WindowThread.INSTANCE.execute(() -> inputsAre(names));
  }

  private void inputsAre(List<String> names) {
    String keysSay = half.words();
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
