package thinclick.server.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.LessonClock;

/**
 * Where a lesson stands; each step gives the next one.
 *
 * @param lesson what was planned
 * @param at the index of the drill that is rehearsed
 * @param takes takes of it that were played
 * @param beganNanos when the lesson began, monotonic clock
 */
public record LessonRun(Lesson lesson, int at, int takes, long beganNanos) {
  private static final double NANOS_A_MINUTE = 60e9;

  /** A break is due by then, minutes; the usual advice for practice (README, Take care). */
  public static final int BREAK_AFTER_MINUTES = 25;

  /** The beginning. */
  public static LessonRun begin(Lesson lesson, long nowNanos) {
    return new LessonRun(lesson, 0, 0, nowNanos);
  }

  /** The drill that is rehearsed. */
  public Lesson.Item item() {
    return lesson.drills().get(at);
  }

  /** True in the last drill. */
  public boolean last() {
    return at == lesson.drills().size() - 1;
  }

  /** True where all takes that were planned for the drill have been played. */
  public boolean drillDone() {
    return takes >= item().takes();
  }

  /** A take has been played. */
  public LessonRun played() {
    return new LessonRun(lesson, at, takes + 1, beganNanos);
  }

  /** On to the next drill; the last one stays. */
  public LessonRun next() {
    return last() ? this : new LessonRun(lesson, at + 1, 0, beganNanos);
  }

  /** Back to the drill before; the first one stays. */
  public LessonRun before() {
    return at == 0 ? this : new LessonRun(lesson, at - 1, 0, beganNanos);
  }

  /**
   * The same with takes left out of what is still to come, the most first, so that it fits into the
   * minutes that are left; every drill keeps one take as long as that fits, then the last go.
   * Nothing is added where time is left over, since a class uses it by itself.
   */
  public LessonRun fitted(long nowNanos, Function<String, Drill> drills) {
    List<Lesson.Item> rest = lesson.drills().subList(at, lesson.drills().size());
    double left = lesson.minutes() - (nowNanos - beganNanos) / NANOS_A_MINUTE;
    Lesson rests = with(rest);
    if (takes > 0 || LessonClock.minutes(rests, drills) <= left) {
      return this;
    }
    List<Lesson.Item> fitting;
    try {
      fitting = LessonClock.fit(rests, (int) left, drills).drills();
    } catch (BadInput tooShort) {
      Lesson.Item one = rest.get(0);
      fitting = List.of(new Lesson.Item(one.drill(), 1, one.say()));
    }
    List<Lesson.Item> all = new ArrayList<>(lesson.drills().subList(0, at));
    all.addAll(fitting);
    return new LessonRun(with(all), at, takes, beganNanos);
  }

  private Lesson with(List<Lesson.Item> items) {
    return new Lesson(lesson.format(), lesson.version(), lesson.title(), lesson.minutes(), items);
  }

  /** Whole minutes left of the hour, rounded up; 0 once it is over. */
  public int minutesLeft(long nowNanos) {
    double gone = (nowNanos - beganNanos) / NANOS_A_MINUTE;
    return (int) Math.max(0, Math.ceil(lesson.minutes() - gone));
  }

  /** Whole minutes that have gone. */
  public int minutesGone(long nowNanos) {
    return (int) ((nowNanos - beganNanos) / NANOS_A_MINUTE);
  }

  /** Minutes that what is still planned takes, by the lesson's own clock. */
  public int minutesPlanned(Function<String, Drill> drills) {
    double seconds = 0;
    for (int i = at; i < lesson.drills().size(); i++) {
      Lesson.Item item = lesson.drills().get(i);
      double whole = LessonClock.seconds(item, drills.apply(item.drill()));
      double share = i > at ? 1 : Math.max(0.0, item.takes() - takes) / item.takes();
      seconds += whole * share;
    }
    return (int) Math.round(seconds / 60);
  }
}
