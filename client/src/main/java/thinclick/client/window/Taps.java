package thinclick.client.window;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
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
import thinclick.client.window.session.FurtherSeat;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.InputSettings;
import thinclick.client.window.settings.InputSettings.Learned;
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
  private final ReadOnlyObjectWrapper<InputSettings> settings;
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper learnSays = new ReadOnlyStringWrapper("");
  private List<String> inputs = List.of();
  private @Nullable Chair showing;
  private BiConsumer<Chair, PlayedAttack> played = (chair, attack) -> {};

  /**
   * @param remembered what was chosen, learned and shown before
   */
  Taps(Session session, Chairs chairs, Words words, CheckModel check, InputSettings remembered) {
    this.session = session;
    this.chairs = chairs;
    this.words = words;
    this.check = check;
    settings = new ReadOnlyObjectWrapper<>(remembered);
    settings.addListener(any -> follow());
    chairs
        .all()
        .addListener(
            (ListChangeListener<Chair>)
                any -> {
                  shares.chairs(chairs.all().stream().map(Taps::owner).toList());
                  tell();
                });
    follow();
    learnSays.set(remembered.learned().stream().map(this::says).collect(Collectors.joining(" ")));
  }

  /** Whose a pad is written down to be; a window's own player may have another name tomorrow. */
  private static String owner(Chair chair) {
    FurtherSeat further = chair.further();
    return further == null ? "" : further.name();
  }

  private void follow() {
    InputSettings now = settings.get();
    shares.half(now.half());
    now.pads().forEach(pad -> shares.show(pad.input(), pad.channel() - 1, pad.player()));
    midi.filters(now.learned().stream().collect(Collectors.toMap(Learned::input, Learned::filter)));
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

  /** What was chosen, learned and shown, to be remembered. */
  ReadOnlyObjectProperty<InputSettings> settingsProperty() {
    return settings.getReadOnlyProperty();
  }

  /** Chooses the letters of the only chair. */
  void half(KeyHalf letters) {
    settings.set(settings.get().with(letters));
  }

  /** The letters of one of several chairs, as they are said. */
  String letters(int chair) {
    return String.join(" ", shares.letters(chair).split(""));
  }

  /** The pads of one of several chairs, by name. */
  List<String> pads(Chair chair) {
    return settings.get().padsOf(owner(chair));
  }

  /** What came of learning a pad, a sentence; empty where nothing was asked or is remembered. */
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
    settings.set(settings.get().withoutLearned());
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
            settings.set(settings.get().withPad(from, channel + 1, owner(shown)));
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
  public void learned(String input, NoteFilter filter) {
    WindowThread.INSTANCE.execute(
        () -> {
          settings.set(settings.get().withLearned(input, filter));
          learnSays.set(says(settings.get().learned().get(0)));
        });
  }

  private String says(Learned pad) {
    Integer channel = pad.channel();
    return channel == null
        ? words.say("taps.learn.done", pad.input(), pad.leastVelocity())
        : words.say("taps.learn.channel", pad.input(), pad.leastVelocity(), channel);
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
      String whose =
          IntStream.range(0, sitting)
              .mapToObj(
                  chair ->
                      words.say("taps.several.one", chairs.all().get(chair).name(), letters(chair)))
              .collect(Collectors.joining(", "));
      says.set(words.say("taps.several", sitting, whose));
      return;
    }
    String keysSay = words.say(InputPane.key(settings.get().half()));
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
