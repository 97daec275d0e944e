package thinclick.server.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Lesson;
import thinclick.server.material.LessonClock;
import thinclick.server.material.Stock;

/** Where a lesson stands. */
class LessonRunTest {
  private static final long MINUTE = 60_000_000_000L;
  private final Lesson lesson = Stock.findLesson("First day");
  private final LessonRun run = LessonRun.begin(lesson, 0);

  @Test
  void aDrillIsDoneOnceItsTakesHaveBeenPlayed() {
    LessonRun now = run;
    for (int take = 0; take < run.item().takes(); take++) {
      assertThat(now.drillDone()).isFalse();
      now = now.played();
    }
    assertThat(now.drillDone()).isTrue();
    assertThat(now.next().takes()).isZero();
    assertThat(now.next().item()).isEqualTo(lesson.drills().get(1));
  }

  @Test
  void theLastDrillStays() {
    LessonRun now = run;
    for (int i = 0; i < 20; i++) {
      now = now.next();
    }
    assertThat(now.last()).isTrue();
    assertThat(now.next()).isEqualTo(now);
    assertThat(run.before()).isEqualTo(run);
  }

  @Test
  void minutesLeftAreRoundedUpAndNeverBelowNone() {
    assertThat(run.minutesLeft(0)).isEqualTo(45);
    assertThat(run.minutesLeft(1)).isEqualTo(45);
    assertThat(run.minutesLeft(MINUTE)).isEqualTo(44);
    assertThat(run.minutesLeft(45 * MINUTE)).isZero();
    assertThat(run.minutesLeft(90 * MINUTE)).isZero();
    assertThat(run.minutesGone(25 * MINUTE - 1)).isEqualTo(24);
  }

  @Test
  void whatIsPlannedShrinksWithEveryTakeAndDrill() {
    assertThat(run.minutesPlanned(Stock::find))
        .isEqualTo((int) Math.round(LessonClock.minutes(lesson, Stock::find)));
    assertThat(run.played().minutesPlanned(Stock::find))
        .isLessThan(run.minutesPlanned(Stock::find));
    assertThat(run.next().minutesPlanned(Stock::find))
        .isLessThan(run.played().minutesPlanned(Stock::find));
  }

  @Test
  void whatIsStillToComeIsCutToTheMinutesLeft() {
    LessonRun late = run.next().next();
    for (int minute = 5; minute <= 44; minute++) {
      LessonRun fitted = late.fitted(minute * MINUTE, Stock::find);
      int left = 45 - minute;
      assertThat(fitted.at()).isEqualTo(2);
      assertThat(fitted.lesson().drills().subList(0, 3))
          .extracting(Lesson.Item::drill)
          .isEqualTo(lesson.drills().subList(0, 3).stream().map(Lesson.Item::drill).toList());
      boolean oneTakeAlone = fitted.lesson().drills().size() == 3 && fitted.item().takes() == 1;
      assertThat(fitted.minutesPlanned(Stock::find) <= left || oneTakeAlone)
          .as("%d minutes left", left)
          .isTrue();
    }
    assertThat(run.fitted(0, Stock::find)).as("all of it fits").isEqualTo(run);
    assertThat(late.fitted(60 * MINUTE, Stock::find).item().takes()).isEqualTo(1);
  }

  @Test
  void aDrillThatIsUnderWayIsLeftAsItIs() {
    LessonRun underWay = run.played();

    assertThat(underWay.fitted(40 * MINUTE, Stock::find)).isEqualTo(underWay);
  }
}
