package thinclick.protocol.music;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import thinclick.protocol.json.BadInput;

class ClickPlanTest {
  private final StepGrid eighthsAt120 =
      new StepGrid(Meter.FOUR_FOUR, 2, 120, Swing.STRAIGHT, 3_000_000);

  @Nested
  class AStageByBeats {
    @Test
    void clicksTheBeatsOfEveryBar() {
      assertThat(Stage.ofBeats(2, 1, 1, 3).clickedSteps(Meter.FOUR_FOUR, 2))
          .containsExactly(0L, 4L, 8L, 12L);
    }

    @Test
    void clicksTheFirstBarOfEachGroupOfBars() {
      assertThat(Stage.ofBeats(8, 4, 2, 4).clickedSteps(Meter.FOUR_FOUR, 4))
          .containsExactly(4L, 12L, 68L, 76L);
    }

    @Test
    void cutsALastIncompleteGroup() {
      assertThat(Stage.ofBeats(5, 2, 1).clickedSteps(Meter.FOUR_FOUR, 2))
          .containsExactly(0L, 16L, 32L);
    }

    @Test
    void countsDottedQuartersInMetersOfEight() {
      assertThat(Stage.ofBeats(2, 1, 2).clickedSteps(Meter.parse("6/8"), 3))
          .containsExactly(3L, 9L);
      assertThat(Stage.ofBeats(1, 1, 1, 4).clickedSteps(Meter.parse("12/8"), 6))
          .containsExactly(0L, 18L);
    }

    @Test
    void withoutBeatsIsSilence() {
      assertThat(Stage.ofBeats(8, 1).clickedSteps(Meter.FOUR_FOUR, 2)).isEmpty();
    }

    @Test
    void refusesABeatThatTheMeterDoesNotHave() {
      assertThatThrownBy(
              () ->
                  new ClickPlan(List.of(Stage.ofBeats(1, 1, 1), Stage.ofBeats(1, 1, 1, 3)))
                      .checkMeter(Meter.parse("6/8"), 3))
          .isInstanceOf(BadInput.class)
          .hasMessage("stages[1].beats[1]: expected a beat from 1 to 2 in 6/8, found 3");
    }
  }

  @Nested
  class AStageBySteps {
    @Test
    void countsThroughAllBarsOfTheGroup() {
      assertThat(Stage.ofSteps(4, 2, 8, 15).clickedSteps(Meter.FOUR_FOUR, 2))
          .containsExactly(8L, 15L, 24L, 31L);
    }

    @Test
    void cutsALastIncompleteGroupInsideItsBars() {
      // Seven bars of groups of three: the last group has one bar left, so step 9 falls away.
      assertThat(Stage.ofSteps(7, 3, 1, 9).clickedSteps(Meter.FOUR_FOUR, 2))
          .containsExactly(1L, 9L, 25L, 33L, 49L);
    }

    @Test
    void refusesAStepBeyondItsGroup() {
      assertThatThrownBy(() -> Stage.ofSteps(4, 2, 16).checkMeter(Meter.FOUR_FOUR, 2))
          .hasMessage("steps[0]: expected a step from 0 to 15 in 2 bars, found 16");
    }
  }

  @Nested
  class SeveralStages {
    /** The plan of the take file that the design shows. */
    private final ClickPlan thinning =
        new ClickPlan(
            List.of(
                Stage.ofBeats(8, 1, 1, 2, 3, 4),
                Stage.ofBeats(8, 1, 1, 3),
                Stage.ofSteps(8, 2, 8),
                Stage.ofBeats(8, 1)));

    @Test
    void followEachOtherAndCountTheirGroupsFromTheirOwnStart() {
      List<Click> clicks = thinning.clicks(eighthsAt120);

      assertThat(clicks).hasSize(32 + 16 + 4);
      assertThat(clicks.stream().filter(click -> click.stage() == 2))
          .extracting(Click::step)
          .containsExactly(136L, 152L, 168L, 184L);
      assertThat(clicks.get(32)).isEqualTo(new Click(64, 3_000_000 + 16_000_000, 1, true));
    }

    @Test
    void knowTheirBarsAndClicksABar() {
      assertThat(thinning.bars()).isEqualTo(32);
      assertThat(thinning.fromBar(2)).isEqualTo(16);
      assertThat(List.of(thinning.stageAt(-1), thinning.stageAt(0), thinning.stageAt(7)))
          .containsExactly(-1, 0, 0);
      assertThat(List.of(thinning.stageAt(8), thinning.stageAt(31), thinning.stageAt(32)))
          .containsExactly(1, 3, -1);
      assertThat(
              List.of(0, 1, 2, 3).stream()
                  .map(stage -> thinning.clicksPerBar(stage, Meter.FOUR_FOUR, 2)))
          .containsExactly(4.0, 2.0, 0.5, 0.0);
    }
  }

  @Nested
  class TheCountIn {
    @Test
    void clicksEveryBeatBeforeBarOneAndEndsOneBeatBeforeIt() {
      assertThat(ClickPlan.countIn(eighthsAt120, 2))
          .extracting(Click::micros)
          .containsExactly(
              -1_000_000L, -500_000L, 0L, 500_000L, 1_000_000L, 1_500_000L, 2_000_000L, 2_500_000L);
      assertThat(ClickPlan.countIn(eighthsAt120, 1))
          .contains(new Click(-8, 1_000_000, -1, true), new Click(-2, 2_500_000, -1, false));
    }

    @Test
    void hasTwoClicksABarInSixEight() {
      StepGrid sixEight = new StepGrid(Meter.parse("6/8"), 3, 60, Swing.STRAIGHT, 2_000_000);

      assertThat(ClickPlan.countIn(sixEight, 1))
          .extracting(Click::step, Click::micros)
          .containsExactly(tuple(-6L, 0L), tuple(-3L, 1_000_000L));
    }

    @Test
    void isOneToFourBars() {
      assertThatThrownBy(() -> ClickPlan.countIn(eighthsAt120, 5))
          .hasMessage("countInBars: expected 1 to 4, found 5");
    }
  }

  /** A click on one and three at 120 is one a second (common practice, no source). */
  @Test
  void aClickOnOneAndThreeAt120IsOneASecond() {
    List<Click> clicks = new ClickPlan(List.of(Stage.ofBeats(4, 1, 1, 3))).clicks(eighthsAt120);

    for (int i = 0; i < clicks.size(); i++) {
      assertThat(clicks.get(i).micros()).isEqualTo(3_000_000 + i * 1_000_000L);
    }
  }
}
