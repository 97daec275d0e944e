package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Feel;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Single figures of a review, each on a take made for it. */
class FiguresTest {
  private static final Stage FULL = Stage.ofBeats(16, 1, 1, 2, 3, 4);

  private static Band band(Stage... stages) {
    Band band = new Band();
    band.stages = List.of(stages);
    band.tolerance = 50.0;
    return band;
  }

  /** A member who plays these steps of each bar. */
  private static Band.Member member(Band band, String name, double noise, IntPredicate inBar) {
    Band.Member member = new Band.Member();
    member.name = name;
    member.noise = noise;
    member.steps =
        IntStream.range(0, band.steps()).filter(s -> inBar.test(s % band.stepsPerBar())).toArray();
    band.members.add(member);
    return member;
  }

  private static Take with(Take take, UnaryOperator<Attack> change) {
    return take.withAttacks(take.attacks().stream().map(change).toList());
  }

  private static Attack moved(Attack attack, double millis) {
    return new Attack(
        attack.player(),
        attack.micros() + Math.round(1000 * millis),
        attack.velocity(),
        attack.pitch(),
        attack.lengthMillis(),
        attack.lateByMillis(),
        attack.setAside(),
        attack.unsure());
  }

  private static long stepOf(Take take, Attack attack) {
    return Math.round((attack.micros() - take.startMicros()) / take.grid().stepMicros());
  }

  @Test
  void tapsAlongTheCountInAreNotAdded() {
    Band band = band(FULL);
    member(band, "Ana", 6, s -> s % 2 == 0);
    member(band, "Ben", 6, s -> s % 2 == 1);
    Take take = band.play(new Random(1)).take();
    List<Attack> attacks = new ArrayList<>(take.attacks());
    for (int beat = 1; beat <= 4; beat++) {
      attacks.add(Attack.tap("Ben", take.startMicros() - beat * 500_000L));
    }
    Analysis analysis = Scorer.analyse(take.withAttacks(attacks));
    PlayerReview ben = analysis.review().player("Ben");
    assertThat(ben.added()).isZero();
    assertThat(ben.dropped()).isZero();
    assertThat(analysis.players().get(1).played())
        .filteredOn(one -> one.kind() == Analysis.Kind.COUNT_IN)
        .hasSize(4);
  }

  @Test
  void anEarlyFirstAttackAnswersTheFirstStep() {
    Band band = band(FULL);
    member(band, "Ana", 5, s -> s % 2 == 0).lean = -30;
    member(band, "Ben", 5, s -> s % 2 == 0);
    Review review = Scorer.review(band.play(new Random(2)).take());
    assertThat(review.player("Ana").dropped()).isZero();
    assertThat(review.player("Ana").placed()).isEqualTo(64);
  }

  @Test
  void offbeatsAgainstBeatsHaveTheirDifferenceWithItsInterval() {
    Band band = band(FULL);
    member(band, "Ana", 8, s -> true);
    member(band, "Ben", 8, s -> s % 4 == 0);
    Take take = band.play(new Random(3)).take();
    Take late =
        with(
            take,
            one -> one.player().equals("Ana") && stepOf(take, one) % 2 == 1 ? moved(one, 20) : one);
    Figure difference = Scorer.review(late).player("Ana").offbeatMinusOnbeatMillis();
    assertThat(difference.get()).isCloseTo(20, within(4.0));
    assertThat(difference.interval().contains(20)).isTrue();
    assertThat(difference.interval().high() - difference.interval().low()).isLessThan(10);
    Figure none = Scorer.review(late).player("Ben").offbeatMinusOnbeatMillis();
    assertThat(none.known()).isFalse();
    assertThat(none.reason().code()).isEqualTo(Reason.Code.TOO_FEW);
  }

  @Test
  void aHoldAroundEightyPercentIsBorderlineInTheReviewsJson() {
    Band band = band(Stage.ofBeats(8, 1, 1, 2, 3, 4), Stage.ofBeats(8, 1, 1));
    for (String name : new String[] {"Ana", "Ben"}) {
      Band.Member member = member(band, name, 5, s -> s % 2 == 0);
      int[] all = member.steps;
      member.steps = Arrays.stream(all).toArray();
    }
    Take take = band.play(new Random(4)).take();
    // of the second stage every fifth attack is left out
    Take thin =
        take.withAttacks(
            take.attacks().stream()
                .filter(one -> stepOf(take, one) < 64 || stepOf(take, one) / 2 % 5 != 0)
                .toList());
    JsonNode stages =
        JsonMapper.builder().build().<JsonNode>valueToTree(Scorer.review(thin)).get("stages");
    assertThat(stages.get(0).get("borderline").booleanValue()).isFalse();
    assertThat(stages.get(1).get("hold").doubleValue()).isCloseTo(80, within(3.0));
    assertThat(stages.get(1).get("borderline").booleanValue()).isTrue();
  }

  @Test
  void aReturnIsForetoldFromBeforeTheClickAlone() {
    Band band = band(Stage.ofBeats(8, 1, 1, 2, 3, 4), Stage.ofBeats(8, 1), FULL);
    double[] slowing = new double[band.steps()];
    Arrays.setAll(slowing, s -> s < 64 ? 0 : s < 128 ? 1.25 * (s - 63) : 0);
    band.common = slowing; // half a percent slower in silence, 80 ms at its end
    member(band, "Ana", 4, s -> s % 2 == 0);
    member(band, "Ben", 4, s -> s % 4 == 1);
    Take take = band.play(new Random(5)).take();
    Review review = Scorer.review(take);
    assertThat(review.ensemble().returns()).hasSize(1);
    Return back = review.ensemble().returns().get(0);
    assertThat(back.bar()).isEqualTo(16);
    assertThat(back.silentBars()).isEqualTo(8);
    assertThat(back.errorMillis().get()).isCloseTo(80, within(15.0));
    assertThat(back.errorMillis().interval().contains(81)).isTrue();
    assertThat(review.stages().get(1).driftPercent().get()).isCloseTo(.5, within(.06));
  }

  @Test
  void feelIsSubtractedBeforeAnythingIsJudged() {
    Band band = band(FULL);
    member(band, "Ana", 4, s -> s % 2 == 0);
    member(band, "Ben", 4, s -> s % 2 == 0).lean = 70;
    Take take = band.play(new Random(6)).take();
    List<Part> parts = new ArrayList<>(take.parts());
    Part ben = parts.get(1);
    parts.set(
        1,
        new Part(
            ben.player(),
            ben.entryStep(),
            0.0,
            ben.attackSteps(),
            null,
            null,
            null,
            new Feel(70, 70),
            null,
            null,
            null,
            false,
            List.of(),
            null));
    Take asked =
        new Take(
            Take.FORMAT,
            Take.VERSION,
            take.title(),
            take.meter(),
            take.tempo(),
            take.stepsPerBeat(),
            take.swing(),
            take.startMicros(),
            take.toleranceMillis(),
            take.stages(),
            parts,
            take.attacks(),
            null,
            List.of());
    PlayerReview laidBack = Scorer.review(asked).player("Ben");
    assertThat(laidBack.leanMillis().get()).isCloseTo(0, within(3.0));
    assertThat(laidBack.placed()).isEqualTo(64);
  }

  @Test
  void accentsCountRanksAndConstantVelocityHasNone() {
    Band band = band(FULL);
    member(band, "Ana", 4, s -> s % 2 == 0);
    member(band, "Ben", 4, s -> s % 2 == 0);
    Take take = band.play(new Random(7)).take();
    for (boolean dynamic : new boolean[] {true, false}) {
      List<Attack> attacks =
          take.attacks().stream()
              .map(
                  one ->
                      new Attack(
                          one.player(),
                          one.micros(),
                          dynamic && stepOf(take, one) % 8 == 0 ? 100 : 64,
                          60,
                          stepOf(take, one) % 4 == 0 ? 250.0 : 125.0,
                          null,
                          false,
                          false))
              .toList();
      List<Part> parts =
          take.parts().stream()
              .map(
                  one ->
                      new Part(
                          one.player(),
                          one.entryStep(),
                          0.0,
                          one.attackSteps(),
                          one.attackSteps().stream().filter(s -> s % 8 == 0).toList(),
                          one.attackSteps().stream().map(s -> 1).toList(),
                          null,
                          null,
                          null,
                          null,
                          null,
                          false,
                          List.of(),
                          null))
              .toList();
      PlayerReview ana =
          Scorer.review(
                  new Take(
                      Take.FORMAT,
                      Take.VERSION,
                      "",
                      take.meter(),
                      take.tempo(),
                      2,
                      take.swing(),
                      take.startMicros(),
                      50.0,
                      take.stages(),
                      parts,
                      attacks,
                      null,
                      List.of()))
              .player("Ana");
      if (dynamic) {
        assertThat(ana.accents().get()).isEqualTo(1);
      } else {
        assertThat(ana.accents().reason().code()).isEqualTo(Reason.Code.CONSTANT);
      }
      // half of the notes sound their written 250 ms, half of them half as long
      assertThat(ana.noteLength().get()).isCloseTo(.75, within(.001));
    }
  }

  @Test
  void bandSwingIsMeasuredFromThePlayersOwnBeats() {
    Band band = band(FULL);
    band.ratio = 2;
    band.swing = thinclick.protocol.music.Swing.BAND;
    for (String name : new String[] {"Ana", "Ben", "Cleo"}) {
      member(band, name, 7, s -> true);
    }
    Review review = Scorer.review(band.play(new Random(8)).take());
    assertThat(review.ensemble().swingRatio().get()).isCloseTo(2, within(.05));
    assertThat(review.ensemble().swingRatio().interval().contains(2)).isTrue();
    assertThat(review.player("Ana").swingRatio().interval().contains(2)).isTrue();
  }

  @Test
  void everyPlayerHasTheFiguresOfEveryStage() {
    Band band = band(Stage.ofBeats(8, 1, 1, 2, 3, 4), Stage.ofBeats(8, 1, 1));
    member(band, "Ana", 6, s -> s % 2 == 0);
    member(band, "Ben", 6, s -> s % 2 == 1).playsFrom = 64;
    Review review = Scorer.review(band.play(new Random(9)).take());
    List<PlayerStage> ben = review.player("Ben").stages();
    assertThat(ben).extracting(PlayerStage::dropped).containsExactly(32, 0);
    assertThat(ben.get(0).hold().get()).isZero();
    assertThat(ben.get(1).hold().get()).isEqualTo(100);
    assertThat(ben.get(0).leanMillis().known()).isFalse();
    assertThat(ben.get(1).spreadMillis().interval().contains(6)).isTrue();
  }
}
