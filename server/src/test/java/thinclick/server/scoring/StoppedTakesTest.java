package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;

/**
 * Where a take that was stopped ends. Worked by hand: eighths at 120 in 4/4 lie 250 ms apart, a bar
 * is 2,000 ms, and bar 3 begins with step 16 at 4,000 ms.
 */
class StoppedTakesTest {
  /** Ana on the beats, Ben on every eighth, eight bars, each a little beside. */
  private static Take eightBars(double lateABar) {
    Band band = new Band();
    band.stages =
        lateABar == 0
            ? List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4))
            : List.of(Stage.ofBeats(2, 1, 1, 2, 3, 4), Stage.ofBeats(6, 1));
    band.common =
        IntStream.range(0, band.steps()).mapToDouble(s -> lateABar * Math.max(0, s - 16)).toArray();
    Band.Member ana = new Band.Member();
    ana.name = "Ana";
    ana.noise = 4;
    ana.steps = IntStream.range(0, 32).map(beat -> 2 * beat).toArray();
    Band.Member ben = new Band.Member();
    ben.name = "Ben";
    ben.noise = 4;
    ben.steps = IntStream.range(0, 64).toArray();
    band.members.addAll(List.of(ana, ben));
    return band.play(new Random(8)).take();
  }

  /** What was played until an instant, and the take stopped there, ms from step 0. */
  private static Take stopped(Take take, double millis) {
    long end = take.startMicros() + Math.round(millis * 1_000);
    return take.withAttacks(take.attacks().stream().filter(one -> one.micros() < end).toList())
        .edited()
        .endMicros(end)
        .take();
  }

  private static void everythingCounts(Review review, int ana, int ben) {
    assertThat(review.player("Ana").written()).isEqualTo(ana);
    assertThat(review.player("Ana").placed()).isEqualTo(ana);
    assertThat(review.player("Ben").written()).isEqualTo(ben);
    assertThat(review.player("Ben").placed()).isEqualTo(ben);
    for (PlayerReview player : review.players()) {
      assertThat(player.dropped()).as(player.player()).isZero();
      assertThat(player.added()).as(player.player()).isZero();
    }
    assertThat(review.ensemble().hold().get()).isEqualTo(100);
  }

  @Test
  void stopAtABarLineEndsTheTakeBeforeTheStepOfThatBarLine() {
    Take take = eightBars(0);
    everythingCounts(Scorer.review(stopped(take, 4_000)), 8, 16);
    Analysis analysis = Scorer.analyse(stopped(take, 4_000));
    assertThat(analysis.players().get(1).written().get(16).fate())
        .isEqualTo(Analysis.Fate.AFTER_THE_STOP);
    assertThat(analysis.stoppedInBar()).as("bar 2, of which all was played").isEqualTo(1);
  }

  @Test
  void quarterOfAStepAfterAStepItHasNotBeenMissedYet() {
    Take take = eightBars(0);
    everythingCounts(Scorer.review(stopped(take, 4_000 + 62)), 8, 16);
    List<Attack> more = new ArrayList<>(stopped(take, 4_000 + 62).attacks());
    more.removeIf(one -> one.micros() > take.startMicros() + 3_900_000);
    more.add(Attack.tap("Ben", take.startMicros() + 3_985_000));
    Review early = Scorer.review(stopped(take, 4_000 + 62).withAttacks(more));
    everythingCounts(early, 8, 16);

    Review later = Scorer.review(stopped(take, 4_000 + 63));
    assertThat(later.player("Ana").written()).isEqualTo(9);
    assertThat(later.player("Ben").written()).isEqualTo(17);
  }

  @Test
  void bandThatHasDraggedInSilenceIsStoppedWhereItHasComeTo() {
    Take take = eightBars(12); // 12 ms an eighth: by step 40, bar 6, 288 ms late, more than a step
    Review review = Scorer.review(stopped(take, 10_000 + 288));
    everythingCounts(review, 20, 40);
  }
}
