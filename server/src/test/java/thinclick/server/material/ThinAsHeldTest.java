package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.material.ThinAsHeld.Decision;
import thinclick.server.material.ThinAsHeld.Move;

/** The click by result: rungs, thin as held, rescue. */
class ThinAsHeldTest {
  private static final Thinning FOUR = new Thinning(Meter.FOUR_FOUR, 2, null);

  @ParameterizedTest
  @CsvSource({
    "100, 90, THINNER", // the threshold itself is held
    "100, 89, SAME",
    "100, 75, SAME",
    "100, 74, FULLER",
    "12, 12, THINNER",
    "11, 11, NO_VERDICT", // under twelve attacks there is no verdict
  })
  void theMoveHangsOnWhatWasHeld(int written, int placed, Move expected) {
    assertThat(ThinAsHeld.move(written, placed)).isEqualTo(expected);
  }

  @Test
  void thinnerFollowsTheStemAndFullerGoesBackOnIt() {
    assertThat(Thinning.thinner(Rung.ALL_BEATS)).isEqualTo(Rung.GROUP_FIRSTS);
    assertThat(Thinning.thinner(Rung.GROUP_FIRSTS)).isEqualTo(Rung.FIRST_ONLY);
    assertThat(Thinning.thinner(Rung.FIRST_ONLY)).isEqualTo(Rung.EVERY_SECOND_BAR);
    assertThat(Thinning.thinner(Rung.EVERY_FOURTH_BAR)).isEqualTo(Rung.NONE);
    assertThat(Thinning.thinner(Rung.NONE)).isEqualTo(Rung.NONE);
    assertThat(Thinning.thinner(Rung.GROUP_LASTS)).isEqualTo(Rung.LAST_ONLY);
    assertThat(Thinning.thinner(Rung.MOVED_FLOOR)).isEqualTo(Rung.NONE);
    assertThat(Thinning.fuller(Rung.EVERY_SECOND_BAR)).isEqualTo(Rung.FIRST_ONLY);
    assertThat(Thinning.fuller(Rung.ALL_BEATS)).isEqualTo(Rung.ALL_BEATS);
  }

  @Test
  void everyWayOfThinningEndsInNone() {
    for (Rung rung : Rung.values()) {
      Rung at = rung;
      for (int i = 0; i < Rung.values().length; i++) {
        at = Thinning.thinner(at);
      }
      assertThat(at).as(rung.plainName()).isEqualTo(Rung.NONE);
    }
  }

  @Test
  void aRungIsFoundAgainInItsClicks() {
    for (Rung rung : Rung.values()) {
      for (long seed = 0; seed < 20; seed++) {
        Stage stage = rung.stage(Meter.FOUR_FOUR, 4, null, 16, seed);
        assertThat(new Thinning(Meter.FOUR_FOUR, 4, null).at(stage))
            .as("%s, seed %d", rung, seed)
            .isEqualTo(rung);
      }
    }
  }

  @Test
  void aPeriodThatIsHeldTakesTheNextRungTwoBarsLater() {
    ThinAsHeld rule = new ThinAsHeld(FOUR, 4);
    ClickPlan plan = plan(new Stage(32, 1, List.of(1, 2, 3, 4), null));
    assertThat(rule.decidesAt(4)).isTrue();
    Decision made = rule.decide(plan, 4, 40, 39, 7);
    assertThat(made.move()).isEqualTo(Move.THINNER);
    assertThat(made.fromBar()).isEqualTo(6);
    assertThat(made.stages()).containsExactly(new Stage(26, 1, List.of(1, 3), null));
  }

  @Test
  void whatWasPlannedWaitsWhileTheRungStays() {
    ThinAsHeld rule = new ThinAsHeld(FOUR, 4);
    Stage all = new Stage(6, 1, List.of(1, 2, 3, 4), null);
    ClickPlan plan = plan(all, new Stage(10, 1, List.of(1), null));
    Decision made = rule.decide(plan, 4, 40, 33, 7);
    assertThat(made.move()).isEqualTo(Move.SAME);
    assertThat(made.stages()).containsExactly(new Stage(10, 1, List.of(1, 2, 3, 4), null));
  }

  @Test
  void nothingChangesWhereThePlanSaysTheSameOrTheTakeIsOver() {
    ThinAsHeld rule = new ThinAsHeld(FOUR, 4);
    ClickPlan plan = plan(new Stage(8, 1, List.of(1), null));
    assertThat(rule.decide(plan, 4, 40, 33, 7).stages()).isNull();
    assertThat(rule.decide(plan, 8, 40, 40, 7).stages()).isNull();
  }

  @Test
  void shortPeriodsAreJudgedTogether() {
    assertThat(new ThinAsHeld(FOUR, 1).judgedBars()).isEqualTo(4);
    assertThat(new ThinAsHeld(FOUR, 2).judgedBars()).isEqualTo(4);
    assertThat(new ThinAsHeld(FOUR, 3).judgedBars()).isEqualTo(6);
    assertThat(new ThinAsHeld(FOUR, 12).judgedBars()).isEqualTo(12);
  }

  /** Invariants over seeded takes: length, what has sounded, one rung at a time. */
  @Test
  void whateverIsHeldThePastStaysAndTheTakeKeepsItsLength() {
    for (long seed = 0; seed < 300; seed++) {
      Random random = new Random(seed);
      ThinAsHeld rule = new ThinAsHeld(FOUR, 1 + random.nextInt(6));
      int bars = 8 + random.nextInt(40);
      ClickPlan plan =
          plan(Rung.values()[random.nextInt(5)].stage(Meter.FOUR_FOUR, 2, null, bars, seed));
      for (int bar = 1; bar < bars; bar++) {
        if (!rule.decidesAt(bar)) {
          continue;
        }
        int written = random.nextInt(60);
        int placed = written == 0 ? 0 : random.nextInt(written + 1);
        Decision made = rule.decide(plan, bar, written, placed, seed);
        if (made.stages() != null) {
          ClickPlan now = whole(plan, made);
          assertThat(now.bars()).as("seed %d, bar %d", seed, bar).isEqualTo(bars);
          assertThat(clicksUpTo(now, made.fromBar()))
              .as("seed %d, bar %d: what has clicked stays", seed, bar)
              .isEqualTo(clicksUpTo(plan, made.fromBar()));
          plan = now;
        }
        Rung sounded = FOUR.at(plan.stages().get(plan.stageAt(bar - 1)));
        assertThat(List.of(sounded, Thinning.thinner(sounded), Thinning.fuller(sounded)))
            .as("seed %d, bar %d: one rung at a time", seed, bar)
            .contains(made.rung());
      }
    }
  }

  /** The rule whole, in every meter: thresholds, the period's end, two bars ahead, the rescue. */
  @Test
  void inEveryMeterTheRuleIsFollowedAtEveryPeriodsEnd() {
    List<String> meters =
        List.of("2/4 2", "3/4 4", "4/4 2", "4/4 3", "5/4 2", "6/4 2", "7/4 4", "6/8 3", "12/8 6");
    for (int seed = 0; seed < 360; seed++) {
      Random random = new Random(seed);
      String[] bar = meters.get(seed % meters.size()).split(" ");
      Thinning ladder = new Thinning(Meter.parse(bar[0]), Integer.parseInt(bar[1]), null);
      int period = 1 + random.nextInt(8);
      ThinAsHeld rule = new ThinAsHeld(ladder, period);
      int bars = 10 + random.nextInt(40);
      Rung first = Rung.values()[random.nextInt(Rung.values().length)];
      ClickPlan plan = plan(ladder.stage(first, bars, seed));
      for (int at = 1; at < bars; at++) {
        if (rule.decidesAt(at)) {
          plan = decided(rule, plan, at, random, "seed " + seed + ", " + bar[0] + ", bar " + at);
        }
      }
      int from = random.nextInt(bars);
      List<Stage> rescued = ladder.rescue(plan, from);
      int clicked = Math.min(Thinning.RESCUE_BARS, bars - from);
      assertThat(rescued.get(0))
          .as("seed %d: two clicked bars, fewer where the take is over", seed)
          .isEqualTo(ladder.stage(Rung.ALL_BEATS, clicked, 0));
      assertThat(rescued.stream().mapToInt(Stage::bars).sum()).isEqualTo(bars - from);
      assertThat(rescued.subList(1, rescued.size()))
          .as("seed %d: and then the plan again", seed)
          .isEqualTo(Thinning.restOf(plan, from + clicked));
    }
  }

  private static ClickPlan decided(
      ThinAsHeld rule, ClickPlan plan, int at, Random random, String as) {
    assertThat(at % rule.periodBars()).as(as + ": a period ends").isZero();
    Thinning ladder = rule.thinning();
    Rung sounded = ladder.at(plan.stages().get(plan.stageAt(at - 1)));
    int written = random.nextInt(80);
    int placed = written == 0 ? 0 : written - random.nextInt(Math.min(written, 24) + 1);
    Decision made = rule.decide(plan, at, written, placed, random.nextLong());
    boolean verdict = written >= 12;
    Rung expected =
        verdict && placed * 10 >= written * 9
            ? Thinning.thinner(sounded)
            : verdict && placed * 4 < written * 3 ? Thinning.fuller(sounded) : sounded;
    assertThat(made.rung()).as("%s: %d of %d", as, placed, written).isEqualTo(expected);
    assertThat(made.fromBar()).as(as + ": two bars ahead").isEqualTo(at + 2);
    if (made.stages() == null) {
      return plan;
    }
    ClickPlan now = whole(plan, made);
    assertThat(now.bars()).as(as).isEqualTo(plan.bars());
    assertThat(ladder.alikeFrom(now, made.fromBar(), made.stages())).as(as).isTrue();
    return now;
  }

  @Test
  void aBandThatHoldsEverythingEndsWithoutAClick() {
    ThinAsHeld rule = new ThinAsHeld(FOUR, 4);
    ClickPlan plan = plan(new Stage(32, 1, List.of(1, 2, 3, 4), null));
    for (int bar = 4; bar < 32; bar += 4) {
      Decision made = rule.decide(plan, bar, 40, 40, 7);
      plan = made.stages() == null ? plan : whole(plan, made);
    }
    assertThat(plan.stages().stream().map(FOUR::at))
        .containsExactly(
            Rung.ALL_BEATS,
            Rung.GROUP_FIRSTS,
            Rung.FIRST_ONLY,
            Rung.EVERY_SECOND_BAR,
            Rung.EVERY_FOURTH_BAR,
            Rung.NONE);
  }

  @Test
  void rescueIsTwoClickedBarsAndThenThePlanAgain() {
    ClickPlan plan =
        plan(new Stage(8, 1, List.of(1, 2, 3, 4), null), new Stage(8, 1, List.of(), null));
    assertThat(FOUR.rescue(plan, 12))
        .containsExactly(
            new Stage(2, 1, List.of(1, 2, 3, 4), null), new Stage(2, 1, List.of(), null));
    assertThat(FOUR.rescue(plan, 15)).containsExactly(new Stage(1, 1, List.of(1, 2, 3, 4), null));
    assertThat(FOUR.rescue(plan, 16)).isEmpty();
  }

  @Test
  void fewerAndMoreClicksShiftEveryStage() {
    List<Stage> plan =
        List.of(new Stage(8, 1, List.of(1, 2, 3, 4), null), new Stage(8, 1, List.of(1, 3), null));
    assertThat(FOUR.fewerClicks(plan, 0).stream().map(FOUR::at))
        .containsExactly(Rung.GROUP_FIRSTS, Rung.FIRST_ONLY);
    assertThat(FOUR.moreClicks(plan, 0))
        .containsExactly(new Stage(16, 1, List.of(1, 2, 3, 4), null));
  }

  private static ClickPlan plan(Stage... stages) {
    return new ClickPlan(List.of(stages));
  }

  private static ClickPlan whole(ClickPlan plan, Decision made) {
    List<Stage> whole = new ArrayList<>();
    for (int i = 0; i < plan.stages().size() && plan.fromBar(i) < made.fromBar(); i++) {
      Stage stage = plan.stages().get(i);
      int bars = Math.min(stage.bars(), made.fromBar() - plan.fromBar(i));
      whole.add(new Stage(bars, stage.everyBars(), stage.beats(), stage.steps()));
    }
    whole.addAll(made.stages());
    return new ClickPlan(whole);
  }

  private static List<Long> clicksUpTo(ClickPlan plan, int bar) {
    List<Long> clicks = new ArrayList<>();
    for (int i = 0; i < plan.stages().size(); i++) {
      long first = plan.fromBar(i) * 8L;
      plan.stages().get(i).clickedSteps(Meter.FOUR_FOUR, 2).stream()
          .map(step -> first + step)
          .filter(step -> step < bar * 8L)
          .forEach(clicks::add);
    }
    return clicks;
  }
}
