package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;

class LessonClockTest {
  /**
   * Eight bars and two of count-in at 84 are 28.57 s; a minute to turn, 3 s of talk, 40 s after.
   */
  @Test
  void countInsAndTalkAreCounted() {
    Drill even = Stock.find("Even eighths");
    double takeSeconds = 10 * 4 * 60 / even.tempo().start();

    assertThat(
            LessonClock.seconds(
                new Lesson.Item("Even eighths", 2, "Clap it once without the click."), even))
        .isCloseTo(60 + 3 + 2 * (takeSeconds + 40), within(1e-9));
  }

  @Test
  void everyLessonOfTheStockFitsItsMinutes() {
    for (Lesson lesson : Stock.lessons()) {
      assertThat(LessonClock.minutes(lesson, Stock::find))
          .as(lesson.title())
          .isBetween(0.8 * lesson.minutes(), (double) lesson.minutes());
    }
  }

  @Test
  void aLessonIsFittedAndNeverRunsOver() {
    for (Lesson lesson : Stock.lessons()) {
      for (int minutes = 6; minutes <= 90; minutes++) {
        Lesson fitted = LessonClock.fit(lesson, minutes, Stock::find);
        assertThat(LessonClock.minutes(fitted, Stock::find))
            .as("%s in %d", lesson.title(), minutes)
            .isLessThanOrEqualTo(minutes);
        assertThat(fitted.minutes()).isEqualTo(minutes);
      }
    }
  }

  @Test
  void anHourTooShortForOneTakeIsRefused() {
    assertThatThrownBy(() -> LessonClock.fit(Stock.findLesson("First day"), 1, Stock::find))
        .hasMessageContaining("minutes: expected at least 3 for the first drill alone, found 1");
  }
}
