package thinclick.client.window;

import thinclick.client.check.Verdict;
import thinclick.client.link.LinkState;
import thinclick.client.window.check.CheckModel;
import thinclick.client.window.door.DoorModel;
import thinclick.client.window.lectern.LecternDesk;
import thinclick.client.window.season.ClassDesk;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.session.Situation;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.server.season.Season;

/** The one sentence at the foot of the window: where the rehearsal stands, and what it wants. */
final class FootSentence {
  private final Session session;
  private final DoorModel door;
  private final CheckModel check;
  private final LecternDesk lectern;
  private final Words words;
  private final Situation situation;
  private final String putAside;
  private String wentWrong = "";

  /**
   * @param putAside where settings that could not be read were put; empty for nowhere
   */
  FootSentence(
      Session session,
      DoorModel door,
      CheckModel check,
      LecternDesk lectern,
      Words words,
      String putAside) {
    this.session = session;
    this.door = door;
    this.check = check;
    this.lectern = lectern;
    this.words = words;
    this.situation = new Situation(words);
    this.putAside = putAside;
  }

  /** Something went wrong that nobody foresaw; what it was stands in this file. */
  void wentWrong(String file) {
    wentWrong = file;
  }

  /** What is said now, on a page. */
  String say(View page, TakeMoment moment, long nowNanos) {
    RoomState room = session.state();
    String said = situation.say(room, moment, nowNanos);
    boolean quiet = room.problem().isEmpty();
    boolean first = situation.comesFirst(room) && !check.listens();
    if (first) {
      // Wherever one reads meanwhile, this is what one has to know.
    } else if (page == View.DOOR && room.link() == LinkState.CLOSED && door.saidAtEntry()) {
      said = words.say("situation.door");
    } else if (page == View.CHECK && quiet) {
      said = words.say(checking());
    } else if (page == View.REVIEW && quiet && situation.isReviewed(room) && !room.leader()) {
      said = words.say("situation.reviewed.here");
    } else if (page == View.REVIEW && quiet && situation.isToChooseAnother(room)) {
      said = words.say("situation.reviewed.leader.read");
    } else if (page == View.LECTERN && quiet && situation.isToChooseAnother(room)) {
      said = words.say("situation.reviewed.leader.here");
    } else if (page == View.LECTERN && quiet && situation.isToChoose(room)) {
      said = situation.choose(room);
    } else if (page == View.SEASON && quiet) {
      said = season();
    } else if (room.link() == null && (page == View.SETTINGS || page == View.HELP)) {
      said = words.say("situation.away");
    } else if (room.link() == null && page == View.PRACTICE) {
      said = words.say("situation.practice");
    } else if (room.link() == null && page == View.DOOR && !session.leftRooms().isEmpty()) {
      said = words.say("situation.outside.left", session.leftRooms().get(0).room());
    } else if (room.inside() && session.standInsAreComing() && quiet) {
      said = words.say("situation.practice.coming");
    }
    if (room.link() == null && session.leftProperty().get() > 0) {
      said = words.say("situation.left", session.leftProperty().get()) + " " + said;
    }
    if (room.link() == null && !quiet) {
      said = situation.problem(room) + " " + said;
    }
    boolean reviewed = room.leader() && room.review() != null && room.phase() == Phase.REVIEW;
    if (reviewed && lectern.lesson().asks() && quiet) {
      said = lectern.prompt().goesOn();
    }
    String resting = lectern.prompt().resting(page == View.LECTERN);
    if (resting != null && room.leader() && room.betweenTakes() && quiet) {
      said = resting;
    }
    if (!wentWrong.isEmpty() && !room.takeRuns()) {
      said = words.say("house.mishap", wentWrong) + " " + said;
    }
    boolean aside = room.link() == null && !putAside.isEmpty();
    return aside ? words.say("settings.aside", putAside) + " " + said : said;
  }

  /** Whether what is said has to be seen from wherever one reads. */
  boolean isUrgent() {
    return situation.isLost(session.state());
  }

  private String checking() {
    if (check.listens()) {
      return "situation.check.tap";
    }
    if (!check.audibleProperty().get()) {
      return "situation.check.silence";
    }
    Verdict verdict = check.verdictProperty().get();
    return verdict == null
        ? "situation.check"
        : verdict instanceof Verdict.Known ? "situation.check.known" : "situation.check.refused";
  }

  private String season() {
    ClassDesk classes = lectern.classes();
    if (classes.asksToErase()) {
      boolean inside = session.state().inside();
      return words.say(inside ? "situation.season.erase.room" : "situation.season.erase");
    }
    if (!classes.briefly().isEmpty()) {
      return classes.briefly();
    }
    Season open = classes.seasonProperty().get();
    return open == null
        ? words.say("situation.season.none")
        : words.say("situation.season", open.list().title(), classes.titles().size() > 1 ? 1 : 0);
  }
}
