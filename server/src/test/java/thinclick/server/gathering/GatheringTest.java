package thinclick.server.gathering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Feel;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Span;

class GatheringTest {
  private static final Gathering.Recorded ANA =
      new Gathering.Recorded(
          "Ana",
          List.of(
              new RecordedNote(0, 110_500L, 1, 60, 90),
              new RecordedNote(1_000_000, null, 1, 62, 80)));

  @Test
  void barOneAtTheRecordingsStartIsRoomTimeZero() {
    assertThat(Gathering.startMicros(0)).isZero();
    assertThat(Gathering.attacks(List.of(ANA), 0))
        .containsExactly(
            new Attack("Ana", 0, 90, 60, 110.5, null, false, false),
            new Attack("Ana", 1_000_000, 80, 62, null, null, false, false));
  }

  @Test
  void aLaterBarOneMovesTheStartAndNotTheAttacks() {
    assertThat(Gathering.startMicros(1_234.5)).isEqualTo(1_234_500);
    assertThat(Gathering.attacks(List.of(ANA), 1_234.5))
        .extracting(Attack::micros)
        .containsExactly(0L, 1_000_000L);
  }

  @Test
  void aRecordingStartedAfterBarOneMovesTheAttacksSoThatNoTimeIsNegative() {
    assertThat(Gathering.startMicros(-500)).isZero();
    assertThat(Gathering.attacks(List.of(ANA), -500))
        .extracting(Attack::micros)
        .containsExactly(500_000L, 1_500_000L);
  }

  @Test
  void attacksOfAllPlayersStandInTheOrderOfTime() {
    Gathering.Recorded ben =
        new Gathering.Recorded("Ben", List.of(new RecordedNote(400, null, 10, 38, 1)));

    assertThat(Gathering.attacks(List.of(ANA, ben), 0))
        .extracting(Attack::player)
        .containsExactly("Ana", "Ben", "Ana");
  }

  @Test
  void anOffsetOfMoreThanAnHourIsRefused() {
    assertThatThrownBy(() -> Gathering.startMicros(3_600_001))
        .hasMessage("--offset-millis: expected -3600000 to 3600000, found 3600001");
    assertThatThrownBy(() -> Gathering.startMicros(Double.NaN)).hasMessageContaining("found NaN");
  }

  @Test
  void chairsAreFilledInOrderAndANameOfTheTakeKeepsItsPart() {
    List<Part> parts =
        List.of(
            Part.of("Ana", 0, List.of(0)),
            Part.of("Ben", 1, List.of(1)),
            Part.of("Cai", 2, List.of(2)));

    assertThat(Seating.seat(parts, List.of("Uma", "Vic")))
        .containsExactly(Part.of("Uma", 0, List.of(0)), Part.of("Vic", 1, List.of(1)));
    assertThat(Seating.seat(parts, List.of("Ben", "Uma", "Vic")))
        .containsExactly(
            Part.of("Ben", 1, List.of(1)),
            Part.of("Uma", 0, List.of(0)),
            Part.of("Vic", 2, List.of(2)));
    assertThatThrownBy(() -> Seating.seat(parts.subList(0, 1), List.of("Uma", "Vic")))
        .hasMessage("--part: expected at most 1 of them, found 2");
  }

  @Test
  void aPartPlayedAgainKeepsWhatIsWrittenAndNothingThatHappened() {
    Part whole =
        new Part(
            "Ana",
            3,
            2.5,
            List.of(3, 6),
            List.of(3),
            List.of(2, 2),
            List.of(60, 62),
            new Feel(25, 0),
            "comping",
            0.5,
            "alto saxophone",
            true,
            List.of(new Span(4, 5)),
            new Hearing(Hearing.Mode.AS_IT_ARRIVES, 38));

    assertThat(whole.writtenFor("Uma"))
        .isEqualTo(
            new Part(
                "Uma",
                3,
                2.5,
                List.of(3, 6),
                List.of(3),
                List.of(2, 2),
                List.of(60, 62),
                new Feel(25, 0),
                "comping",
                0.5,
                "alto saxophone",
                false,
                List.of(),
                null));
  }
}
