package thinclick.client.window.lectern;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import javafx.beans.property.ReadOnlyLongProperty;
import javafx.beans.property.ReadOnlyLongWrapper;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.lesson.LessonRun;
import thinclick.server.lesson.LessonScript;
import thinclick.server.material.Thinning;

/** A lesson as one button: it always does what comes next, and says beforehand what that is. */
public final class LessonModel {
  /** A pause as long as this is a break. */
  private static final long BREAK_NANOS = 300_000_000_000L;

  private static final double NANOS_A_MINUTE = 60e9;

  private final Session session;
  private final Words words;
  private final LecternModel lectern;
  private final MonotonicClock clock;
  private final ReadOnlyLongWrapper changes = new ReadOnlyLongWrapper();

  private @Nullable LessonRun run;
  private String counted = "";
  private long pausedNanos;
  private long restedNanos;

  public LessonModel(Session session, Words words, LecternModel lectern, MonotonicClock clock) {
    this.session = session;
    this.words = words;
    this.lectern = lectern;
    this.clock = clock;
    session.stateProperty().addListener((any, old, now) -> follow(now));
  }

  private void follow(RoomState now) {
    LessonRun running = run;
    if (!now.inside()) {
      set(null);
    } else if (running != null
        && now.stopped() != null
        && now.announced() != null
        && !now.announced().takeId().equals(counted)
        && now.dealt() != null
        && now.dealt().title().equals(running.item().drill())) {
      counted = now.announced().takeId();
      if (!now.abandoned() && !lectern.wasPaused(counted)) {
        set(running.played());
      }
    }
  }

  private void set(@Nullable LessonRun next) {
    if (!Objects.equals(next, run)) {
      run = next;
      changes.set(changes.get() + 1);
    }
  }

  /** Counts up whenever the lesson has moved. */
  public ReadOnlyLongProperty changesProperty() {
    return changes.getReadOnlyProperty();
  }

  /** The lessons that can be run, the own ones first. */
  public List<Lesson> lessons() {
    return session.state().shelf().ready();
  }

  /** A lesson in one line. */
  public String line(Lesson lesson) {
    return words.say("lectern.lesson", lesson.title(), lesson.minutes(), lesson.drills().size());
  }

  /** Where the lesson stands; null where none is run. */
  public @Nullable LessonRun run() {
    return run;
  }

  // ---------------------------------------------------------------- what can be done

  /** Begins a lesson: its first drill is chosen and dealt. */
  public void choose(Lesson lesson) {
    if (lectern.canChoose()) {
      pausedNanos = 0;
      restedNanos = clock.nanos();
      set(LessonRun.begin(lesson, clock.nanos()));
      deal();
    }
  }

  /** Leaves the lesson; what is dealt stays. */
  public void leave() {
    set(null);
  }

  /** True between takes of a lesson, when the one button is waited for. */
  public boolean asks() {
    return run != null && session.state().betweenTakes() && !paused() && canGoOn();
  }

  /** True while the lesson's clock stands: in a break. */
  public boolean paused() {
    return pausedNanos != 0;
  }

  /**
   * Stops the lesson's clock for a break, or lets it go on; what was played is kept. Inside a take
   * the take stops, and the one button goes on with what is left of it.
   */
  public void pause() {
    LessonRun now = run;
    if (lectern.canStop()) {
      lectern.pause();
      pausedNanos = now == null ? 0 : clock.nanos();
      changes.set(changes.get() + 1);
      return;
    }
    if (now == null || !session.state().betweenTakes()) {
      return;
    }
    long nanos = clock.nanos();
    if (!paused()) {
      pausedNanos = nanos;
    } else {
      long gone = nanos - pausedNanos;
      pausedNanos = 0;
      if (gone >= BREAK_NANOS) {
        restedNanos = nanos;
      }
      run = new LessonRun(now.lesson(), now.at(), now.takes(), now.beganNanos() + gone);
    }
    changes.set(changes.get() + 1);
  }

  /** True where there is something to pause: a running take, or a lesson's clock. */
  boolean canPause() {
    return lectern.canStop() || (run != null && session.state().betweenTakes());
  }

  /** Does what comes next: counts in what is dealt, else deals what is due. */
  public void goOn() {
    if (paused()) {
      pause();
    }
    LessonRun now = run;
    if (lectern.rest() != null) {
      lectern.goOn();
    } else if (lectern.canCountIn()) {
      lectern.countIn();
    } else if (now != null && lectern.canChoose()) {
      if (now.drillDone() && !now.last()) {
        next();
      } else {
        deal();
      }
    }
  }

  /** The drill once more. */
  public void repeat() {
    if (run != null && lectern.canChoose()) {
      deal();
    }
  }

  /** The next drill, whether or not this one was played as often as planned. */
  public void next() {
    LessonRun now = run;
    if (now != null && !now.last() && lectern.canChoose()) {
      set(now.next().fitted(clock.nanos(), session.state().shelf()::find));
      deal();
    }
  }

  /** The same drill with more clicks. */
  public void moreClicks() {
    shift(false);
  }

  /** The same drill with fewer clicks. */
  public void fewerClicks() {
    shift(true);
  }

  private void shift(boolean fewer) {
    Drill drill = lectern.chosen();
    if (drill != null && lectern.canChoose()) {
      Thinning thinning = new Thinning(drill.meter(), drill.stepsPerBeat(), drill.groups());
      long seed = drill.deal().seed();
      Drill shifted =
          drill.withStages(
              fewer
                  ? thinning.fewerClicks(drill.stages(), seed)
                  : thinning.moreClicks(drill.stages(), seed));
      lectern.chooseAndDeal(shifted, lectern.tempo());
    }
  }

  /** Deals the lesson's drill, with the click plan as it was last changed. */
  private void deal() {
    LessonRun now = run;
    if (now == null) {
      return;
    }
    Drill chosen = lectern.chosen();
    if (chosen != null && chosen.title().equals(now.item().drill())) {
      lectern.chooseAndDeal(chosen, lectern.tempo());
    } else {
      Drill drill = session.state().shelf().find(now.item().drill());
      lectern.chooseAndDeal(drill, drill.tempo().start());
    }
  }

  // ---------------------------------------------------------------- what is said

  /** What the leader says to the class now. */
  public String script() {
    LessonRun now = run;
    return now == null ? "" : LessonScript.says(now.item(), words.locale());
  }

  /** What a substitute says and does round this take, line by line, each with what it is for. */
  public List<String> scriptLines() {
    LessonRun now = run;
    Drill drill = lectern.chosen();
    if (now == null || drill == null || !drill.title().equals(now.item().drill())) {
      return List.of();
    }
    LessonScript whole =
        LessonScript.of(now.item(), drill, now.takes() + 1, now.last(), words.locale());
    String above = script();
    return new LessonScript(
            whole.lines().stream().filter(line -> !line.text().equals(above)).toList())
        .text(words.locale());
  }

  /** Which drill of how many, which take of how many. */
  public String place() {
    LessonRun now = run;
    if (now == null) {
      return "";
    }
    return words.say(
        "lectern.lesson.place",
        now.at() + 1,
        now.lesson().drills().size(),
        now.item().drill(),
        Math.min(now.takes() + 1, Math.max(now.takes(), now.item().takes())),
        now.item().takes());
  }

  /** What is left of the hour, and whether the rest of the lesson fits. */
  public String left() {
    LessonRun now = run;
    if (now == null) {
      return "";
    }
    int left = now.minutesLeft(paused() ? pausedNanos : clock.nanos());
    return words.say(
        "lectern.lesson.left", left, now.minutesPlanned(session.state().shelf()::find));
  }

  /** What the one button does next. */
  public String nextStep() {
    LessonRun now = run;
    RoomState room = session.state();
    if (room.phase() == Phase.DEALT) {
      return words.say("lectern.countIn");
    }
    Rest rest = lectern.rest();
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

  /** True where the one button does something. */
  public boolean canGoOn() {
    return lectern.canCountIn() || lectern.rest() != null || (run != null && lectern.canChoose());
  }

  /** A break is due by the lesson's clock: a sentence, empty where it is not. */
  public String care() {
    LessonRun now = run;
    Rest rest = lectern.rest();
    if (rest != null) {
      return words.say("care.pausedInside", rest.stoppedBar() + 1, rest.fromBar() + 1);
    }
    if (now == null) {
      return "";
    }
    if (paused()) {
      return words.say("care.paused");
    }
    int gone = (int) ((clock.nanos() - restedNanos) / NANOS_A_MINUTE);
    return gone < LessonRun.BREAK_AFTER_MINUTES
        ? ""
        : words.say("care.break", String.format(Locale.ROOT, "%d", gone));
  }
}
