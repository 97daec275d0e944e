package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Span;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/**
 * Takes that were not played through by everybody: stopped early, somebody away for a stage,
 * somebody who came late. All that counts was played well, so nothing may be held against anybody.
 */
class CutTakesTest {
  private static final int TAKES = 60;

  private static final Map<Integer, Analysis> KNOWN = new ConcurrentHashMap<>();

  /** What would be held against somebody, or against the band. */
  private static final List<String> FAULTS =
      List.of("otherPart", "displaced", "notHeard", "lateEntry", "lostEnding", "dropped", "added");

  /** A take with what was cut from it. */
  private record Cut(Take take, int end, int[] awayFrom, int[] awayTo) {
    boolean counts(int chair, int step) {
      return step < end && (step < awayFrom[chair] || step >= awayTo[chair]);
    }
  }

  private static Cut cut(int seed) {
    Random random = new Random(seed);
    Band band = new Band();
    band.tempo = 80 + random.nextInt(80);
    band.tolerance = 50.0;
    band.stages =
        List.of(Stage.ofBeats(4, 1, 1, 2, 3, 4), Stage.ofBeats(4, 1, 1, 3), Stage.ofBeats(4, 1, 1));
    int players = 2 + random.nextInt(2);
    int[] from = new int[players];
    int[] to = new int[players];
    for (int i = 0; i < players; i++) {
      Band.Member member = new Band.Member();
      member.name = "P" + i;
      member.noise = 4 + 4 * random.nextDouble();
      member.lean = 12 * random.nextDouble() - 6;
      int figure = random.nextInt(3);
      member.steps =
          IntStream.range(0, band.steps())
              .filter(s -> figure == 0 ? s % 2 == 0 : figure == 1 ? s % 4 == 1 : s % 8 % 3 == 0)
              .toArray();
      band.members.add(member);
      switch (random.nextInt(4)) {
        case 0 -> to[i] = 32; // comes when the second stage begins
        case 1 -> {
          from[i] = 32; // away for the second stage
          to[i] = 64;
        }
        default -> {}
      }
    }
    from[players - 1] = 0; // one was there throughout
    to[players - 1] = 0;
    Take whole = band.play(random).take();
    int end = random.nextInt(3) == 0 ? 96 : 1 + random.nextInt(95);
    long stop = whole.grid().instantOf(end);
    Cut cut = new Cut(whole, end, from, to);
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < players; i++) {
      parts.add(
          to[i] == from[i]
              ? whole.parts().get(i)
              : whole.parts().get(i).edited().away(List.of(away(whole, from[i], to[i]))).part());
    }
    List<Attack> attacks = new ArrayList<>();
    for (Attack attack : whole.attacks()) {
      int step = Math.round((attack.micros() - whole.startMicros()) / (float) stepMicros(whole));
      if (cut.counts(attack.player().charAt(1) - '0', step)) {
        attacks.add(attack);
      }
    }
    Take take =
        whole.edited().parts(parts).attacks(attacks).endMicros(end == 96 ? null : stop).take();
    return new Cut(take, end, from, to);
  }

  private static double stepMicros(Take take) {
    return take.grid().stepMicros();
  }

  private static Span away(Take take, int from, int to) {
    long half = Math.round(stepMicros(take) / 2);
    return new Span(take.grid().instantOf(from) - half, take.grid().instantOf(to) - half);
  }

  private static void each(int from, int to, BiConsumer<Cut, Analysis> check) {
    for (int seed = from; seed < to; seed++) {
      Cut cut = cut(seed);
      try {
        check.accept(cut, KNOWN.computeIfAbsent(seed, any -> Scorer.analyse(cut.take())));
      } catch (RuntimeException | AssertionError problem) {
        fail("seed " + seed + ": " + problem, problem);
      }
    }
  }

  @Test
  void nothingThatIsNotPlayedIsHeldAgainstAnybody() {
    each(0, TAKES, CutTakesTest::unplayed);
  }

  @Test
  void orderOfThePlayersChangesNoFigure() {
    each(0, TAKES, CutTakesTest::turned);
  }

  @Test
  void everythingTwiceAsSlowIsHeldAndDriftsTheSame() {
    each(0, TAKES, CutTakesTest::slower);
  }

  @Test
  void everybodyLaterByTheSameChangesNeitherHoldNorSpreadNorDrift() {
    each(0, TAKES, CutTakesTest::later);
  }

  @Test
  @Tag("long")
  void allOfItOnManyMore() {
    each(TAKES, 10 * TAKES, CutTakesTest::unplayed);
    each(TAKES, 10 * TAKES, CutTakesTest::turned);
    each(TAKES, 10 * TAKES, CutTakesTest::slower);
    each(TAKES, 10 * TAKES, CutTakesTest::later);
  }

  private static void unplayed(Cut cut, Analysis analysis) {
    AnyTakeTest.check(cut.take(), analysis);
    for (int i = 0; i < cut.take().parts().size(); i++) {
      int chair = i;
      PlayerReview player = analysis.review().players().get(i);
      List<Integer> written = cut.take().parts().get(i).attackSteps();
      assertThat(player.written())
          .isEqualTo((int) written.stream().filter(s -> cut.counts(chair, s)).count());
      assertThat(player.dropped()).as(player.player()).isZero();
      assertThat(player.added()).as(player.player()).isZero();
      assertThat(player.displacements()).as(player.player()).isEmpty();
      assertThat(player.hold().known()).isEqualTo(player.written() > 0);
      for (int s = 0; s < 3; s++) {
        int from = 32 * s;
        int reached = Math.min(cut.end(), from + 32) - from;
        boolean there = written.stream().anyMatch(x -> x / 32 * 32 == from && cut.counts(chair, x));
        Figure hold = player.stages().get(s).hold();
        assertThat(hold.known()).as("stage %d", s).isEqualTo(reached >= 16 && there);
        if (reached < 16) {
          assertThat(hold.reason().code()).isEqualTo(Reason.Code.TOO_SHORT);
          assertThat(analysis.review().stages().get(s).held()).as("stage %d", s).isFalse();
        }
      }
    }
    Spoken spoken = Spoken.of(analysis, Speaker.english());
    for (Spoken.Slip slip : spoken.slips()) {
      assertThat(slip.rules()).as(slip.player()).doesNotContainAnyElementsOf(FAULTS);
    }
  }

  private static void turned(Cut cut, Analysis analysis) {
    List<Part> turned = new ArrayList<>(cut.take().parts());
    Collections.reverse(turned);
    Review other = Scorer.review(cut.take().edited().parts(turned).take());
    same(analysis.review(), other, 0.0011);
  }

  private static void slower(Cut cut, Analysis analysis) {
    Take take = cut.take();
    long start = take.startMicros();
    UnaryOperator<Long> slow = micros -> start + 2 * (micros - start);
    Take slower =
        take.edited()
            .tempo(take.tempo() / 2)
            .toleranceMillis(2 * take.toleranceMillis())
            .parts(
                take.parts().stream()
                    .map(
                        part ->
                            part.edited()
                                .away(
                                    part.away().stream()
                                        .map(
                                            span ->
                                                new Span(
                                                    slow.apply(span.fromMicros()),
                                                    slow.apply(span.toMicros())))
                                        .toList())
                                .part())
                    .toList())
            .attacks(moved(take, slow))
            .endMicros(take.endMicros() == null ? null : slow.apply(take.endMicros()))
            .take();
    Review its = Scorer.review(slower);
    held(analysis.review(), its);
    for (int s = 0; s < its.stages().size(); s++) {
      close(
          analysis.review().stages().get(s).driftPercent(),
          its.stages().get(s).driftPercent(),
          0.3);
    }
  }

  private static void later(Cut cut, Analysis analysis) {
    Take later = cut.take().withAttacks(moved(cut.take(), micros -> micros + 15_000));
    same(analysis.review(), Scorer.review(later), 0.5);
  }

  private static List<Attack> moved(Take take, UnaryOperator<Long> how) {
    return take.attacks().stream()
        .map(one -> Attack.tap(one.player(), how.apply(one.micros())))
        .toList();
  }

  /** What is counted is the same, whatever the milliseconds are. */
  private static void held(Review one, Review other) {
    for (PlayerReview player : one.players()) {
      PlayerReview its = other.player(player.player());
      assertThat(its.written()).isEqualTo(player.written());
      assertThat(its.placed()).isEqualTo(player.placed());
      assertThat(its.dropped()).isEqualTo(player.dropped());
      assertThat(its.added()).isEqualTo(player.added());
      close(player.hold(), its.hold(), 0);
    }
    for (int s = 0; s < one.stages().size(); s++) {
      close(one.stages().get(s).hold(), other.stages().get(s).hold(), 0);
    }
  }

  private static void same(Review one, Review other, double within) {
    held(one, other);
    for (PlayerReview player : one.players()) {
      close(player.spreadMillis(), other.player(player.player()).spreadMillis(), within);
    }
    for (int s = 0; s < one.stages().size(); s++) {
      close(one.stages().get(s).driftPercent(), other.stages().get(s).driftPercent(), within);
    }
  }

  private static void close(Figure one, Figure other, double within) {
    assertThat(other.known()).isEqualTo(one.known());
    if (one.known()) {
      assertThat(other.get()).isCloseTo(one.get(), Offset.offset(within));
    }
  }
}
