package thinclick.client.window.session;

import thinclick.client.link.LinkState;
import thinclick.client.window.words.FromAfar;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.music.ClickPlan;
import thinclick.server.words.Spoken;

/** The one sentence at the bottom: where this player stands and what can be done now. */
public final class Situation {
  private static final double NANOS = 1e9;

  private final Words words;
  private final FromAfar afar;

  public Situation(Words words) {
    this.words = words;
    this.afar = new FromAfar(words);
  }

  /**
   * The sentence.
   *
   * @param nowNanos the monotonic clock
   */
  public String say(RoomState room, TakeMoment moment, long nowNanos) {
    LinkState link = room.link();
    if (link == null) {
      return words.say("situation.outside");
    }
    return switch (link) {
      case CONNECTING -> joining(room);
      case CLOSED -> words.say("situation.closed", Words.sentence(afar.say(room.linkSays())));
      case AWAY -> away(room, nowNanos);
      case ONLINE -> online(room, moment);
    };
  }

  /** What could not be done, as a sentence; empty where all went well. */
  public String problem(RoomState room) {
    return room.problem().isEmpty() ? "" : Words.sentence(afar.say(room.problem()));
  }

  private String away(RoomState room, long nowNanos) {
    long seconds = Math.round((nowNanos - room.lostNanos()) / NANOS);
    String key = room.takeRuns() ? "situation.lost.playing" : "situation.lost";
    return words.say(key, seconds, room.waiting());
  }

  /** Whoever opens a room here has written no address, and is told none. */
  private String joining(RoomState room) {
    return room.address().startsWith(WayIn.THIS_COMPUTER)
        ? words.say("situation.joining.here")
        : words.say("situation.joining", room.address());
  }

  private String online(RoomState room, TakeMoment moment) {
    if (room.word().isEmpty()) {
      return joining(room);
    }
    if (!room.problem().isEmpty()) {
      return problem(room);
    }
    if (room.clock().state() == ClockState.LOST) {
      return words.say("situation.clock.lost");
    }
    if (leaderAway(room)) {
      return words.say("situation.leaderAway");
    }
    if (!room.note().isEmpty() && room.phase() == Phase.REVIEW) { // the stand has it itself
      return words.say("situation.note", room.note());
    }
    return switch (room.phase()) {
      case GATHERING -> gathering(room);
      case DEALT -> dealt(room);
      case COUNT_IN, TAKE -> taking(room, moment);
      case REVIEW -> reviewing(room);
    };
  }

  /** The take goes on without the leader; after half a minute any player may take over. */
  private static boolean leaderAway(RoomState room) {
    return !room.leader()
        && !room.takeRuns()
        && room.people().stream()
            .anyMatch(person -> person.role() == Role.LEADER && !person.connected());
  }

  private String gathering(RoomState room) {
    if (!room.leader()) {
      return words.say("situation.waiting", room.word());
    }
    String title = room.title() == null ? "" : room.title();
    String key = title.isEmpty() ? "situation.choose" : "situation.deal";
    int here = here(room);
    return words.say(key, room.word(), here, words.count(here), title);
  }

  private String dealt(RoomState room) {
    if (room.clock().state() == ClockState.FINDING) {
      return words.say("situation.clock.finding");
    }
    Dealt dealt = room.dealt();
    String title = dealt == null ? "" : dealt.title();
    if (room.leader()) {
      return words.say("situation.dealt.leader", title);
    }
    return words.say(room.ownPart() == null ? "situation.dealt.late" : "situation.dealt", title);
  }

  private String taking(RoomState room, TakeMoment moment) {
    return switch (moment.part()) {
      case NONE, BEFORE -> Words.sentence(words.say("situation.before", before(moment, words)));
      case COUNT_IN -> stoppable(room, Words.sentence(words.say("stand.countIn")));
      case PLAYING -> stoppable(room, playing(room, moment));
      case OVER -> words.say("situation.over");
    };
  }

  /** Whoever leads and has never done so must be able to end it. */
  private String stoppable(RoomState room, String said) {
    return room.leader() ? words.say("situation.stoppable", said) : said;
  }

  private String playing(RoomState room, TakeMoment moment) {
    Dealt dealt = room.dealt();
    int bars = dealt == null ? 0 : new ClickPlan(dealt.stages()).bars();
    return words.say("situation.playing", moment.bar() + 1, bars, click(moment, words));
  }

  /** How long until the count-in, as every page says it. */
  public static String before(TakeMoment moment, Words words) {
    return words.say("stand.before", moment.secondsToCountIn());
  }

  /** What becomes of the click, as every page says it while a take runs. */
  public static String click(TakeMoment moment, Words words) {
    return moment.barsToNextStage() == 0
        ? words.say("stand.last")
        : words.say("stand.changes", moment.barsToNextStage());
  }

  /** True where the review is there and nothing else is to be said first. */
  public boolean isReviewed(RoomState room) {
    return room.link() == LinkState.ONLINE
        && room.phase() == Phase.REVIEW
        && room.review() != null
        && !room.review().provisional()
        && room.note().isEmpty()
        && room.clock().state() != ClockState.LOST
        && !leaderAway(room);
  }

  /** True where whoever leads has a review to read, and deals again or chooses another drill. */
  public boolean isToChooseAnother(RoomState room) {
    return isReviewed(room)
        && room.leader()
        && room.review() != null
        && !Spoken.nobodyHeard(room.review().review());
  }

  /**
   * True where what there is to say of the room comes before what a page has to say of itself: the
   * link or the clock is lost, or a part is dealt and waits to be read.
   */
  public boolean comesFirst(RoomState room) {
    return isLost(room) || (room.inside() && room.phase() == Phase.DEALT);
  }

  /** True where the link or the room's clock is lost: the sentence wants to be seen. */
  public boolean isLost(RoomState room) {
    boolean unsure = room.inside() && room.clock().state() == ClockState.LOST;
    return room.link() == LinkState.AWAY || unsure;
  }

  /** True where whoever leads has not chosen anything yet. */
  public boolean isToChoose(RoomState room) {
    return room.link() == LinkState.ONLINE
        && room.leader()
        && room.phase() == Phase.GATHERING
        && (room.title() == null || room.title().isEmpty())
        && room.clock().state() != ClockState.LOST;
  }

  /** What there is to do on the very page where one chooses. */
  public String choose(RoomState room) {
    int here = here(room);
    return words.say("situation.choose.here", room.word(), here, words.count(here));
  }

  private static int here(RoomState room) {
    return (int) room.people().stream().filter(Person::connected).count();
  }

  private String reviewing(RoomState room) {
    if (room.review() == null) {
      return words.say("situation.reviewing", reason(room), room.waiting());
    }
    if (room.review().provisional()) {
      return words.say("situation.reviewed.provisional");
    }
    if (!room.leader()) {
      return words.say("situation.reviewed");
    }
    return words.say(
        Spoken.nobodyHeard(room.review().review())
            ? "situation.reviewed.unheard"
            : "situation.reviewed.leader");
  }

  private String reason(RoomState room) {
    if (room.stopped() == null) {
      return words.say("stopped.finished");
    }
    return switch (room.stopped().reason()) {
      case FINISHED -> words.say("stopped.finished");
      case LEADER -> words.say("stopped.leader");
      case HOST -> words.say("stopped.host");
      case CLOCK -> words.say("stopped.clock");
      case INTERRUPTED -> words.say("stopped.interrupted");
    };
  }
}
