package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.words.ReviewPage;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Everything the take format allows gives a review whose every figure is finite or null. */
class AnyTakeTest {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  @Test
  void everyFigureOfAnyTakeIsFiniteOrNullWithItsReason() {
    check(0, 300);
  }

  @Test
  @Tag("long")
  void everyFigureOfTwentyThousandTakesIsFiniteOrNullWithItsReason() {
    check(300, 20_300);
  }

  private static void check(int from, int to) {
    for (int seed = from; seed < to; seed++) {
      Take take = RandomTakes.of(seed);
      try {
        check(take, Scorer.analyse(take));
      } catch (RuntimeException | AssertionError problem) {
        fail("seed " + seed + ": " + problem, problem);
      }
    }
  }

  static void check(Take take, Analysis analysis) {
    Review review = analysis.review();
    JsonNode json = MAPPER.valueToTree(review);
    finite("review", json);
    reasoned("review", json);
    assertThat(MAPPER.treeToValue(json, Review.class)).isEqualTo(review);
    int played = 0;
    for (int i = 0; i < take.parts().size(); i++) {
      PlayerReview player = review.players().get(i);
      Analysis.PlayerAnalysis fates = analysis.players().get(i);
      assertThat(fates.written()).hasSameSizeAs(take.parts().get(i).attackSteps());
      played += fates.played().size();
      assertThat(player.placed() + player.dropped() + player.displaced())
          .isLessThanOrEqualTo(player.written());
      assertThat(player.onbeat().written() + player.offbeat().written())
          .isEqualTo(player.written());
      assertThat(player.stages().stream().mapToInt(PlayerStage::written).sum())
          .isEqualTo(player.written());
      assertThat(player.stages().stream().mapToInt(PlayerStage::added).sum())
          .isEqualTo(player.added());
      long matched =
          fates.played().stream().filter(one -> one.kind() == Analysis.Kind.MATCHED).count();
      assertThat(matched).isEqualTo(player.written() - player.dropped());
    }
    assertThat(played).isEqualTo(take.attacks().size());
    Spoken spoken = Spoken.of(analysis, Speaker.english());
    assertThat(ReviewPage.of(spoken, Speaker.english())).doesNotContain("NaN", "Infinity");
  }

  private static void finite(String where, JsonNode node) {
    if (node.isNumber()) {
      assertThat(Double.isFinite(node.doubleValue())).as(where).isTrue();
    } else if (node.isString()) {
      assertThat(node.stringValue()).as(where).isNotIn("NaN", "Infinity", "-Infinity");
    } else if (node.isArray()) {
      for (int i = 0; i < node.size(); i++) {
        finite(where + "[" + i + "]", node.get(i));
      }
    } else if (node.isObject()) {
      node.properties().forEach(field -> finite(where + "." + field.getKey(), field.getValue()));
    }
  }

  /** What has an interval or may have a reason has a reason where it is null. */
  private static void reasoned(String where, JsonNode node) {
    if (node.isArray()) {
      for (int i = 0; i < node.size(); i++) {
        reasoned(where + "[" + i + "]", node.get(i));
      }
    } else if (node.isObject()) {
      for (String figure : List.of("hold", "leanMillis", "spreadMillis", "driftPercent")) {
        if (node.has(figure) && node.get(figure).isNull()) {
          assertThat(node.has(figure + "Reason")).as(where + "." + figure).isTrue();
        }
      }
      node.properties().forEach(field -> reasoned(where + "." + field.getKey(), field.getValue()));
    }
  }

  @Nested
  class Extremes {
    private final Stage full = Stage.ofBeats(4, 1, 1, 2, 3, 4);

    private Take take(List<Part> parts, List<Attack> attacks, double tempo, int stepsPerBeat) {
      return new Take(
          Take.FORMAT,
          Take.VERSION,
          "",
          Meter.FOUR_FOUR,
          tempo,
          stepsPerBeat,
          Swing.STRAIGHT,
          0,
          null,
          List.of(full, Stage.ofBeats(4, 1)),
          parts,
          attacks,
          null,
          List.of());
    }

    private List<Integer> everyStep(int count) {
      return IntStream.range(0, count).boxed().toList();
    }

    @Test
    void aTakeWithoutPartsHasAReview() {
      Take take = take(List.of(), List.of(), 120, 2);
      check(take, Scorer.analyse(take));
    }

    @Test
    void aPartWithoutAttacksHasNoHold() {
      Take take =
          take(List.of(Part.of("Ana", 0, List.of())), List.of(Attack.tap("Ana", 5)), 120, 2);
      Review review = Scorer.review(take);
      assertThat(review.players().get(0).hold().known()).isFalse();
      assertThat(review.players().get(0).added()).isEqualTo(1);
    }

    @Test
    void oneAttackHasNoSpreadAndNoLean() {
      Take take =
          take(
              List.of(Part.of("Ana", 0, List.of(0)), Part.of("Ben", 0, List.of(0))),
              List.of(Attack.tap("Ana", 5_000), Attack.tap("Ben", 6_000)),
              120,
              2);
      PlayerReview ana = Scorer.review(take).players().get(0);
      assertThat(ana.spreadMillis().known()).isFalse();
      assertThat(ana.leanMillis().known()).isFalse();
      assertThat(ana.placed()).isEqualTo(1);
    }

    @Test
    void twoPlayersWithTheSamePartAreToldApartByWhatTheyPlay() {
      List<Attack> attacks = new ArrayList<>();
      for (int step = 0; step < 64; step += 2) {
        attacks.add(Attack.tap("Ana", step * 250_000L));
        attacks.add(Attack.tap("Ben", step * 250_000L + 20_000));
      }
      List<Integer> beats = IntStream.range(0, 32).map(i -> 2 * i).boxed().toList();
      Take take =
          take(List.of(Part.of("Ana", 0, beats), Part.of("Ben", 0, beats)), attacks, 120, 2);
      Analysis analysis = Scorer.analyse(take);
      check(take, analysis);
      assertThat(analysis.review().player("Ana").leanMillis().get()).isCloseTo(-10, within(1.0));
      assertThat(analysis.review().player("Ben").leanMillis().get()).isCloseTo(10, within(1.0));
    }

    @Test
    void attacksLongBeforeTheStartAndYearsAfterAnswerNothing() {
      List<Attack> attacks = new ArrayList<>();
      for (int step = 0; step < 64; step += 2) {
        attacks.add(Attack.tap("Ana", step * 250_000L));
        attacks.add(Attack.tap("Ben", step * 250_000L));
      }
      attacks.add(Attack.tap("Ana", -(1L << 52)));
      attacks.add(Attack.tap("Ana", -60_000_000));
      attacks.add(Attack.tap("Ana", 1L << 52));
      List<Integer> beats = IntStream.range(0, 32).map(i -> 2 * i).boxed().toList();
      Take take =
          take(List.of(Part.of("Ana", 0, beats), Part.of("Ben", 0, beats)), attacks, 120, 2);
      Analysis analysis = Scorer.analyse(take);
      check(take, analysis);
      PlayerReview ana = analysis.review().player("Ana");
      assertThat(ana.placed()).isEqualTo(32);
      assertThat(ana.added()).isEqualTo(1); // what came before the start is no addition
    }

    @Test
    void sixteenthsAtThreeHundredAndTwentyAreTooDenseForAHold() {
      List<Attack> attacks = new ArrayList<>();
      for (int step = 0; step < 128; step++) {
        attacks.add(Attack.tap("Ana", Math.round(step * 60e6 / 320 / 4)));
        attacks.add(Attack.tap("Ben", Math.round(step * 60e6 / 320 / 4)));
      }
      Take take =
          take(
              List.of(Part.of("Ana", 0, everyStep(128)), Part.of("Ben", 0, everyStep(128))),
              attacks,
              320,
              4);
      Analysis analysis = Scorer.analyse(take);
      check(take, analysis);
      assertThat(analysis.review().toleranceMillis()).isEqualTo(20);
      assertThat(analysis.review().ensemble().hold().known()).isFalse();
    }

    @Test
    void aHundredThousandAttacksAtOneInstantAreReviewed() {
      List<Attack> attacks = new ArrayList<>(Collections.nCopies(100_000, Attack.tap("Ana", 9)));
      Take take =
          take(
              List.of(Part.of("Ana", 0, everyStep(64)), Part.of("Ben", 0, everyStep(64))),
              attacks,
              120,
              2);
      check(take, Scorer.analyse(take));
    }

    @Test
    void aHundredThousandAttacksAnywhereAreReviewed() {
      Random random = new Random(1);
      List<Attack> attacks = new ArrayList<>();
      for (int i = 0; i < 100_000; i++) {
        attacks.add(
            new Attack(
                i % 2 == 0 ? "Ana" : "Ben",
                random.nextInt(16_000_000),
                null,
                random.nextInt(128),
                null,
                null,
                false,
                false));
      }
      Take take =
          take(
              List.of(Part.of("Ana", 0, everyStep(64)), Part.of("Ben", 0, everyStep(64))),
              attacks,
              120,
              2);
      check(take, Scorer.analyse(take));
    }
  }
}
