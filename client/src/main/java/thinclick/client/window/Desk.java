package thinclick.client.window;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import javafx.scene.Scene;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import thinclick.client.find.FoundHost;
import thinclick.client.find.HostFinder;
import thinclick.client.link.RoomLink;
import thinclick.client.window.check.CheckModel;
import thinclick.client.window.door.DoorModel;
import thinclick.client.window.lectern.LecternDesk;
import thinclick.client.window.lectern.LecternView;
import thinclick.client.window.lectern.RosterModel;
import thinclick.client.window.look.SystemLook;
import thinclick.client.window.season.ClassDesk;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.settings.SettingsModel;
import thinclick.client.window.stand.StandView;
import thinclick.client.window.wall.WallWindow;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.time.MonotonicClock;

/** One window with all that belongs to it; puts models, pages, keys and sound together. */
final class Desk implements AutoCloseable {
  private static final double WIDTH = 1_120;
  private static final double HEIGHT = 760;

  private final Stage stage;
  private final Session session;
  private final Remembered remembered;
  private final PlayersHere players;
  private final ClassDesk classes;
  private final LecternDesk lecternDesk;
  private final DoorModel doorModel;
  private final DeskViews views;
  private final Shell shell;
  private final Pages pages;
  private final FootSentence foot;
  private final Ticker ticker;
  private final Scene scene;

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
    this.stage = stage;
    this.session = session;
    remembered = new Remembered(settingsFile, found);
    players = new PlayersHere(session, words, remembered.sound(), remembered.input());
    classes = new ClassDesk(session, WindowThread.INSTANCE, words);
    lecternDesk = LecternDesk.of(session, words, MonotonicClock.SYSTEM, classes);
    doorModel = new DoorModel(session, words);
    remembered.writeAt(doorModel);
    doorModel.choosesFrom(classes.titles(), classes::open);
    views =
        new DeskViews(
            session,
            words,
            players,
            lecternDesk,
            doorModel,
            remembered.looks(),
            () -> goTo(View.STAND));
    views.onWall(this::turnWall);
    shell = new Shell(words, players.sound(), players.taps());
    shell.whileChecking(players.check().phaseProperty().isNotEqualTo(CheckModel.Phase.IDLE));
    foot =
        new FootSentence(
            session, doorModel, players.check(), lecternDesk, words, remembered.putAside());
    pages = new Pages(stage, session, shell, words);
    views.into(pages, session);
    shell.onGo(pages::go);
    shell.onLeave(session::leave);
    ticker = new Ticker(WindowThread.INSTANCE, this::look);
    scene = new Scene(shell.root(), WIDTH, HEIGHT);
    dress();
    remembered.looks().lookProperty().addListener(any -> dress());
    remembered.looks().lookProperty().addListener(any -> keep());
    remembered.looks().languageProperty().addListener(any -> keep());
    players.sound().onMeasured(this::keep);
    players.sound().countInProperty().addListener(any -> keep());
    players.taps().settingsProperty().addListener(any -> keep());
    scene.heightProperty().addListener(any -> shell.dress(textSize()));
    bindKeys(remembered.looks());
    session.stateProperty().addListener((any, old, now) -> follow(old, now));
    stage.focusedProperty().addListener((any, old, focused) -> focused(focused));
    stage.setScene(scene);
    stage.setMinWidth(720);
    stage.setMinHeight(520);
    pages.follow(RoomState.OUTSIDE, session.state());
    pages.go(View.DOOR);
    look();
  }

  private void bindKeys(SettingsModel looks) {
    DeskKeys.bind(
        scene,
        players.taps(),
        new DeskKeys(session, lecternDesk, looks, pages, this::turnWall)
            .rescuedAt(this::moment)
            .toMaterial(
                () -> atLectern(LecternView::toDrills), () -> atLectern(LecternView::toCompose))
            .nextReader(by -> views.turnReader(pages.current(), by))
            .commands());
    DeskKeys.touch(views.stand().root(), players.taps());
  }

  /** Where one leads and may choose. */
  private void atLectern(Consumer<LecternView> does) {
    if (lecternDesk.lectern().canChoose()) {
      pages.go(View.LECTERN);
      does.accept(views.lectern());
    }
  }

  /** What needs time comes once the window is up. */
  void start() {
    players.start();
    ticker.start();
    finder = HostFinder.start(hosts -> WindowThread.INSTANCE.execute(() -> found(hosts)));
    session.bringWhatIsLeft();
    views.openDoor();
    classes.look();
  }

  /** The hosts that say in this network that they are there. */
  void found(List<FoundHost> hosts) {
    doorModel.found().setAll(hosts);
  }

  /** Comes in where the command line says so. */
  void begin(WindowOptions options) {
    if (options.shade() != null) {
      SettingsModel looks = remembered.looks();
      looks.set(looks.lookProperty().get().with(options.shade()));
    }
    options.lead(doorModel);
  }

  private void focused(boolean now) {
    if (now) {
      askSystem();
    } else {
      focusLost();
    }
  }

  /** The system's light or dark may have been changed meanwhile; asking takes a moment. */
  private void askSystem() {
    CompletableFuture<?> unused =
        CompletableFuture.supplyAsync(SystemLook::ask)
            .thenAcceptAsync(remembered.looks()::systemSays, WindowThread.INSTANCE);
  }

  /** The sound check. */
  CheckModel check() {
    return players.check();
  }

  /** Those who play at this computer. */
  Chairs chairs() {
    return players.chairs();
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
    players.taps().focusLost();
  }

  /**
   * Something went wrong that nobody foresaw; said between takes, never in one.
   *
   * @param where the file that tells what it was
   */
  void wentWrong(Path where) {
    foot.wentWrong(where.toString());
    look();
  }

  /** Hangs the wall, or puts it away; anybody in a room may, so that a projector can be one. */
  private void turnWall() {
    if (session.state().inside() || wall().showing()) {
      wall().turn(stage);
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

  /** How the window looks. */
  SettingsModel looks() {
    return remembered.looks();
  }

  /** Where the part is read. */
  StandView stand() {
    return views.stand();
  }

  /** The wall's own window. */
  WallWindow wall() {
    return views.wall();
  }

  private double textSize() {
    return remembered.looks().lookProperty().get().textSize();
  }

  private void dress() {
    SettingsModel looks = remembered.looks();
    shell.dress(textSize()); // before the page is styled, which must know how close it keeps
    views.dress(scene, looks.lookProperty().get(), looks.paletteProperty().get());
  }

  /** True from a deal to the end of its take. */
  private static boolean isToPlay(RoomState room) {
    return room.dealt() != null && room.phase() != Phase.REVIEW;
  }

  private void follow(RoomState old, RoomState now) {
    boolean toPlay = isToPlay(now);
    if (old.takeRuns() != now.takeRuns() || isToPlay(old) != toPlay) {
      shell.follow(toPlay, now.takeRuns());
    }
    pages.follow(old, now);
    views.follow(now);
    look();
    if (old.inside() != now.inside() || (old.takeRuns() && !now.takeRuns())) {
      keep();
    }
  }

  private TakeMoment moment() {
    return players.chairs().first().stand().momentProperty().get();
  }

  private void look() {
    players.chairs().look();
    RoomLink link = session.link();
    TakeMoment moment = moment();
    views.look(session.state(), moment);
    if (link != null) {
      lecternDesk.steering().look(moment, link.roomMicros(System.nanoTime()));
    }
    long nanos = System.nanoTime();
    players.look(nanos);
    shell.say(foot.say(pages.current(), moment, nanos), foot.isUrgent());
  }

  /** Keeps what is to be remembered; a take is not the time to write files. */
  private void keep() {
    if (!session.state().takeRuns()) {
      remember();
    }
  }

  private void remember() {
    remembered.keep(players.sound().settings(), players.taps().settingsProperty().get(), doorModel);
  }

  @Override
  public void close() {
    wall().close();
    remember();
    ticker.close();
    if (finder != null) {
      finder.close();
    }
    players.close();
    classes.close();
    session.close();
  }
}
