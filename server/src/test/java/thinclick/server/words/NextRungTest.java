package thinclick.server.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.NextRung.Move;

/** The thresholds are the design's own choice: 90, 85, 80, 75 and 10 percent, four bars. */
class NextRungTest {
  private static final Outcome GOOD = take(90, 85.0, 0.1, 0, 0);

  @Test
  void twoGoodTakesGoUpAndOneIsPlayedOnceMore() {
    assertThat(NextRung.after(List.of(GOOD, GOOD))).isEqualTo(Move.UP);
    assertThat(NextRung.after(List.of(GOOD))).isEqualTo(Move.ONCE_MORE);
    assertThat(NextRung.after(List.of(take(60, 60.0, null, 0, 0), GOOD, GOOD))).isEqualTo(Move.UP);
  }

  /** A good take before a worse one does not count. */
  @Test
  void theGoodTakesMustBeTheLastTwo() {
    assertThat(NextRung.after(List.of(GOOD, take(89.9, 90.0, null, 0, 0)))).isEqualTo(Move.STAY);
    assertThat(NextRung.after(List.of(GOOD, take(80, 90.0, null, 0, 0), GOOD)))
        .isEqualTo(Move.ONCE_MORE);
  }

  @ParameterizedTest
  @CsvSource({
    // hold, upbeats, return of a beat, share off for more than four bars, share lost
    "89.9, 95,   0.00, 0, 0,   STAY",
    "95,   84.9, 0.00, 0, 0,   STAY",
    "95,   95,   0.11, 0, 0,   STAY",
    "75,   60,   0.50, .24, 0,   STAY",
    "74.9, 95,   0.00, 0, 0,   DOWN",
    "95,   95,   0.00, .25, 0.3, DOWN",
    "95,   95,   0.00, .24, 0,   UP",
    "95,   95,   0.00, .5, 0.5, DOWN_TWO",
    "40,   40,   0.00, 0, 1,   DOWN_TWO",
    "90,   85,   0.10, 0, 0,   UP",
  })
  void eachThresholdHoldsAtItsEdge(
      double hold, double upbeats, double back, double displaced, double lost, Move move) {
    assertThat(NextRung.after(List.of(GOOD, take(hold, upbeats, back, displaced, lost))))
        .isEqualTo(move);
  }

  @Test
  void whatDoesNotApplyDoesNotStandInTheWay() {
    Outcome withoutUpbeatsOrReturns = take(95, null, null, 0, 0);

    assertThat(NextRung.after(List.of(withoutUpbeatsOrReturns, withoutUpbeatsOrReturns)))
        .isEqualTo(Move.UP);
  }

  /** It must be at most a tenth of a beat; what nobody could measure has not been shown. */
  @Test
  void aReturnThatCouldNotBeMeasuredStandsInTheWay() {
    Outcome unknown = new Outcome(96, 95.0, 95.0, true, null, 0, 0);

    assertThat(NextRung.after(List.of(unknown, unknown))).isEqualTo(Move.STAY);
    assertThat(NextRung.after(List.of(unknown, GOOD))).isEqualTo(Move.ONCE_MORE);
  }

  @Test
  void underTwelveAttacksThereIsNoVerdict() {
    Outcome eleven = new Outcome(11, 100.0, 100.0, false, null, 0, 0);

    assertThat(NextRung.after(List.of(eleven, eleven))).isEqualTo(Move.NO_VERDICT);
    assertThat(NextRung.after(List.of(new Outcome(50, null, null, false, null, 0, 0))))
        .isEqualTo(Move.NO_VERDICT);
    assertThat(NextRung.after(List.of())).isEqualTo(Move.NO_VERDICT);
  }

  @Test
  void anOutcomeIsDrawnFromAReview() {
    Outcome turned = Outcome.of(Scorer.review(HardTakes.turnedAround()));

    assertThat(turned.displacedShare()).as("four bars are not more than four").isZero();
    assertThat(turned.lostShare()).isZero();
    assertThat(turned.written()).isEqualTo(96 + 96 + 96 + 72);
    assertThat(turned.holdPercent()).isBetween(94.0, 96.0);
    assertThat(NextRung.after(List.of(turned, turned))).isEqualTo(Move.UP);

    Outcome swapped = Outcome.of(Scorer.review(HardTakes.swapped()));
    assertThat(swapped.lostShare()).isEqualTo(0.5);
    assertThat(NextRung.after(Arrays.asList(GOOD, swapped))).isEqualTo(Move.DOWN_TWO);
  }

  /** One of 24 who is out holds up nobody; one of four is a quarter. */
  @Test
  void oneOfAClassWhoIsOutIsToldToTheLeaderAndTheBandGoesOn() {
    assertThat(Outcome.out(Scorer.review(HardTakes.turnedAround()))).isEmpty();
    assertThat(NextRung.after(List.of(take(96, 96.0, null, 1 / 24.0, 1 / 24.0))))
        .isEqualTo(Move.ONCE_MORE);
    assertThat(NextRung.after(List.of(take(96, 96.0, null, 1 / 4.0, 1 / 4.0))))
        .isEqualTo(Move.DOWN);
  }

  private static Outcome take(
      double hold, Double upbeats, Double back, double displacedShare, double lostShare) {
    return new Outcome(96, hold, upbeats, back != null, back, displacedShare, lostShare);
  }
}
