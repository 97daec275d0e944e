package thinclick.server.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.file.Hearing.Mode;
import thinclick.protocol.file.Span;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeNews;

/** What computers report of a take beside its attacks: how others are heard, a click broken off. */
class TakeReportsTest {
  private static final long LEADER = 1;
  private static final long MINA = 2;
  private static final long WALL = 3;

  private final RoomDrive drive = new RoomDrive();

  @BeforeEach
  void open() {
    drive.open(LEADER, "Frau Ott");
    drive.join(MINA, "Mina");
  }

  @Test
  void howOthersAreHeardIsWrittenIntoTheNextTakeAndMeasuredInIt() {
    drive.say(MINA, new TakeMessage.HearsOthers(Mode.AS_IT_ARRIVES, 0));
    TakeNews.Announced take = drive.start(LEADER);
    assertThat(written(take).parts().get(0).hearing())
        .isEqualTo(new Hearing(Mode.AS_IT_ARRIVES, 0));
    drive.pass(4_500);
    drive.say(MINA, new TakeMessage.HearsOthers(Mode.AS_IT_ARRIVES, 38));
    assertThat(written(take).parts().get(0).hearing())
        .isEqualTo(new Hearing(Mode.AS_IT_ARRIVES, 38));
    drive.stop(LEADER, take.takeId());
    drive.say(MINA, new TakeMessage.HearsOthers(Mode.IN_TIME, 0));
    assertThat(written(take).parts().get(0).hearing().mode())
        .as("a choice for the next take leaves the last as it was")
        .isEqualTo(Mode.AS_IT_ARRIVES);
  }

  @Test
  void aBrokenClickIsWrittenIntoTheTakeOnce() {
    TakeNews.Announced take = drive.start(LEADER);
    drive.pass(4_500);
    ClientMessage broken =
        new TakeMessage.ClickInterrupted(take.takeId(), take.epoch(), 4_000_000, 4_400_000);
    drive.say(MINA, broken);
    drive.say(MINA, broken);
    assertThat(written(take).clickInterrupted()).containsExactly(new Span(4_000_000, 4_400_000));
    drive.stop(LEADER, take.takeId());
    drive.say(
        MINA, new TakeMessage.ClickInterrupted(take.takeId(), take.epoch(), 4_600_000, 4_700_000));
    assertThat(written(take).clickInterrupted()).hasSize(2);
  }

  @Test
  void moreThanSixtyFourBreaksAreNotKept() {
    TakeNews.Announced take = drive.start(LEADER);
    for (int i = 0; i < 70; i++) {
      drive.pass(150);
      drive.say(
          MINA,
          new TakeMessage.ClickInterrupted(take.takeId(), take.epoch(), i * 1_000L, i * 1_000L));
    }
    assertThat(written(take).clickInterrupted()).hasSize(64);
  }

  @Test
  void listenersOtherEpochsAndOtherTakesAreRefused() {
    drive.join(WALL, "Wall", Role.LISTENER, null);
    TakeNews.Announced take = drive.start(LEADER);
    drive.say(WALL, new TakeMessage.HearsOthers(Mode.IN_TIME, 0));
    assertThat(drive.lastError(WALL)).isEqualTo(ErrorCode.NOT_ALLOWED);
    drive.say(WALL, new TakeMessage.ClickInterrupted(take.takeId(), take.epoch(), 1, 2));
    assertThat(drive.lastError(WALL)).isEqualTo(ErrorCode.NOT_ALLOWED);
    drive.say(MINA, new TakeMessage.ClickInterrupted("room-t9", take.epoch(), 1, 2));
    assertThat(drive.lastError(MINA)).isEqualTo(ErrorCode.NOT_ALLOWED);
    drive.say(MINA, new TakeMessage.ClickInterrupted(take.takeId(), take.epoch() + 1, 1, 2));
    assertThat(drive.lastError(MINA)).isEqualTo(ErrorCode.WRONG_EPOCH);
  }

  @Test
  void aComputerThatSleptIsAwayAndNoLongerThanUntilNow() {
    TakeNews.Announced take = drive.start(LEADER);
    drive.pass(9_000);
    drive.say(MINA, new TakeMessage.Asleep(take.takeId(), take.epoch(), 4_000_000, 6_000_000));
    drive.say(MINA, new TakeMessage.Asleep(take.takeId(), take.epoch(), 7_000_000, 99_000_000));
    assertThat(away()).hasSize(2).startsWith(new Span(4_000_000, 6_000_000));
    assertThat(away().get(1).toMicros()).isBetween(7_000_000L, 20_000_000L);

    drive.say(LEADER, new TakeMessage.Asleep(take.takeId(), take.epoch(), 1, 2));
    assertThat(drive.lastError(LEADER)).as("has no part").isEqualTo(ErrorCode.NOT_ALLOWED);
    drive.say(MINA, new TakeMessage.Asleep(take.takeId(), take.epoch() + 1, 1, 2));
    assertThat(drive.lastError(MINA)).isEqualTo(ErrorCode.WRONG_EPOCH);
    for (int i = 0; i < 70; i++) {
      drive.pass(150);
      drive.say(MINA, new TakeMessage.Asleep(take.takeId(), take.epoch(), i, i + 1));
    }
    assertThat(away()).as("no more are kept").hasSize(64);
  }

  @Test
  void whoIsFoundToHaveBeenSilentWasAwaySinceThen() {
    drive.start(LEADER);
    drive.pass(9_000);
    drive.event(new RoomEvent.Gone(MINA, 5_000_000));
    drive.stop(LEADER, drive.last(LEADER, TakeNews.Announced.class).takeId());
    Span span = away().get(0);
    assertThat(span.toMicros() - span.fromMicros()).isEqualTo(5_000_000);
  }

  private List<Span> away() {
    return drive.journal.stream()
        .filter(JournalEntry.Away.class::isInstance)
        .map(entry -> ((JournalEntry.Away) entry).span())
        .toList();
  }

  /** The take as it was last written down. */
  @Test
  void oneQuestionAboutTakesBeforeIsUnderWayForEachAndAnAnswerMakesWayForTheNext() {
    TakeNews.Announced take = drive.start(LEADER);
    drive.stop(LEADER, take.takeId());
    drive.say(MINA, new QuestionMessage.AskCourse(31, take.takeId()));
    drive.say(MINA, new QuestionMessage.AskCourse(32, take.takeId()));
    assertThat(drive.last(MINA, ServerMessage.Problem.class).requestId()).isEqualTo(32);
    List<Effect.Recall> asked = drive.effects(Effect.Recall.class);
    assertThat(asked).hasSize(1);
    assertThat(asked.get(0).question())
        .isEqualTo(new PastQuestion.CourseOf(take.takeId(), "Beats and ands", false, "room-p2"));

    ServerMessage answer = new AnswerMessage.CourseSoFar(take.takeId(), null, null, null);
    drive.event(new RoomEvent.Recalled(asked.get(0), answer, ""));
    assertThat(drive.last(MINA, AnswerMessage.CourseSoFar.class)).isEqualTo(answer);
    assertThat(drive.last(MINA, ServerMessage.Done.class).requestId()).isEqualTo(31);
    drive.say(MINA, new QuestionMessage.AskCourse(33, take.takeId()));
    drive.event(new RoomEvent.Recalled(drive.effects(Effect.Recall.class).get(1), null, "none"));
    assertThat(drive.last(MINA, ServerMessage.Problem.class).says()).isEqualTo("none");

    drive.say(LEADER, new QuestionMessage.AskFewest(34, "Beats and ands", 120));
    assertThat(drive.effects(Effect.Recall.class).get(2).question())
        .isEqualTo(new PastQuestion.FewestAt("Beats and ands", 120, Set.of("Mina")));
  }

  private Take written(TakeNews.Announced announced) {
    List<Take> versions =
        drive.journal.stream()
            .map(
                entry -> {
                  if (entry instanceof JournalEntry.TakeBegun begun
                      && begun.takeId().equals(announced.takeId())) {
                    return begun.written();
                  }
                  return entry instanceof JournalEntry.Rewritten again
                          && again.takeId().equals(announced.takeId())
                      ? again.written()
                      : null;
                })
            .filter(take -> take != null)
            .toList();
    return versions.get(versions.size() - 1);
  }
}
