package thinclick.client.window.lectern;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.server.lesson.LessonRun;
import thinclick.server.lesson.LessonScript;
import thinclick.server.lesson.LessonScript.Moment;

/**
 * What the prompt book says now: which take is spoken of, what its script has for this moment, what
 * the one button does next. Between a take and the next deal it speaks of the take that was played.
 */
public final class Prompt {
  private final Session session;
  private final Words words;
  private final LecternModel lectern;
  private final TakeModel take;
  private final LessonModel lesson;

  Prompt(Session session, Words words, LecternModel lectern, TakeModel take, LessonModel lesson) {
    this.session = session;
    this.words = words;
    this.lectern = lectern;
    this.take = take;
    this.lesson = lesson;
  }

  /** What the leader says or does now, a sentence with what it is for; empty outside a lesson. */
  public String headline(TakeMoment.Part part) {
    if (lesson.run() == null) {
      return "";
    }
    Rest rest = take.rest();
    if (rest != null) {
      return words.say("lectern.script.paused", rest.stoppedBar() + 1);
    }
    if (lesson.paused()) {
      return words.say("lectern.script.break");
    }
    List<LessonScript.Line> lines = script(part);
    return lines.isEmpty() ? "" : LessonScript.text(lines.get(0), words.locale());
  }

  /** What comes after the headline in this take, in order. */
  public List<LessonScript.Line> lines(TakeMoment.Part part) {
    List<LessonScript.Line> lines = script(part);
    return isHeadedBy(lines) ? lines.subList(1, lines.size()) : lines;
  }

  /** What the headline is for, which is not said again below it; null where it is no line. */
  LessonScript.@Nullable Kind headed(TakeMoment.Part part) {
    List<LessonScript.Line> lines = script(part);
    return isHeadedBy(lines) ? lines.get(0).kind() : null;
  }

  /** Whether the headline is the first of them, and not that a take or the lesson rests. */
  private boolean isHeadedBy(List<LessonScript.Line> lines) {
    return !lines.isEmpty() && take.rest() == null && !lesson.paused();
  }

  /** What lines of a kind are for, as it stands before them. */
  String cue(LessonScript.Kind kind) {
    return LessonScript.cue(kind, words.locale());
  }

  private List<LessonScript.Line> script(TakeMoment.Part part) {
    LessonRun now = lesson.run();
    Drill drill = lectern.chosen();
    if (now == null || drill == null || !drill.title().equals(now.item().drill())) {
      return List.of();
    }
    return LessonScript.of(now.item(), drill, number(now), now.last(), words.locale())
        .from(moment(now, part));
  }

  private Moment moment(LessonRun now, TakeMoment.Part part) {
    if (session.state().takeRuns()) {
      return switch (part) {
        case NONE, BEFORE, COUNT_IN -> Moment.COUNT_IN;
        case PLAYING -> Moment.DURING;
        case OVER -> Moment.AFTER;
      };
    }
    if (take.rest() != null) {
      return Moment.COUNT_IN;
    }
    return played(now) ? Moment.AFTER : Moment.BEFORE;
  }

  /** True from the end of a take that counts for this drill until something is dealt anew. */
  private boolean played(LessonRun now) {
    RoomState room = session.state();
    return room.phase() == Phase.REVIEW
        && room.announced() != null
        && !room.abandoned()
        && !take.wasPaused(room.announced().takeId())
        && now.takes() > 0;
  }

  /** Which take of the drill is spoken of, from 1. */
  private int number(LessonRun now) {
    return played(now) ? now.takes() : now.takes() + 1;
  }

  /**
   * Which drill of how many, and which take of how many, or how many of them are played once one is
   * over; empty outside a lesson.
   */
  public String place() {
    LessonRun now = lesson.run();
    if (now == null) {
      return "";
    }
    int number = number(now);
    int planned = now.item().takes();
    boolean more = number > planned;
    String next = more ? "lectern.lesson.place.more" : "lectern.lesson.place";
    String over = more ? "lectern.lesson.place.played.more" : "lectern.lesson.place.played";
    return words.say(
        played(now) ? over : next,
        now.at() + 1,
        now.lesson().drills().size(),
        now.item().drill(),
        number,
        planned);
  }

  /** What is left of the hour, and whether the rest of the lesson fits. */
  public String left() {
    LessonRun now = lesson.run();
    if (now == null) {
      return "";
    }
    return words.say(
        "lectern.lesson.left",
        now.minutesLeft(lesson.rests().lessonNanos()),
        now.minutesPlanned(session.state().shelf()::find));
  }

  /** What the one button does next. */
  public String nextStep() {
    LessonRun now = lesson.run();
    if (session.state().phase() == Phase.DEALT) {
      return words.say("lectern.countIn");
    }
    Rest rest = take.rest();
    if (rest != null) {
      return words.say("lectern.goOn.rest", rest.fromBar() + 1);
    }
    if (now == null) {
      return words.say("lectern.goOn.none");
    }
    if (now.drillDone() && !now.last()) {
      String next = now.lesson().drills().get(now.at() + 1).drill();
      return words.say("lectern.goOn.next", next);
    }
    return words.say("lectern.goOn.again", now.item().drill());
  }

  /** What the lesson's key does between takes, a sentence; empty outside a lesson. */
  public String goesOn() {
    LessonRun now = lesson.run();
    if (now == null) {
      return "";
    }
    if (now.drillDone() && !now.last()) {
      return words.say("situation.lesson.next", now.lesson().drills().get(now.at() + 1).drill());
    }
    return words.say("situation.lesson.again", now.item().drill());
  }

  /** The commands of which one comes next. */
  enum Command {
    /** Counts in, goes on with a paused take or with the lesson. */
    GO_ON,
    /** Deals what is chosen. */
    DEAL,
    /** Ends the take. */
    STOP,
    /** Nothing: something has to be chosen first. */
    NONE
  }

  /** The command that comes next, which is the one that the window's foot asks for. */
  Command due() {
    if (take.canStop()) {
      return Command.STOP;
    }
    boolean reviewed = session.state().phase() == Phase.REVIEW;
    if (take.canCountIn() || take.rest() != null || (reviewed && lesson.canGoOn())) {
      return Command.GO_ON;
    }
    return lectern.canDeal() ? Command.DEAL : Command.NONE;
  }

  /** What the pause does, in a word. */
  String pause() {
    return words.say(
        switch (lesson.pauseDoes()) {
          case NOTHING, TAKE -> "lectern.pause";
          case GO_ON -> "lectern.pause.goOn";
          case BREAK -> "lectern.pause.break";
          case END_BREAK -> "lectern.pause.endBreak";
        });
  }

  /** What rests, or that a break is due by the lesson's clock: a sentence, empty for neither. */
  public String care() {
    Rest rest = take.rest();
    if (rest != null) {
      return words.say("care.pausedInside", rest.stoppedBar() + 1, rest.fromBar() + 1);
    }
    if (lesson.run() == null || lesson.paused()) {
      return "";
    }
    int gone = lesson.rests().minutesWithout();
    return gone < LessonRun.BREAK_AFTER_MINUTES
        ? ""
        : words.say("care.break", String.format(Locale.ROOT, "%d", gone));
  }

  /**
   * What rests, in a sentence at the window's foot; null where nothing does.
   *
   * @param headed true where the headline is in view, which says the first half of it
   */
  public @Nullable String resting(boolean headed) {
    Rest rest = take.rest();
    if (rest != null) {
      return words.say("situation.paused", rest.stoppedBar() + 1, rest.fromBar() + 1);
    }
    if (!lesson.paused()) {
      return null;
    }
    String how = words.say("care.paused.how");
    return headed ? how : words.say("lectern.script.break") + " " + how;
  }
}
