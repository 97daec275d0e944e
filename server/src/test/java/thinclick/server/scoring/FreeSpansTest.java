package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.FreeSpan;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/**
 * Trading fours: ride and bass keep time, Ilse comps and plays bars 5 to 8 and 13 to 16 freely; 4/4
 * in eighths at 120, clicked for eight bars, then silent.
 */
class FreeSpansTest {
  private static final long START = 5_000_000;
  private static final int BARS = 24;
  private static final List<FreeSpan> FREE = List.of(new FreeSpan(4, 8), new FreeSpan(12, 16));

  /** What Ilse does after the second free stretch, and the band meanwhile. */
  private static final class Story {
    int laterSteps;
    boolean back = true;
    double lateMillis;

    /** How late Ilse lies all along. */
    double leanMillis;

    /** How much earlier than that the bar is that Ilse comes back in. */
    double hastyMillis;

    double dragPercent;
  }

  private static Take take(long seed, Story story) {
    Random random = new Random(seed);
    List<Attack> attacks = new ArrayList<>();
    List<Integer> ride =
        IntStream.range(0, BARS * 8).filter(step -> step % 2 == 0).boxed().toList();
    List<Integer> bass =
        IntStream.range(0, BARS * 8).filter(step -> step % 4 == 0).boxed().toList();
    List<Integer> comping =
        IntStream.range(0, BARS * 8)
            .filter(step -> step % 8 == 0 || step % 8 == 3 || step % 8 == 6)
            .filter(step -> FREE.stream().noneMatch(span -> span.covers(step / 8)))
            .boxed()
            .toList();
    ride.forEach(step -> attacks.add(attack("Mina", at(step, story) + 8 * random.nextGaussian())));
    bass.forEach(step -> attacks.add(attack("Jonas", at(step, story) + 8 * random.nextGaussian())));
    for (int step : comping) {
      boolean after = step >= 16 * 8;
      if (!after || story.back) {
        boolean first = after && step < 17 * 8;
        double off =
            story.leanMillis + (after ? story.lateMillis : 0) - (first ? story.hastyMillis : 0);
        int shift = after && step < 20 * 8 ? story.laterSteps : 0;
        attacks.add(attack("Ilse", at(step + shift, story) + off + 9 * random.nextGaussian()));
      }
    }
    for (FreeSpan span : FREE) {
      // Anything: on the grid, in triplets, or nowhere in particular.
      double step = span.fromBar() * 8 + 0.3;
      while (step < span.toBar() * 8 - 0.7) {
        attacks.add(attack("Ilse", at(step, story) + 10 * random.nextGaussian()));
        step += new double[] {0.67, 1, 1.33, 2, 0.5 + random.nextDouble()}[random.nextInt(5)];
      }
    }
    attacks.sort(Comparator.comparingLong(Attack::micros));
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        "Trading fours",
        Meter.FOUR_FOUR,
        120,
        2,
        Swing.STRAIGHT,
        START,
        50.0,
        List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4), Stage.ofBeats(16, 1)),
        List.of(
            Part.of("Mina", 0, ride).edited().weight(2.0).part(),
            Part.of("Jonas", 0, bass).edited().weight(2.0).part(),
            Part.of("Ilse", 0, comping).edited().free(FREE).part()),
        attacks,
        null,
        List.of());
  }

  private static Attack attack(String player, double millis) {
    return new Attack(
        player, START + Math.round(millis * 1000), 80, null, null, null, false, false);
  }

  /** Where a step falls, ms: dragging, where the story says so, through the second free stretch. */
  private static double at(double step, Story story) {
    double dragged = Math.max(0, Math.min(step, 16 * 8) - 12 * 8);
    return 250 * (step + dragged * story.dragPercent / 100);
  }

  private static FreeReview second(Take take) {
    return Scorer.review(take).free().get(1);
  }

  @Test
  void whatIsPlayedFreelyIsNeitherAddedNorDroppedNorDisplaced() {
    for (long seed = 0; seed < 5; seed++) {
      Take take = take(seed, new Story());
      Analysis analysis = Scorer.analyse(take);
      PlayerReview ilse = analysis.review().players().get(2);

      assertThat(List.of(ilse.added(), ilse.dropped(), ilse.displaced()))
          .as("seed %d", seed)
          .containsExactly(0, 0, 0);
      assertThat(ilse.displacements()).as("seed %d", seed).isEmpty();
      assertThat(ilse.spreadMillis().get()).as("seed %d", seed).isCloseTo(9, within(5.0));
      long free =
          analysis.players().get(2).played().stream()
              .filter(one -> one.kind() == Analysis.Kind.FREE)
              .count();
      assertThat(analysis.review().free().stream().mapToLong(FreeReview::attacks).sum())
          .isEqualTo(free)
          .isEqualTo(
              take.attacks().stream().filter(one -> one.player().equals("Ilse")).count()
                  - take.parts().get(2).attackSteps().size());
      assertThat(analysis.review().free()).as("seed %d", seed).allMatch(FreeReview::cameHome);
      assertThat(Math.abs(second(take).driftPercent().get())).as("seed %d", seed).isLessThan(0.5);
    }
  }

  @Test
  void aReturnABeatLateIsSaidWithItsBar() {
    Story story = new Story();
    story.laterSteps = 2;
    for (long seed = 0; seed < 3; seed++) {
      FreeReview review = second(take(seed, story));

      assertThat(review.returnSteps()).as("seed %d", seed).isEqualTo(2);
      assertThat(review.returnBar()).isEqualTo(16);
      assertThat(review.cameHome()).isFalse();
      assertThat(said(take(seed, story), Locale.ENGLISH))
          .contains(
              "After free bars 13 to 16, Ilse came back in bar 17, a beat late, and found home again"
                  + " in bar 21.")
          .as("said once")
          .doesNotContain("Ilse was a beat late");
    }
  }

  @Test
  void aReturnOnThePlaceButOffThePulseIsToldInMilliseconds() {
    Story story = new Story();
    story.lateMillis = 75;
    FreeReview review = second(take(1, story));

    assertThat(review.returnSteps()).isZero();
    assertThat(review.onPulse()).isFalse();
    assertThat(review.returnMillis().get()).isBetween(40.0, 80.0);
    assertThat(review.returnMillis().interval()).isNotNull();
  }

  /** Who lies late all along and comes back before that is early, though behind the pulse. */
  @Test
  void aReturnIsEarlyOrLateAgainstTheLeanThatIsNotCharged() {
    Story story = new Story();
    story.leanMillis = 50;
    story.hastyMillis = 42;
    Take take = take(1, story).edited().toleranceMillis(25.0).take();
    Part ilse = take.parts().get(2).edited().uncertaintyMillis(60).part();
    Take unsure = take.withParts(List.of(take.parts().get(0), take.parts().get(1), ilse));
    FreeReview review = second(unsure);

    assertThat(review.returnSteps()).isZero();
    assertThat(review.onPulse()).isFalse();
    assertThat(review.returnMillis().get()).isBetween(-55.0, -25.0);
    assertThat(said(unsure, Locale.ENGLISH))
        .containsPattern("came back in bar 17, \\d+ ms early against the others");
  }

  @Test
  void whoDoesNotComeBackIsNotKnownToBeLate() {
    Story story = new Story();
    story.back = false;
    FreeReview review = second(take(1, story));

    assertThat(review.returnSteps()).isNull();
    assertThat(review.onPulse()).isNull();
    assertThat(review.returnMillis().known()).isFalse();
    assertThat(said(take(1, story), Locale.GERMAN))
        .contains("Ilse war nach den freien Takten 13 bis 16 in Takt 17 nicht wieder drin.");
  }

  @Test
  void theOthersPulseThroughTheFreeBarsIsToldWithItsInterval() {
    Story story = new Story();
    story.dragPercent = 2;
    for (long seed = 0; seed < 3; seed++) {
      Figure drift = second(take(seed, story)).driftPercent();

      assertThat(drift.get()).as("seed %d", seed).isCloseTo(2, within(0.5));
      assertThat(drift.interval()).isNotNull();
      assertThat(drift.interval().contains(0)).isFalse();
    }
    assertThat(said(take(1, story), Locale.ENGLISH))
        .containsPattern(
            "The pulse dragged [12](\\.\\d)? % through Ilse\u2019s free bars 13 to 16\\.");
    assertThat(said(take(1, new Story()), Locale.ENGLISH))
        .contains("Ilse came home after two free stretches, and meanwhile the pulse held.");
  }

  /** Three may have come home: all are named, in one sentence. */
  @Test
  void allWhoCameHomeAreNamedTogether() {
    Take take = take(1, new Story());
    List<Part> parts =
        take.parts().stream()
            .map(
                part ->
                    part.player().equals("Jonas")
                        ? part.edited()
                            .attackSteps(
                                part.attackSteps().stream()
                                    .filter(step -> !FREE.get(0).covers(step / 8))
                                    .toList())
                            .free(List.of(FREE.get(0)))
                            .part()
                        : part)
            .toList();
    assertThat(said(take.withParts(parts), Locale.ENGLISH))
        .contains("Jonas and Ilse came home after their free bars, and meanwhile the pulse held.");
    assertThat(said(take.withParts(parts), Locale.GERMAN))
        .contains("Jonas und Ilse waren nach ihren freien Takten wieder drin");
  }

  @Test
  void aPulseThatNobodyElseKeepsIsNotKnown() {
    Take take = take(1, new Story());
    Part ilse = take.parts().get(2);
    Take alone =
        take.edited()
            .parts(List.of(ilse))
            .attacks(take.attacks().stream().filter(one -> one.player().equals("Ilse")).toList())
            .take();

    assertThat(second(alone).driftPercent().known()).isFalse();
    assertThat(second(alone).driftPercent().reason()).isNotNull();
  }

  @Test
  void duringTheTakeNothingPlayedFreelyIsJudged() {
    Take take = take(3, new Story());
    LiveScorer live = new LiveScorer(take);
    List<LiveScorer.Judgement> ilse = new ArrayList<>();
    for (Attack attack : take.attacks()) {
      ilse.addAll(live.judge(attack.player(), attack.micros()).subList(0, 1));
    }
    List<LiveScorer.Kind> kinds =
        ilse.stream()
            .filter(one -> one.player().equals("Ilse"))
            .map(LiveScorer.Judgement::kind)
            .toList();
    assertThat(kinds)
        .contains(LiveScorer.Kind.FREE, LiveScorer.Kind.TOGETHER)
        .doesNotContain(LiveScorer.Kind.ADDED, LiveScorer.Kind.DISPLACED);
  }

  private static String said(Take take, Locale locale) {
    Speaker speaker = Speaker.of(locale);
    Spoken spoken = Spoken.of(Scorer.analyse(take), speaker);
    return String.join(" ", spoken.prose(speaker))
        + " "
        + String.join(" ", spoken.slip("Ilse").says());
  }
}
