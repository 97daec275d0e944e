package thinclick.client.window;

import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.window.door.DoorModel;
import thinclick.client.window.door.DoorView;
import thinclick.client.window.lectern.LecternModel;
import thinclick.client.window.lectern.LecternView;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.Stylesheet;
import thinclick.client.window.practice.PracticeModel;
import thinclick.client.window.practice.PracticeView;
import thinclick.client.window.review.ReviewModel;
import thinclick.client.window.review.ReviewView;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.session.Situation;
import thinclick.client.window.settings.Settings;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.stand.StandModel;
import thinclick.client.window.stand.StandView;
import thinclick.client.window.words.Words;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.time.MonotonicClock;

/** One window with all that belongs to it; puts models, pages, keys and sound together. */
final class Desk implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Desk.class);
  private static final double WIDTH = 1_120;
  private static final double HEIGHT = 760;
  private static final double LARGEST_TEXT = 30;
  private static final double SMALLEST_TEXT = 11;

  private final Stage stage;
  private final Session session;
  private final Words words;
  private final SoundDesk sound;
  private final Taps taps;
  private final StandModel standModel;
  private final LecternModel lecternModel;
  private final DoorModel doorModel;
  private final DoorView door;
  private final PracticeView practice;
  private final LecternView lectern;
  private final StandView stand;
  private final ReviewView review;
  private final Situation situation;
  private final Shell shell;
  private final Ticker ticker;
  private final Map<View, Node> pages = new EnumMap<>(View.class);
  private final Commands commands = new Commands();
  private final Scene scene;

  private final SettingsFile settingsFile;
  private final String putAside;

  private View current = View.DOOR;
  private Palette palette;
  private double textSize;

  Desk(Stage stage, Session session, Words words, SettingsFile settingsFile) {
    this.settingsFile = settingsFile;
    SettingsFile.Found found = settingsFile.read();
    Settings settings = found.settings();
    putAside = found.putAside();
    palette = settings.palette();
    textSize = settings.textSize();
    this.stage = stage;
    this.session = session;
    this.words = words;
    situation = new Situation(words);
    sound = new SoundDesk(session, words, settings.opening());
    taps = new Taps(session, words);
    standModel = new StandModel(session, MonotonicClock.SYSTEM);
    lecternModel = new LecternModel(session, words);
    doorModel = new DoorModel(session, words);
    doorModel.nameProperty().set(settings.name());
    doorModel.addressProperty().set(settings.address());
    door = new DoorView(doorModel, words);
    practice = new PracticeView(new PracticeModel(session, words, doorModel.nameProperty()), words);
    practice.onBack(() -> go(View.DOOR));
    doorModel.onPractise(() -> go(View.PRACTICE));
    lectern = new LecternView(lecternModel, words, session.stateProperty());
    stand = new StandView(standModel, words);
    review = new ReviewView(new ReviewModel(words), words, session.stateProperty());
    pages.put(View.DOOR, door.root());
    pages.put(View.PRACTICE, practice.root());
    pages.put(View.STAND, stand.root());
    pages.put(View.LECTERN, lectern.root());
    pages.put(View.REVIEW, review.root());
    shell = new Shell(words, sound, taps);
    shell.onGo(this::go);
    shell.onLeave(session::leave);
    ticker = new Ticker(WindowThread.INSTANCE, this::look);

    scene = new Scene(shell.root(), WIDTH, HEIGHT);
    dress();
    bindKeys();
    session.stateProperty().addListener((any, old, now) -> follow(old, now));
    stage
        .focusedProperty()
        .addListener(
            (any, old, focused) -> {
              if (!focused) {
                focusLost();
              }
            });
    stage.setScene(scene);
    stage.setMinWidth(720);
    stage.setMinHeight(520);
    follow(RoomState.OUTSIDE, session.state());
    go(View.DOOR);
  }

  /** What needs time comes once the window is up. */
  void start() {
    sound.start();
    taps.start();
    ticker.start();
    door.begin();
  }

  /** Comes in where the command line says so. */
  void begin(WindowOptions options) {
    if (!options.name().isEmpty()) {
      doorModel.nameProperty().set(options.name());
    }
    if (!options.server().isEmpty()) {
      doorModel.addressProperty().set(options.server());
    }
    doorModel.wordProperty().set(options.room());
    doorModel.forOthersProperty().set(options.forOthers());
    if (options.palette() != null) {
      dress(options.palette(), textSize);
    }
    switch (options.way()) {
      case DOOR -> {}
      case PRACTICE -> doorModel.practise();
      case HERE -> doorModel.openHere();
      case THERE -> doorModel.openThere();
      case JOIN -> doorModel.join();
    }
  }

  /** Another window has the focus. */
  void focusLost() {
    taps.focusLost();
  }

  private void bindKeys() {
    scene.addEventFilter(
        KeyEvent.ANY,
        event -> {
          long nanos = System.nanoTime();
          if (taps.key(event, nanos)) {
            event.consume();
          } else if (event.getEventType() == KeyEvent.KEY_PRESSED && commands.pressed(event)) {
            event.consume();
          }
        });
    commands
        .onCtrl(KeyCode.D, lecternModel::deal)
        .onCtrl(KeyCode.ENTER, lecternModel::countIn)
        .onCtrl(KeyCode.PERIOD, lecternModel::stop)
        .onCtrl(KeyCode.T, () -> dress(palette.other(), textSize))
        .onCtrl(KeyCode.PLUS, () -> dress(palette, textSize + 1))
        .onCtrl(KeyCode.EQUALS, () -> dress(palette, textSize + 1))
        .onCtrl(KeyCode.ADD, () -> dress(palette, textSize + 1))
        .onCtrl(KeyCode.MINUS, () -> dress(palette, textSize - 1))
        .onCtrl(KeyCode.SUBTRACT, () -> dress(palette, textSize - 1));
    for (View each : View.values()) {
      if (each.digit() > 0) {
        KeyCode digit = KeyCode.getKeyCode(Integer.toString(each.digit()));
        commands.onCtrl(digit, () -> go(each));
      }
    }
  }

  private void dress(Palette wanted, double size) {
    palette = wanted;
    textSize = Math.max(SMALLEST_TEXT, Math.min(LARGEST_TEXT, size));
    dress();
  }

  private void dress() {
    scene.getStylesheets().setAll(Stylesheet.shapes(), Stylesheet.of(palette, textSize));
    stand.dress(palette, textSize / Settings.USUAL_TEXT);
  }

  /** The pages follow the rehearsal: in to the stand, after the take to its review. */
  private void follow(RoomState old, RoomState now) {
    boolean inside = now.inside();
    shell.offer(View.STAND, inside);
    shell.offer(View.LECTERN, inside && now.leader());
    shell.offer(View.REVIEW, inside && now.review() != null);
    if (!inside && old.inside()) {
      go(View.DOOR);
    } else if (inside && !old.inside()) {
      go(now.leader() && !session.practising() ? View.LECTERN : View.STAND);
    } else if (inside && now.takeRuns() && !Objects.equals(old.announced(), now.announced())) {
      go(View.STAND);
    } else if (inside && now.review() != null && old.review() == null) {
      go(View.REVIEW);
    }
    look();
  }

  private boolean offered(View wanted) {
    RoomState room = session.state();
    return switch (wanted) {
      case DOOR, PRACTICE -> !room.inside();
      case STAND -> room.inside();
      case LECTERN -> room.inside() && room.leader();
      case REVIEW -> room.inside() && room.review() != null;
    };
  }

  private void go(View wanted) {
    if (!offered(wanted)) {
      return;
    }
    Node page = pages.get(wanted);
    if (page != null) {
      current = wanted;
      shell.show(wanted, page);
      stage.setTitle(words.say("shell.title", words.say(wanted.key())));
    }
    // A page is whole only once it has been styled; without this a key pressed at once would be
    // lost.
    shell.root().applyCss();
    shell.root().layout();
    focus(wanted);
  }

  private void focus(View wanted) {
    switch (wanted) {
      case DOOR -> door.begin();
      case PRACTICE -> practice.begin();
      case LECTERN -> lectern.begin();
      case STAND -> stand.begin();
      case REVIEW -> review.begin();
    }
  }

  private void look() {
    standModel.look();
    RoomState room = session.state();
    String said = situation.say(room, standModel.momentProperty().get(), System.nanoTime());
    if (room.link() == null && current == View.PRACTICE) {
      said = words.say("situation.practice");
    } else if (room.inside() && session.standInsAreComing() && room.problem().isEmpty()) {
      said = words.say("situation.practice.coming");
    }
    boolean first = room.link() == null && !putAside.isEmpty();
    shell.say(first ? words.say("settings.aside", putAside) + " " + said : said);
  }

  /** Keeps what is to be remembered; a folder that cannot be written is no reason to fail. */
  private void remember() {
    try {
      settingsFile.write(
          new Settings(
              Settings.FORMAT,
              Settings.VERSION,
              palette,
              textSize,
              sound.levelProperty().get(),
              doorModel.nameProperty().get(),
              doorModel.addressProperty().get()));
    } catch (UncheckedIOException | BadInput unkept) {
      LOG.warn("the settings cannot be kept: {}", unkept.getMessage());
    }
  }

  @Override
  public void close() {
    remember();
    ticker.close();
    taps.close();
    sound.close();
    session.close();
  }
}
