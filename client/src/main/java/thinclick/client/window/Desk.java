package thinclick.client.window;

import java.io.UncheckedIOException;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import javafx.collections.ListChangeListener;
import javafx.scene.Scene;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.check.TapCheck;
import thinclick.client.find.FoundHost;
import thinclick.client.find.HostFinder;
import thinclick.client.link.RoomLink;
import thinclick.client.window.check.CheckModel;
import thinclick.client.window.check.CheckView;
import thinclick.client.window.door.DoorModel;
import thinclick.client.window.door.DoorView;
import thinclick.client.window.help.HelpView;
import thinclick.client.window.lectern.LecternDesk;
import thinclick.client.window.lectern.LecternView;
import thinclick.client.window.lectern.RosterModel;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.Stylesheet;
import thinclick.client.window.look.SystemLook;
import thinclick.client.window.practice.PracticeModel;
import thinclick.client.window.practice.PracticeView;
import thinclick.client.window.review.LeaderView;
import thinclick.client.window.review.ReviewCommands;
import thinclick.client.window.review.ReviewView;
import thinclick.client.window.season.ClassDesk;
import thinclick.client.window.season.SeasonView;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
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
import thinclick.protocol.time.MonotonicClock;

/** One window with all that belongs to it; puts models, pages, keys and sound together. */
final class Desk implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Desk.class);
  private static final double WIDTH = 1_120;
  private static final double HEIGHT = 760;

  private final Stage stage;
  private final Session session;
  private final SoundDesk sound;
  private final Taps taps;
  private final KeptFile<SoundSettings> soundFile;
  private final CheckModel checkModel;
  private final CheckView check;
  private final Chairs chairs;
  private final RoomCheck roomCheck;
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
  private final ClassDesk classes;
  private final SeasonView season;
  private final SettingsModel looks;
  private final SettingsView settingsView;
  private final Shell shell;
  private final Ticker ticker;
  private final Pages pages;
  private final FootSentence foot;
  private final Scene scene;

  private final SettingsFile settingsFile;

  private @Nullable HostFinder finder;

  Desk(Stage stage, Session session, Words words, SettingsFile settingsFile) {
    this(stage, session, words, settingsFile, settingsFile.read());
  }

  /**
   * @param found what the file of settings was found to say; it is read once
   */
  Desk(
      Stage stage,
      Session session,
      Words words,
      SettingsFile settingsFile,
      SettingsFile.Found found) {
    this.settingsFile = settingsFile;
    Settings settings = found.settings();
    looks = new SettingsModel(settings);
    settingsView = new SettingsView(looks, words);
    this.stage = stage;
    this.session = session;
    soundFile = SoundSettings.file(settingsFile.folder());
    sound = new SoundDesk(session, words, soundFile.read().value());
    chairs = new Chairs(session, sound, words);
    checkModel = new CheckModel(words, sound, WindowThread.INSTANCE, chairs::judged);
    taps = new Taps(session, chairs, words, checkModel);
    roomCheck = new RoomCheck(session, chairs, checkModel);
    taps.onPlayed((chair, attack) -> roomCheck.tapped(chair, attack.nanos()));
    standModel = chairs.first().stand();
    classes = new ClassDesk(session, WindowThread.INSTANCE, words);
    season = new SeasonView(classes, words);
    lecternDesk = LecternDesk.of(session, words, MonotonicClock.SYSTEM, classes);
    doorModel = new DoorModel(session, words);
    doorModel.nameProperty().set(settings.name());
    doorModel.addressProperty().set(settings.address());
    doorModel.choosesFrom(classes.titles(), classes::open);
    door = new DoorView(doorModel, words);
    practice = new PracticeView(new PracticeModel(session, words, doorModel.nameProperty()), words);
    lectern = new LecternView(lecternDesk, words, session.stateProperty());
    stand = new StandView(standModel, words);
    leaderReview = new LeaderView(session, words);
    review =
        new ReviewView(
            chairs.first().review(),
            new ReviewCommands(
                words,
                sound,
                MonotonicClock.SYSTEM,
                session.data().resolve("reviews"),
                NextUp.of(session, lecternDesk, () -> goTo(View.STAND))),
            leaderReview.root(),
            words);
    chairs.all().addListener((ListChangeListener<Chair>) any -> seatReaders());
    wall = new WallWindow(words, words.say("shell.title", words.say("wall.title")));
    lectern.onWall(this::turnWall);
    partners = new Partners(session, sound, words);
    check =
        new CheckView(
            checkModel,
            sound,
            chairs.first().delay().saysProperty(),
            partners.saysProperty(),
            partners.modeProperty(),
            words);
    check.forWhoLeads(
        words.say("check.room"),
        words.say("check.room.deal"),
        () -> roomCheck.deal(TapCheck.TEMPO));
    new InputPane(session, chairs, taps, words).into(check.inputs());
    HelpView help = new HelpView(words);
    shell = new Shell(words, sound, taps);
    foot = new FootSentence(session, checkModel, lecternDesk.lesson(), words, found.putAside());
    pages =
        new Pages(stage, session, shell, words)
            .add(View.DOOR, door.root(), door::begin)
            .add(View.PRACTICE, practice.root(), practice::begin)
            .add(View.CHECK, check.root(), check::begin)
            .add(View.STAND, stand.root(), stand::begin)
            .add(View.LECTERN, lectern.root(), lectern::begin)
            .add(View.REVIEW, review.root(), review::begin)
            .add(View.SEASON, season.root(), season::begin)
            .add(View.SETTINGS, settingsView.root(), settingsView::begin)
            .add(View.HELP, help.root(), help::begin);
    pages.onLeavingCheck(checkModel::breakOff);
    practice.onBack(() -> pages.go(View.DOOR));
    doorModel.onPractise(() -> pages.go(View.PRACTICE));
    doorModel.onCheck(() -> pages.go(View.CHECK));
    check.onBack(() -> pages.go(session.state().inside() ? View.STAND : View.DOOR));
    shell.onGo(pages::go);
    shell.onLeave(session::leave);
    ticker = new Ticker(WindowThread.INSTANCE, this::look);

    scene = new Scene(shell.root(), WIDTH, HEIGHT);
    dress();
    looks.lookProperty().addListener(any -> dress());
    DeskKeys.bind(
        scene,
        taps,
        new DeskKeys(session, lecternDesk, looks, pages, this::turnWall)
            .rescuedAt(standModel.momentProperty()::get)
            .nextReader(this::turnReader)
            .commands());
    DeskKeys.touch(stand.root(), taps);
    session
        .stateProperty()
        .addListener(
            (any, old, now) -> {
              if (old.takeRuns() != now.takeRuns()) {
                shell.keepHeight(now.takeRuns());
              }
              pages.follow(old, now);
              check.leads(now.leader() && now.betweenTakes());
              look();
            });
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
    pages.follow(RoomState.OUTSIDE, session.state());
    pages.go(View.DOOR);
    look();
  }

  /** What needs time comes once the window is up. */
  void start() {
    sound.start();
    taps.start();
    checkModel.start();
    ticker.start();
    finder = HostFinder.start(hosts -> WindowThread.INSTANCE.execute(() -> found(hosts)));
    session.bringWhatIsLeft();
    door.showLeft();
    door.begin();
    classes.look();
  }

  /** The hosts that say in this network that they are there. */
  void found(List<FoundHost> hosts) {
    doorModel.found().setAll(hosts);
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

  /** What the leader does. */
  LecternDesk lecternDesk() {
    return lecternDesk;
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
    pages.go(wanted);
  }

  /** The wall's own window. */
  WallWindow wall() {
    return wall;
  }

  /** Whoever plays here reads here: a part each on the stand, a slip each of the review. */
  private void seatReaders() {
    stand.readers(
        chairs.all().stream()
            .map(chair -> new StandView.Reader(chair.name(), chair.stand()))
            .toList());
    review.readers(
        chairs.all().stream()
            .map(chair -> new ReviewView.Reader(chair.name(), chair.review()))
            .toList());
  }

  /** Turns to the next reader's page; 1 forwards, -1 back. */
  private void turnReader(int by) {
    if (pages.current() == View.REVIEW) {
      review.turn(by);
    } else if (pages.current() == View.STAND) {
      stand.turn(by);
    }
  }

  private void dress() {
    Palette palette = looks.paletteProperty().get();
    Look look = looks.lookProperty().get();
    scene.getStylesheets().setAll(Stylesheet.shapes(), Stylesheet.of(palette, look.textSize()));
    stand.dress(palette, look.textSize() / Look.USUAL_TEXT, look.partInWords());
    lectern.dress(palette, look.textSize(), Look.USUAL_TEXT);
    review.dress(palette);
    season.dress(palette);
    leaderReview.dress(palette, look.textSize());
    wall.dress(palette);
  }

  private void look() {
    chairs.look();
    RoomState room = session.state();
    RoomLink link = session.link();
    TakeMoment moment = standModel.momentProperty().get();
    lectern.look(moment);
    wall.look(room, moment);
    if (link != null) {
      lecternDesk.steering().look(moment, link.roomMicros(System.nanoTime()));
    }
    long nanos = System.nanoTime();
    checkModel.look(nanos);
    partners.look(nanos);
    shell.say(foot.say(pages.current(), moment, nanos));
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
              looks.languageProperty().get(),
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
    classes.close();
    session.close();
  }
}
