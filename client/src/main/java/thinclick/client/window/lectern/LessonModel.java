package thinclick.client.window.lectern;

import java.util.List;
import java.util.Objects;
import javafx.beans.property.ReadOnlyLongProperty;
import javafx.beans.property.ReadOnlyLongWrapper;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.lesson.LessonRun;
import thinclick.server.material.Thinning;

/** A lesson as one button, which always does what comes next; {@link Prompt} says what that is. */
public final class LessonModel {
  private final Session session;
  private final LecternModel lectern;
  private final TakeModel take;
  private final MonotonicClock clock;
  private final LessonBreak rests;
  private final ReadOnlyLongWrapper changes = new ReadOnlyLongWrapper();

  private @Nullable LessonRun run;
  private String counted = "";

  LessonModel(Session session, LecternModel lectern, TakeModel take, MonotonicClock clock) {
    this.session = session;
    this.lectern = lectern;
    this.take = take;
    this.clock = clock;
    rests = new LessonBreak(clock);
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
      if (!now.abandoned() && !take.wasPaused(counted)) {
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

  /** Where the lesson stands; null where none is run. */
  public @Nullable LessonRun run() {
    return run;
  }

  // ---------------------------------------------------------------- what can be done

  /** Begins a lesson: its first drill is chosen and dealt. */
  public void choose(Lesson lesson) {
    if (lectern.canChoose()) {
      rests.begin();
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
    return run != null && rests.taken();
  }

  /** The breaks of this lesson. */
  LessonBreak rests() {
    return rests;
  }

  /** What the pause does at this moment. */
  enum Pause {
    /** Nothing: no take runs, and no lesson's clock. */
    NOTHING,
    /** Stops the take, and with it a lesson's clock. */
    TAKE,
    /** Goes on with what is left of the take that it stopped. */
    GO_ON,
    /** Stops the lesson's clock between takes. */
    BREAK,
    /** Lets the lesson's clock go on. */
    END_BREAK
  }

  /** What the pause would do now. */
  Pause pauseDoes() {
    if (take.canStop()) {
      return Pause.TAKE;
    }
    if (take.rest() != null) {
      return Pause.GO_ON;
    }
    if (run == null || !session.state().betweenTakes()) {
      return Pause.NOTHING;
    }
    return paused() ? Pause.END_BREAK : Pause.BREAK;
  }

  /**
   * Stops what runs, or lets it go on: a take, which the one button goes on with as well, or, where
   * none runs, the lesson's clock for a break. What was played is kept.
   */
  public void pause() {
    LessonRun now = run;
    switch (pauseDoes()) {
      case NOTHING -> {}
      case TAKE -> {
        take.pause();
        if (now != null) {
          rests.take();
        }
      }
      case GO_ON -> goOn();
      case BREAK -> rests.take();
      case END_BREAK -> endBreak();
    }
    changes.set(changes.get() + 1);
  }

  private void endBreak() {
    LessonRun now = run;
    if (now != null && paused()) {
      run = new LessonRun(now.lesson(), now.at(), now.takes(), now.beganNanos() + rests.end());
    }
  }

  /** Does what comes next: counts in what is dealt, else deals what is due. */
  public void goOn() {
    endBreak();
    LessonRun now = run;
    if (take.rest() != null) {
      take.goOn();
    } else if (take.canCountIn()) {
      take.countIn();
    } else if (now != null && lectern.canChoose()) {
      if (now.drillDone() && !now.last()) {
        next();
      } else {
        deal();
      }
    }
    changes.set(changes.get() + 1);
  }

  /** True where the one button does something. */
  public boolean canGoOn() {
    return take.canCountIn() || take.rest() != null || (run != null && lectern.canChoose());
  }

  /** True where a drill was played and can be dealt again, unless the one button does so anyway. */
  boolean canRepeat() {
    LessonRun now = run;
    boolean dealtAnyway =
        now != null
            && !take.canCountIn()
            && take.rest() == null
            && (!now.drillDone() || now.last());
    return now != null && now.takes() > 0 && lectern.canChoose() && !dealtAnyway;
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
}
