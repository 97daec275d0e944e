package thinclick.client.window;

import javafx.collections.ListChangeListener;
import javafx.scene.Scene;
import thinclick.client.check.TapCheck;
import thinclick.client.window.check.CheckView;
import thinclick.client.window.door.DoorModel;
import thinclick.client.window.door.DoorView;
import thinclick.client.window.help.HelpView;
import thinclick.client.window.lectern.LecternDesk;
import thinclick.client.window.lectern.LecternView;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.Stylesheet;
import thinclick.client.window.practice.PracticeModel;
import thinclick.client.window.practice.PracticeView;
import thinclick.client.window.review.LeaderView;
import thinclick.client.window.review.ReviewCommands;
import thinclick.client.window.review.ReviewView;
import thinclick.client.window.season.SeasonView;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.settings.SettingsModel;
import thinclick.client.window.settings.SettingsView;
import thinclick.client.window.stand.StandView;
import thinclick.client.window.wall.WallWindow;
import thinclick.client.window.words.Words;
import thinclick.protocol.time.MonotonicClock;

/** The pages of a window as they look: each made once, dressed and told together. */
final class DeskViews {
  private final PlayersHere players;
  private final DoorModel doorModel;
  private final DoorView door;
  private final PracticeView practice;
  private final CheckView check;
  private final StandView stand;
  private final LecternView lectern;
  private final LeaderView leaderReview;
  private final ReviewView review;
  private final SeasonView season;
  private final SettingsView settings;
  private final HelpView help;
  private final WallWindow wall;

  DeskViews(
      Session session,
      Words words,
      PlayersHere players,
      LecternDesk lecternDesk,
      DoorModel doorModel,
      SettingsModel looks,
      Runnable toTheStand) {
    this.players = players;
    this.doorModel = doorModel;
    Chairs chairs = players.chairs();
    door = new DoorView(doorModel, words);
    practice =
        new PracticeView(
            new PracticeModel(session, words, doorModel.name().writtenProperty()), words);
    check =
        new CheckView(
            players.check(),
            players.sound(),
            chairs.first().delay().saysProperty(),
            players.partners().saysProperty(),
            players.partners().modeProperty(),
            words);
    check.forWhoLeads(
        words.say("check.room"),
        words.say("check.room.deal"),
        () -> players.roomCheck().deal(TapCheck.TEMPO));
    new InputPane(session, chairs, players.taps(), words).into(check.inputs());
    stand = new StandView(chairs.first().stand(), words);
    lectern = new LecternView(lecternDesk, words, session.stateProperty(), WindowThread.INSTANCE);
    leaderReview = new LeaderView(session, words);
    review =
        new ReviewView(
            chairs.first().review(),
            new ReviewCommands(
                words,
                players.sound(),
                MonotonicClock.SYSTEM,
                session.data().resolve("reviews"),
                NextUp.of(session, lecternDesk, toTheStand),
                WindowThread.INSTANCE),
            leaderReview,
            words);
    season = new SeasonView(lecternDesk.classes(), words);
    settings = new SettingsView(looks, players.sound().countInProperty(), words);
    help = new HelpView(words);
    wall = new WallWindow(words, words.say("shell.title", words.say("wall.title")));
    chairs.all().addListener((ListChangeListener<Chair>) any -> seatReaders());
  }

  /** Puts them in their places, with the ways that lead from one to another. */
  void into(Pages pages, Session session) {
    pages
        .add(View.DOOR, door.root(), door::begin)
        .add(View.PRACTICE, practice.root(), practice::begin)
        .add(View.CHECK, check.root(), check::begin)
        .add(View.STAND, stand.root(), stand::begin)
        .add(View.LECTERN, lectern.root(), lectern::begin)
        .add(View.REVIEW, review.root(), review::begin)
        .add(View.SEASON, season.root(), season::begin)
        .add(View.SETTINGS, settings.root(), settings::begin)
        .add(View.HELP, help.root(), help::begin);
    pages.onLeavingCheck(players.check()::breakOff);
    practice.onBack(() -> pages.go(View.DOOR));
    doorModel.onPractise(() -> pages.go(View.PRACTICE));
    doorModel.onCheck(() -> pages.go(View.CHECK));
    review.onCheck(() -> pages.go(View.CHECK));
    check.onBack(() -> pages.go(session.state().inside() ? View.STAND : View.DOOR));
  }

  /** What hangs and puts away the wall. */
  void onWall(Runnable turn) {
    lectern.onWall(turn);
  }

  /** The leader's page. */
  LecternView lectern() {
    return lectern;
  }

  /** The wall's own window. */
  WallWindow wall() {
    return wall;
  }

  /** Where the part is read; mouse and finger tap there too. */
  StandView stand() {
    return stand;
  }

  /** The door as somebody comes to it, with the rooms that were left. */
  void openDoor() {
    door.showLeft();
    door.begin();
  }

  /** Whoever plays here reads here: a part each on the stand, a slip each of the review. */
  private void seatReaders() {
    stand.readers(
        players.chairs().all().stream()
            .map(chair -> new StandView.Reader(chair.name(), chair.stand()))
            .toList());
    review.readers(
        players.chairs().all().stream()
            .map(chair -> new ReviewView.Reader(chair.name(), chair.review()))
            .toList());
  }

  /** Turns the page in view to the next reader; 1 forwards, -1 back. */
  void turnReader(View page, int by) {
    if (page == View.REVIEW) {
      review.turn(by);
    } else if (page == View.STAND) {
      stand.turn(by);
    }
  }

  /** Paints them as it is wanted. */
  void dress(Scene scene, Look look, Palette palette) {
    scene.getStylesheets().setAll(Stylesheet.shapes(), Stylesheet.of(palette, look.textSize()));
    stand.dress(palette, look.textSize() / Look.USUAL_TEXT, look.partInWords());
    lectern.dress(palette, look.textSize(), Look.USUAL_TEXT);
    review.dress(palette);
    season.dress(palette, look.textSize());
    leaderReview.dress(palette, look.textSize());
    wall.dress(palette);
  }

  /** What is led may differ between takes and in them. */
  void follow(RoomState room) {
    check.leads(room.leader() && room.betweenTakes());
  }

  /** Looks where the take stands. */
  void look(RoomState room, TakeMoment moment) {
    lectern.look(moment);
    wall.look(room, moment);
  }
}
