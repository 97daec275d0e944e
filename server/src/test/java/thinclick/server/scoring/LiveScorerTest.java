package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.scoring.LiveScorer.Judgement;
import thinclick.server.scoring.LiveScorer.Kind;

/** Judging during a take: from what came before, settled again when later attacks say otherwise. */
class LiveScorerTest {
  private static final long STEP = 250_000; // eighths at 120

  private static Take take() {
    List<Integer> charleston = new ArrayList<>();
    List<Integer> beats = new ArrayList<>();
    for (int bar = 0; bar < 8; bar++) {
      charleston.add(8 * bar);
      charleston.add(8 * bar + 3);
      for (int beat = 0; beat < 4; beat++) {
        beats.add(8 * bar + 2 * beat);
      }
    }
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        "",
        Meter.FOUR_FOUR,
        120,
        2,
        Swing.STRAIGHT,
        0,
        50.0,
        List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4)),
        List.of(Part.of("Ana", 0, beats), Part.of("Ben", 0, charleston)),
        List.<Attack>of(),
        null,
        List.of());
  }

  @Test
  void attacksWithinToleranceAreTogetherAndOthersEarlyOrLate() {
    LiveScorer live = new LiveScorer(take());
    for (int beat = 0; beat < 8; beat++) {
      assertThat(live.judge("Ana", 2 * beat * STEP).get(0).kind()).isEqualTo(Kind.TOGETHER);
    }
    assertThat(live.judge("Ben", 16 * STEP).get(0).kind()).isEqualTo(Kind.TOGETHER);
    assertThat(live.judge("Ben", 19 * STEP - 70_000).get(0).kind()).isEqualTo(Kind.EARLY);
    assertThat(live.judge("Ben", 22 * STEP).get(0).kind()).isEqualTo(Kind.ADDED);
  }

  @Test
  void aPlayerAStepLateIsFoundOutAndEarlierJudgementsAreTakenBack() {
    LiveScorer live = new LiveScorer(take());
    List<Judgement> again = new ArrayList<>();
    for (int bar = 0; bar < 8; bar++) {
      int late = bar >= 2 ? 1 : 0;
      live.judge("Ana", 8 * bar * STEP);
      for (int step : new int[] {0, 3}) {
        List<Judgement> told = live.judge("Ben", (8 * bar + step + late) * STEP);
        again.addAll(told.subList(1, told.size()));
        if (bar >= 5) {
          assertThat(told.get(0).kind()).isEqualTo(Kind.DISPLACED);
          assertThat(told.get(0).displacement()).isEqualTo(1);
        }
      }
    }
    assertThat(again).isNotEmpty().anyMatch(one -> one.kind() == Kind.DISPLACED);
  }

  /** Once it is sure that they are back, the first attack at home counts as one, too. */
  @Test
  void whoeverComesHomeIsAtHomeFromTheFirstAttackThere() {
    LiveScorer live = new LiveScorer(take());
    Map<Long, Judgement> last = new HashMap<>();
    for (int bar = 0; bar < 8; bar++) {
      int late = bar >= 2 && bar < 6 ? 1 : 0;
      live.judge("Ana", 8 * bar * STEP);
      for (int step : new int[] {0, 3}) {
        live.judge("Ben", (8 * bar + step + late) * STEP)
            .forEach(one -> last.put(one.micros() / STEP, one));
      }
    }
    assertThat(last.get(33L).kind()).isEqualTo(Kind.DISPLACED);
    for (long home : new long[] {48, 51, 56, 59}) {
      assertThat(last.get(home).kind()).as("at step %d", home).isEqualTo(Kind.TOGETHER);
    }
  }

  @Test
  void aDoubleTriggerIsSetAside() {
    LiveScorer live = new LiveScorer(take());
    live.judge("Ana", 0);
    assertThat(live.judge("Ana", 20_000).get(0).kind()).isEqualTo(Kind.SET_ASIDE);
  }

  /** As the review has it: to 35 ms at other pitches, to 25 ms on the same. */
  @Test
  void aChordIsOneAttack() {
    LiveScorer live = new LiveScorer(take());
    assertThat(live.judge("Ana", 0, 60).get(0).kind()).isEqualTo(Kind.TOGETHER);
    assertThat(live.judge("Ana", 30_000, 64).get(0).kind()).isEqualTo(Kind.SET_ASIDE);
    assertThat(live.judge("Ana", 31_000, 60).get(0).kind()).isNotEqualTo(Kind.SET_ASIDE);
    assertThat(live.judge("Ana", 70_000, 64).get(0).kind()).isNotEqualTo(Kind.SET_ASIDE);
  }

  /** The share of attacks whose last judgement is what the review says after the take. */
  private static double agreement(List<Truth> takes) {
    int same = 0;
    int all = 0;
    for (Truth truth : takes) {
      Take take = truth.take();
      Map<String, Kind> live = new HashMap<>();
      LiveScorer scorer = new LiveScorer(take);
      for (Attack attack : inOrder(take)) {
        for (Judgement one : scorer.judge(attack.player(), attack.micros())) {
          live.put(one.player() + one.micros(), one.kind());
        }
      }
      for (Analysis.PlayerAnalysis player : Scorer.analyse(take).players()) {
        Set<Integer> placed = new HashSet<>();
        for (Analysis.Written one : player.written()) {
          if (one.fate() == Analysis.Fate.PLACED) {
            placed.add(one.attack());
          }
        }
        for (Analysis.Played one : player.played()) {
          Kind settled = settled(one, placed);
          if (settled != null) {
            Attack attack = take.attacks().get(one.attack());
            same += settled == live.get(attack.player() + attack.micros()) ? 1 : 0;
            all++;
          }
        }
      }
    }
    return (double) same / all;
  }

  private static Kind settled(Analysis.Played played, Set<Integer> placed) {
    return switch (played.kind()) {
      case ADDED -> Kind.ADDED;
      case SET_ASIDE -> Kind.SET_ASIDE;
      case FREE -> Kind.FREE;
      case COUNT_IN, AWAY -> null;
      case MATCHED ->
          played.displacement() != 0
              ? Kind.DISPLACED
              : placed.contains(played.attack())
                  ? Kind.TOGETHER
                  : played.asynchronyMillis() == null
                      ? null
                      : played.asynchronyMillis() < 0 ? Kind.EARLY : Kind.LATE;
    };
  }

  private static List<Attack> inOrder(Take take) {
    return take.attacks().stream().sorted(Comparator.comparingLong(Attack::micros)).toList();
  }

  @Test
  void whatWasSaidDuringTheTakeIsMostlyWhatTheReviewSaysAfterIt() {
    List<Truth> ensembles = new ArrayList<>();
    for (int seed = 0; seed < 25; seed++) {
      ensembles.add(Ensembles.of(seed));
    }
    assertThat(agreement(ensembles)).as("ensembles, seeds 0-24").isGreaterThan(.92);
    List<Truth> people = new ArrayList<>();
    Humans.all().values().forEach(kind -> people.add(kind.apply(0)));
    assertThat(agreement(people)).as("people, seed 0").isGreaterThan(.93);
  }

  @Test
  void aJudgementKnowsNothingOfWhatComesAfter() {
    Take take = Ensembles.of(7).take();
    List<Attack> all = inOrder(take);
    List<List<Judgement>> whole = new ArrayList<>();
    LiveScorer scorer = new LiveScorer(take);
    all.forEach(one -> whole.add(scorer.judge(one.player(), one.micros())));
    LiveScorer half = new LiveScorer(take.withAttacks(all.subList(0, all.size() / 2)));
    for (int i = 0; i < all.size() / 2; i++) {
      assertThat(half.judge(all.get(i).player(), all.get(i).micros())).isEqualTo(whole.get(i));
    }
  }

  @Test
  void onlyTheLastEightAttacksOfAPlayerAreJudgedAgain() {
    for (int seed = 0; seed < 10; seed++) {
      Take take = Ensembles.of(seed).take();
      LiveScorer scorer = new LiveScorer(take);
      Map<String, List<Long>> played = new HashMap<>();
      for (Attack attack : inOrder(take)) {
        List<Judgement> told = scorer.judge(attack.player(), attack.micros());
        List<Long> before = played.computeIfAbsent(attack.player(), name -> new ArrayList<>());
        for (Judgement again : told.subList(1, told.size())) {
          assertThat(before.subList(Math.max(0, before.size() - 8), before.size()))
              .as("seed %d", seed)
              .contains(again.micros());
        }
        if (told.get(0).kind() != Kind.SET_ASIDE) {
          before.add(attack.micros());
        }
      }
    }
  }

  @Test
  void attacksThatComeLateOrWildDoNoHarm() {
    LiveScorer live = new LiveScorer(take());
    for (long micros :
        new long[] {0, 400_000_000_000_000L, -1, 5, 250_000, 1_000_000, 3, 1L << 52}) {
      assertThat(live.judge("Ana", micros)).isNotEmpty();
    }
    assertThat(new LiveScorer(take().withAttacks(List.of())).judge("Ben", 750_000).get(0).kind())
        .isEqualTo(Kind.TOGETHER);
  }
}
