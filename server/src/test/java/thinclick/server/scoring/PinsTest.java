package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;

/** Numbers that the definitions fix: closed forms, invariances, and what luck does. */
class PinsTest {
  private static Take take(double tempo, int stepsPerBeat, Swing swing, Double tolerance) {
    List<Integer> row = IntStream.range(0, 32).boxed().toList();
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        "",
        Meter.FOUR_FOUR,
        tempo,
        stepsPerBeat,
        swing,
        0,
        tolerance,
        List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4)),
        List.of(Part.of("Ana", 0, row), Part.of("Ben", 0, row)),
        List.of(),
        null,
        List.of());
  }

  @Test
  void theRuleOfTheSmallestGapHasItsFourWorkedTolerances() {
    // eighths at 120, at 240, at 120 swung 2:1 (gaps 333 and 167 ms), at 320
    assertThat(Scorer.review(take(120, 2, Swing.STRAIGHT, null)).toleranceMillis()).isEqualTo(50);
    assertThat(Scorer.review(take(240, 2, Swing.STRAIGHT, null)).toleranceMillis()).isEqualTo(25);
    assertThat(Scorer.review(take(120, 2, Swing.of(2), null)).toleranceMillis())
        .isCloseTo(33.333, within(.001));
    assertThat(Scorer.review(take(320, 2, Swing.STRAIGHT, null)).toleranceMillis()).isEqualTo(20);
    Review dense = Scorer.review(take(320, 4, Swing.STRAIGHT, null));
    assertThat(dense.ensemble().hold().reason().code()).isEqualTo(Reason.Code.CHANCE_WOULD_PLACE);
  }

  /**
   * What is left of a normal spread cut off at c SDs, sqrt(1 - 2 c phi(c) / (2 Phi(c) - 1)): a
   * spread over the placed alone would be too small by as much.
   */
  @Test
  void spreadOfThePlacedAloneWouldBeTooSmallByItsClosedForm() {
    NormalDistribution normal = new NormalDistribution();
    double[][] rows = {{1, .5396}, {1.5, .7427}, {2, .8796}, {3, .9866}};
    for (double[] row : rows) {
      double c = row[0];
      double left =
          Math.sqrt(1 - 2 * c * normal.density(c) / (2 * normal.cumulativeProbability(c) - 1));
      assertThat(left).isCloseTo(row[1], within(.0001));
    }
    // SD 39.02 places 80 % within 50 ms, SD 25 95.45 %
    assertThat(2 * normal.cumulativeProbability(50 / 39.02) - 1).isCloseTo(.8, within(.0005));
    assertThat(2 * normal.cumulativeProbability(2) - 1).isCloseTo(.9545, within(.0001));
    // and the review's spread is that of all matched, far outside the tolerance too
    Band band = new Band();
    band.stages = List.of(Stage.ofBeats(64, 1, 1, 2, 3, 4));
    band.tolerance = 20.0;
    int[] beats = IntStream.range(0, 256).map(i -> 2 * i).toArray();
    for (String name : new String[] {"Ana", "Ben", "Cleo", "Dov"}) {
      Band.Member member = new Band.Member();
      member.name = name;
      member.steps = beats;
      member.noise = 20;
      band.members.add(member);
    }
    Review review = Scorer.review(band.play(new Random(1)).take());
    assertThat(review.ensemble().hold().get()).isCloseTo(68.3, within(4.0));
    assertThat(review.ensemble().spreadMillis().get()).isCloseTo(20, within(1.0));
  }

  @Test
  void luckMatchesFourFifthsOfEighthsAtTwoHundredAndFortyWithinFiftyMilliseconds() {
    // attacks anywhere: an even row every 125 ms and a tolerance of 50 to either side
    Random random = new Random(240);
    int inside = 0;
    int all = 20_000;
    for (int i = 0; i < all; i++) {
      double at = 125 * random.nextDouble();
      inside += Math.min(at, 125 - at) <= 50 ? 1 : 0;
    }
    assertThat(100.0 * inside / all).isCloseTo(80, within(1.0));
    Review review = Scorer.review(take(240, 2, Swing.STRAIGHT, 50.0));
    assertThat(review.ensemble().hold().reason().code()).isEqualTo(Reason.Code.CHANCE_WOULD_PLACE);
  }

  @Test
  void spreadInAHocketOfTwoToFourIsCorrectedByLeverage() {
    int[][] hocket = {{0, 3, 6}, {2, 5, 7}, {1, 4, 6}, {3, 7}};
    for (int players = 2; players <= 4; players++) {
      double found = 0;
      double real = 0;
      for (int seed = 0; seed < 10; seed++) {
        Band band = new Band();
        band.stages = List.of(Stage.ofBeats(16, 1, 1, 2, 3, 4), Stage.ofBeats(32, 1, 1));
        for (int i = 0; i < players; i++) {
          Band.Member member = new Band.Member();
          member.name = "P" + i;
          int[] cell = hocket[i];
          member.steps =
              IntStream.range(0, band.steps())
                  .filter(s -> Arrays.stream(cell).anyMatch(c -> c == s % 8))
                  .toArray();
          member.noise = 12;
          band.members.add(member);
        }
        Truth truth = band.play(new Random(seed));
        Review review = Scorer.review(truth.take());
        for (int i = 0; i < players; i++) {
          found += review.players().get(i).spreadMillis().get();
          real += truth.players().get(i).spreadMillis();
        }
      }
      assertThat(found / real).as("%d players", players).isCloseTo(1, within(.04));
    }
  }

  @Test
  void aShiftOfRoomTimeAndOtherNamesChangeNothing() {
    Take take = Ensembles.of(12).take();
    Review review = Scorer.review(take);
    long by = 987_654_321_000L;
    List<Attack> later = new ArrayList<>();
    for (Attack one : take.attacks()) {
      later.add(Attack.tap("x" + one.player(), one.micros() + by));
    }
    List<Part> renamed =
        take.parts().stream()
            .map(one -> Part.of("x" + one.player(), one.entryStep(), one.attackSteps()))
            .toList();
    Review other =
        Scorer.review(
            changed(
                take,
                take.tempo(),
                take.startMicros() + by,
                take.toleranceMillis(),
                renamed,
                later));
    assertThat(other.stages()).isEqualTo(review.stages());
    assertThat(other.ensemble().hold()).isEqualTo(review.ensemble().hold());
    for (int i = 0; i < review.players().size(); i++) {
      assertThat(other.players().get(i).leanMillis())
          .isEqualTo(review.players().get(i).leanMillis());
      assertThat(other.players().get(i).displacements())
          .isEqualTo(review.players().get(i).displacements());
    }
  }

  @Test
  void theOrderInWhichAttacksArriveChangesNothing() {
    for (int seed = 0; seed < 6; seed++) {
      Take take = Ensembles.of(seed).take();
      Review review = Scorer.review(take);
      List<Attack> shuffled = new ArrayList<>(take.attacks());
      Collections.shuffle(shuffled, new Random(seed));
      assertThat(Scorer.review(take.withAttacks(shuffled))).as("seed %d", seed).isEqualTo(review);
    }
  }

  @Test
  void allTimesAndTheToleranceTwiceAsLongKeepDisplacementsAndHold() {
    for (int seed : new int[] {2, 5, 11}) {
      Take take = Ensembles.of(seed).take();
      Review review = Scorer.review(take);
      List<Attack> slower = new ArrayList<>();
      for (Attack one : take.attacks()) {
        slower.add(
            Attack.tap(one.player(), take.startMicros() + 2 * (one.micros() - take.startMicros())));
      }
      Review other =
          Scorer.review(
              changed(
                  take,
                  take.tempo() / 2,
                  take.startMicros(),
                  2 * review.toleranceMillis(),
                  take.parts(),
                  slower));
      for (int i = 0; i < review.players().size(); i++) {
        assertThat(other.players().get(i).displacements())
            .as("seed %d", seed)
            .isEqualTo(review.players().get(i).displacements());
      }
      assertThat(other.ensemble().hold().get())
          .as("seed %d", seed)
          .isCloseTo(review.ensemble().hold().get(), within(1.0));
    }
  }

  @Test
  void aSteadyLeanWithinTheUncertaintyLeavesTheHoldUnchanged() {
    double[] holds = new double[2];
    for (int late = 0; late < 2; late++) {
      Band band = new Band();
      band.stages = List.of(Stage.ofBeats(16, 1, 1, 2, 3, 4));
      band.tolerance = 30.0;
      for (String name : new String[] {"Ana", "Ben", "Cleo"}) {
        Band.Member member = new Band.Member();
        member.name = name;
        member.steps = IntStream.range(0, 64).map(i -> 2 * i).toArray();
        member.noise = 15;
        member.uncertainty = 40;
        member.lean = name.equals("Ana") ? 25 * late : 0;
        band.members.add(member);
      }
      holds[late] = Scorer.review(band.play(new Random(3)).take()).player("Ana").hold().get();
    }
    assertThat(holds[1]).isCloseTo(holds[0], within(2.0));
  }

  @Test
  void threesShiftedByThreeAreNotDisplacedAndASoloInSilenceHasNoSpread() {
    Band band = new Band();
    band.stages = List.of(Stage.ofBeats(12, 1, 1, 2, 3, 4));
    Band.Member threes = new Band.Member();
    threes.name = "Ana";
    threes.steps = IntStream.range(0, 30).map(i -> 3 * i).toArray();
    threes.shiftByBar = new int[12];
    Arrays.fill(threes.shiftByBar, 4, 8, 3);
    band.members.add(threes);
    Band.Member beats = new Band.Member();
    beats.name = "Ben";
    beats.steps = IntStream.range(0, 48).map(i -> 2 * i).toArray();
    band.members.add(beats);
    PlayerReview ana = Scorer.review(band.play(new Random(1)).take()).player("Ana");
    assertThat(ana.displacements()).isEmpty();
    assertThat(ana.shiftPeriodSteps()).isEqualTo(3);

    Band solo = new Band();
    solo.stages = List.of(Stage.ofBeats(8, 1));
    beats.steps = IntStream.range(0, 32).map(i -> 2 * i).toArray();
    solo.members.add(beats);
    PlayerReview alone = Scorer.review(solo.play(new Random(1)).take()).player("Ben");
    assertThat(alone.spreadMillis().known()).isFalse();
    assertThat(alone.hold().reason().code()).isEqualTo(Reason.Code.NO_PULSE);
  }

  private static Take changed(
      Take take,
      double tempo,
      long startMicros,
      Double tolerance,
      List<Part> parts,
      List<Attack> attacks) {
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        take.title(),
        take.meter(),
        tempo,
        take.stepsPerBeat(),
        take.swing(),
        startMicros,
        tolerance,
        take.stages(),
        parts,
        attacks,
        null,
        List.of());
  }
}
