package thinclick.client.window;

import java.io.UncheckedIOException;
import java.time.InstantSource;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.check.Verdict;
import thinclick.client.find.HostFinder;
import thinclick.client.link.RoomLink;
import thinclick.client.window.check.CheckModel;
import thinclick.client.window.check.CheckView;
import thinclick.client.window.door.DoorModel;
import thinclick.client.window.door.DoorView;
import thinclick.client.window.lectern.LecternDesk;
import thinclick.client.window.lectern.LecternView;
import thinclick.client.window.lectern.Proposals;
import thinclick.client.window.lectern.RosterModel;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.Stylesheet;
import thinclick.client.window.look.SystemLook;
import thinclick.client.window.practice.PracticeModel;
import thinclick.client.window.practice.PracticeView;
import thinclick.client.window.review.LeaderView;
import thinclick.client.window.review.ReviewCommands;
import thinclick.client.window.review.ReviewModel;
import thinclick.client.window.review.ReviewView;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.session.Situation;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.settings.KeptFile;
import thinclick.client.window.settings.Settings;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.settings.SettingsModel;
import thinclick.client.window.settings.SettingsView;
import thinclick.client.window.settings.SoundSettings;
import thinclick.client.window.stand.StandModel;
import thinclick.client.window.stand.StandView;
import thinclick.client.window.wall.WallWindow;
import thinclick.client.window.words.Words;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.time.MonotonicClock;

/** One window with all that belongs to it; puts models, pages, keys and sound together. */
final class Desk implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Desk.class);
  private static final double WIDTH = 1_120;
  private static final double HEIGHT = 760;

  private final Stage stage;
  private final Session session;
  private final Words words;
  private final SoundDesk sound;
  private final Taps taps;
  private final KeptFile<SoundSettings> soundFile;
  private final CheckModel checkModel;
  private final CheckView check;
  private final ChairDelay chairDelay;
  private final Partners partners;
  private final StandModel standModel;
  private final LecternDesk lecternDesk;
  private final DoorModel doorModel;
  private final DoorView door;
  private final PracticeView practice;
  private final LecternView lectern;
  private final StandView stand;
  private final LeaderView leaderReview;
  private final ReviewView review;
  private final WallWindow wall;
  private final SettingsModel looks;
  private final SettingsView settingsView;
  private final Situation situation;
  private final Shell shell;
  private final Ticker ticker;
  private final Map<View, Node> pages = new EnumMap<>(View.class);
  private final Commands commands = new Commands();
  private final Scene scene;

  private final SettingsFile settingsFile;
  private final String putAside;

  private @Nullable HostFinder finder;
  private View current = View.DOOR;

  Desk(Stage stage, Session session, Words words, SettingsFile settingsFile) {
    this.settingsFile = settingsFile;
    SettingsFile.Found found = settingsFile.read();
    Settings settings = found.settings();
    putAside = found.putAside();
    looks = new SettingsModel(settings.look());
    settingsView = new SettingsView(looks, words);
    this.stage = stage;
    this.session = session;
    this.words = words;
    situation = new Situation(words);
    soundFile = SoundSettings.file(settingsFile.folder());
    sound = new SoundDesk(session, words, soundFile.read().value());
    checkModel =
        new CheckModel(
            words, sound, WindowThread.INSTANCE, (input, verdict) -> judged(input, verdict));
    taps = new Taps(session, words, checkModel);
    chairDelay = new ChairDelay(session, sound, taps, words);
    standModel = new StandModel(session, MonotonicClock.SYSTEM);
    lecternDesk = LecternDesk.of(session, words, MonotonicClock.SYSTEM);
    doorModel = new DoorModel(session, words);
    doorModel.nameProperty().set(settings.name());
    doorModel.addressProperty().set(settings.address());
    door = new DoorView(doorModel, words);
    practice = new PracticeView(new PracticeModel(session, words, doorModel.nameProperty()), words);
    practice.onBack(() -> go(View.DOOR));
    doorModel.onPractise(() -> go(View.PRACTICE));
    lectern = new LecternView(lecternDesk, words, session.stateProperty());
    stand = new StandView(standModel, words);
    leaderReview = new LeaderView(session, words);
    review =
        new ReviewView(
            new ReviewModel(session, words, WindowThread.INSTANCE, InstantSource.system()),
            new ReviewCommands(
                words,
                sound,
                MonotonicClock.SYSTEM,
                session.data().resolve("reviews"),
                whatIsNext()),
            leaderReview.root(),
            words);
    wall = new WallWindow(words, words.say("shell.title", words.say("wall.title")));
    lectern.onWall(this::turnWall);
    pages.put(View.DOOR, door.root());
    partners = new Partners(session, sound, words);
    check =
        new CheckView(
            checkModel,
            sound,
            taps.saysProperty(),
            chairDelay.saysProperty(),
            partners.saysProperty(),
            partners.modeProperty(),
            words);
    new InputPane(session, taps, words).into(check.inputs());
    check.onBack(() -> go(session.state().inside() ? View.STAND : View.DOOR));
    doorModel.onCheck(() -> go(View.CHECK));
    pages.put(View.CHECK, check.root());
    pages.put(View.PRACTICE, practice.root());
    pages.put(View.STAND, stand.root());
    pages.put(View.LECTERN, lectern.root());
    pages.put(View.REVIEW, review.root());
    pages.put(View.SETTINGS, settingsView.root());
    shell = new Shell(words, sound, taps);
    shell.onGo(this::go);
    shell.onLeave(session::leave);
    ticker = new Ticker(WindowThread.INSTANCE, this::look);

    scene = new Scene(shell.root(), WIDTH, HEIGHT);
    dress();
    looks.lookProperty().addListener(any -> dress());
    bindKeys();
    session.stateProperty().addListener((any, old, now) -> follow(old, now));
    stage
        .focusedProperty()
        .addListener(
            (any, old, focused) -> {
              if (focused) {
                askSystem();
              } else {
                focusLost();
              }
            });
    stage.setScene(scene);
    stage.setMinWidth(720);
    stage.setMinHeight(520);
    follow(RoomState.OUTSIDE, session.state());
    go(View.DOOR);
  }

  /** What the lectern proposes, for whoever leads. */
  private ReviewCommands.Next whatIsNext() {
    return new ReviewCommands.Next(
        () -> {
          Proposals.Line line = session.state().leader() ? lecternDesk.proposals().line() : null;
          return line == null ? "" : line.says();
        },
        () -> {
          Proposals.Line line = lecternDesk.proposals().line();
          return line != null && session.state().betweenTakes();
        },
        () -> {
          Proposals.Line line = lecternDesk.proposals().line();
          if (line != null && line.changes()) {
            lecternDesk.proposals().take();
          } else {
            lecternDesk.lectern().deal();
          }
          go(View.STAND);
        });
  }

  /** What needs time comes once the window is up. */
  void start() {
    sound.start();
    taps.start();
    checkModel.start();
    ticker.start();
    finder =
        HostFinder.start(
            hosts -> WindowThread.INSTANCE.execute(() -> doorModel.found().setAll(hosts)));
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
    if (options.shade() != null) {
      looks.set(looks.lookProperty().get().with(options.shade()));
    }
    switch (options.way()) {
      case DOOR -> {}
      case PRACTICE -> doorModel.practise();
      case HERE -> doorModel.openHere();
      case THERE -> doorModel.openThere();
      case JOIN -> doorModel.join();
    }
  }

  /** The system's light or dark may have been changed meanwhile; asking takes a moment. */
  private void askSystem() {
    CompletableFuture<?> unused =
        CompletableFuture.supplyAsync(SystemLook::ask)
            .thenAcceptAsync(looks::systemSays, WindowThread.INSTANCE);
  }

  /** Who is here; a test brings stand-ins in. */
  RosterModel roster() {
    return lecternDesk.roster();
  }

  /** Another window has the focus. */
  void focusLost() {
    taps.focusLost();
  }

  /** Hangs the wall, or puts it away; anybody in a room may, so that a projector can be one. */
  private void turnWall() {
    if (session.state().inside() || wall.showing()) {
      wall.turn(stage);
    }
  }

  /** Does what comes next in a lesson. */
  void goOn() {
    lecternDesk.lesson().goOn();
  }

  /** Turns to a page, where it is offered. */
  void goTo(View wanted) {
    go(wanted);
  }

  /** The wall's own window. */
  WallWindow wall() {
    return wall;
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
    stand
        .root()
        .addEventFilter(
            MouseEvent.MOUSE_PRESSED,
            event -> {
              long nanos = System.nanoTime();
              if (taps.pressed(nanos)) {
                event.consume();
              }
            });
    commands
        .onCtrl(KeyCode.D, lecternDesk.lectern()::deal)
        .onCtrl(KeyCode.Z, lecternDesk.lectern()::undo)
        .onCtrl(KeyCode.ENTER, lecternDesk.lesson()::goOn)
        .onCtrl(KeyCode.PERIOD, lecternDesk.lectern()::stop)
        .onCtrl(KeyCode.R, () -> lecternDesk.steering().rescue(standModel.momentProperty().get()))
        .onCtrl(KeyCode.B, lecternDesk.lesson()::repeat)
        .onCtrl(KeyCode.N, lecternDesk.lesson()::next)
        .onCtrl(KeyCode.M, lecternDesk.lesson()::moreClicks)
        .onCtrl(KeyCode.L, lecternDesk.lesson()::fewerClicks)
        .onCtrl(KeyCode.G, lecternDesk.proposals()::take)
        .onCtrl(KeyCode.F, lecternDesk.proposals()::lookUp)
        .onCtrl(KeyCode.P, lecternDesk.lesson()::pause)
        .onCtrl(KeyCode.K, session.lead()::claim)
        .onCtrl(KeyCode.DIGIT4, this::turnWall)
        .onCtrl(KeyCode.T, looks::turn)
        .onCtrl(KeyCode.PLUS, () -> looks.grow(1))
        .onCtrl(KeyCode.EQUALS, () -> looks.grow(1))
        .onCtrl(KeyCode.ADD, () -> looks.grow(1))
        .onCtrl(KeyCode.MINUS, () -> looks.grow(-1))
        .onCtrl(KeyCode.SUBTRACT, () -> looks.grow(-1))
        .on(KeyCode.F6, this::nextRegion);
    for (View each : View.values()) {
      if (each.digit() > 0) {
        KeyCode digit = KeyCode.getKeyCode(Integer.toString(each.digit()));
        commands.onCtrl(digit, () -> go(each));
      }
    }
  }

  private void dress() {
    Palette palette = looks.paletteProperty().get();
    Look look = looks.lookProperty().get();
    scene.getStylesheets().setAll(Stylesheet.shapes(), Stylesheet.of(palette, look.textSize()));
    stand.dress(palette, look.textSize() / Look.USUAL_TEXT, look.partInWords());
    lectern.dress(palette, look.textSize(), Look.USUAL_TEXT);
    review.dress(palette);
    leaderReview.dress(palette, look.textSize());
    wall.dress(palette);
  }

  /** From the page to the head of the window and back. */
  private void nextRegion() {
    if (shell.headHasFocus()) {
      focus(current);
    } else {
      shell.focusHead();
    }
  }

  /** The pages follow the rehearsal: in to the stand, after the take to its review. */
  private void follow(RoomState old, RoomState now) {
    boolean inside = now.inside();
    shell.offer(View.DOOR, !inside);
    shell.offer(View.CHECK, !now.takeRuns());
    shell.offer(View.STAND, inside);
    shell.offer(View.LECTERN, inside && now.leader());
    shell.offer(View.REVIEW, inside && now.review() != null);
    shell.offer(View.SETTINGS, true);
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

  private void judged(String input, Verdict verdict) {
    chairDelay.judged(input, verdict);
  }

  private boolean offered(View wanted) {
    RoomState room = session.state();
    return switch (wanted) {
      case DOOR, PRACTICE -> !room.inside();
      case CHECK -> !room.takeRuns();
      case STAND -> room.inside();
      case LECTERN -> room.inside() && room.leader();
      case REVIEW -> room.inside() && room.review() != null;
      case SETTINGS -> true;
    };
  }

  private void go(View wanted) {
    if (!offered(wanted)) {
      return;
    }
    Node page = pages.get(wanted);
    if (page != null) {
      if (wanted != View.CHECK) {
        checkModel.breakOff();
      }
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
      case CHECK -> check.begin();
      case LECTERN -> lectern.begin();
      case STAND -> stand.begin();
      case REVIEW -> review.begin();
      case SETTINGS -> settingsView.begin();
    }
  }

  private void look() {
    standModel.look();
    RoomState room = session.state();
    RoomLink link = session.link();
    TakeMoment moment = standModel.momentProperty().get();
    lectern.look(moment);
    wall.look(room, moment);
    if (link != null) {
      lecternDesk.steering().look(moment, link.roomMicros(System.nanoTime()));
    }
    String said = situation.say(room, standModel.momentProperty().get(), System.nanoTime());
    checkModel.look(System.nanoTime());
    partners.look(System.nanoTime());
    if (current == View.CHECK && room.problem().isEmpty()) {
      said = words.say(checkModel.listens() ? "situation.check.tap" : "situation.check");
    } else if (room.link() == null && current == View.PRACTICE) {
      said = words.say("situation.practice");
    } else if (room.inside() && session.standInsAreComing() && room.problem().isEmpty()) {
      said = words.say("situation.practice.coming");
    }
    if (room.link() == null && session.leftProperty().get() > 0) {
      said = words.say("situation.left", session.leftProperty().get()) + " " + said;
    }
    if (room.leader()
        && room.review() != null
        && room.phase() == Phase.REVIEW
        && lecternDesk.lesson().asks()
        && room.problem().isEmpty()) {
      said = words.say("situation.lesson", lecternDesk.lesson().nextStep());
    }
    boolean first = room.link() == null && !putAside.isEmpty();
    shell.say(first ? words.say("settings.aside", putAside) + " " + said : said);
  }

  /** Keeps what is to be remembered; a folder that cannot be written is no reason to fail. */
  private void remember() {
    try {
      soundFile.write(sound.settings());
      settingsFile.write(
          new Settings(
              Settings.FORMAT,
              Settings.VERSION,
              looks.lookProperty().get(),
              doorModel.nameProperty().get(),
              doorModel.addressProperty().get()));
    } catch (UncheckedIOException | BadInput unkept) {
      LOG.warn("the settings cannot be kept: {}", unkept.getMessage());
    }
  }

  @Override
  public void close() {
    wall.close();
    remember();
    ticker.close();
    if (finder != null) {
      finder.close();
    }
    taps.close();
    sound.close();
    session.close();
  }
}
