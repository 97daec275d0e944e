package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;

class RungTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2/4 | the one of every bar | the last beat of every bar",
        "3/4 | one and three | two and three",
        "4/4 | one and three | two and four",
        "5/4 | one and four | three and five",
        "6/4 | one and four | three and six",
        "7/4 | one, three and five | two, four and seven",
        "6/8 | the one of every bar | the last beat of every bar",
        "9/8 | one and three | two and three",
        "12/8 | one and three | two and four"
      })
  void firstAndLastBeatsOfTheGroupsAreNamedByTheMeter(String meter, String firsts, String lasts) {
    assertThat(Rung.GROUP_FIRSTS.nameIn(Meter.parse(meter), null)).isEqualTo(firsts);
    assertThat(Rung.GROUP_LASTS.nameIn(Meter.parse(meter), null)).isEqualTo(lasts);
  }

  @Test
  void groupsThatADrillStatesComeBeforeTheUsualOnes() {
    assertThat(Rung.GROUP_LASTS.nameIn(Meter.parse("5/4"), List.of(2, 3)))
        .isEqualTo("two and five");
  }

  @ParameterizedTest
  @CsvSource({"2, 1", "3, 2", "4, 2", "6, 4"})
  void theAndIsTheMiddleOfTheBeatOrWhatStandsForIt(int stepsPerBeat, int step) {
    Stage ands = Rung.ANDS.stage(Meter.parse("3/4"), stepsPerBeat, null, 8, 0);

    assertThat(ands.steps()).containsExactly(step, stepsPerBeat + step, 2 * stepsPerBeat + step);
    assertThat(Rung.LAST_AND.stage(Meter.parse("3/4"), stepsPerBeat, null, 8, 0).steps())
        .containsExactly(2 * stepsPerBeat + step);
  }

  @Test
  void everyThirdStepGoesAcrossTheBarLine() {
    Stage stage = Rung.EVERY_THIRD_STEP.stage(Meter.FOUR_FOUR, 2, null, 8, 0);

    assertThat(stage.everyBars()).isEqualTo(3);
    assertThat(stage.clickedSteps(Meter.FOUR_FOUR, 2))
        .isEqualTo(
            IntStream.iterate(0, s -> s < 64, s -> s + 3).mapToLong(s -> s).boxed().toList());
  }

  @Test
  void islandsAreFourBarsOnAndFourOff() {
    assertThat(clickedBars(Rung.ISLANDS, 16, 0)).containsExactly(0, 1, 2, 3, 8, 9, 10, 11);
    assertThat(clickedBars(Rung.SMALL_ISLANDS, 16, 0)).containsExactly(0, 1, 8, 9);
  }

  @Test
  void seededSilenceLeavesOutItsShareAndNeverTooManyBarsInARow() {
    for (long seed = 0; seed < 500; seed++) {
      for (int bars : new int[] {4, 8, 12, 16, 32}) {
        check(Rung.QUARTER_SILENT, bars, bars / 4, 2, seed);
        check(Rung.HALF_SILENT, bars, bars / 2, 2, seed);
        check(Rung.MOST_SILENT, bars, bars * 3 / 4, 4, seed);
      }
    }
  }

  private static void check(Rung rung, int bars, int silent, int longest, long seed) {
    List<Integer> clicked = clickedBars(rung, bars, seed);
    String where = rung + " over " + bars + " bars, seed " + seed;
    assertThat(bars - clicked.size()).as(where).isEqualTo(silent);
    assertThat(clicked).as(where).startsWith(0);
    int last = 0;
    for (int bar : clicked) {
      assertThat(bar - last - 1).as(where).isLessThanOrEqualTo(longest);
      last = bar;
    }
    assertThat(bars - last - 1).as(where).isLessThanOrEqualTo(longest);
  }

  private static List<Integer> clickedBars(Rung rung, int bars, long seed) {
    return rung
        .stage(Meter.FOUR_FOUR, 2, null, bars, seed)
        .clickedSteps(Meter.FOUR_FOUR, 2)
        .stream()
        .map(step -> (int) (step / 8))
        .distinct()
        .toList();
  }

  @Test
  void seededSilenceIsTheSameForTheSameSeedAndChangesWithIt() {
    Stage one = Rung.HALF_SILENT.stage(Meter.FOUR_FOUR, 2, null, 16, 3);

    assertThat(Rung.HALF_SILENT.stage(Meter.FOUR_FOUR, 2, null, 16, 3)).isEqualTo(one);
    assertThat(Rung.HALF_SILENT.stage(Meter.FOUR_FOUR, 2, null, 16, 4)).isNotEqualTo(one);
  }

  @Test
  void everyRungFitsEveryMeterAndGrid() {
    for (String written : "2/4 3/4 4/4 5/4 6/4 7/4 6/8 9/8 12/8".split(" ")) {
      Meter meter = Meter.parse(written);
      for (int stepsPerBeat : meter.compound() ? new int[] {3, 6} : new int[] {2, 3, 4, 6}) {
        for (Rung rung : Rung.values()) {
          rung.stage(meter, stepsPerBeat, null, 8, 1).checkMeter(meter, stepsPerBeat);
        }
      }
    }
  }

  @Test
  void aLadderGoesFromTheFullClickByRungsThatPrepareEachOther() {
    assertThat(ClickLadder.between(Rung.ALL_BEATS, Rung.EVERY_FOURTH_BAR))
        .containsExactly(
            Rung.ALL_BEATS,
            Rung.GROUP_FIRSTS,
            Rung.FIRST_ONLY,
            Rung.EVERY_SECOND_BAR,
            Rung.EVERY_FOURTH_BAR);
    assertThat(ClickLadder.between(Rung.GROUP_LASTS, Rung.EVERY_SECOND_BAR))
        .containsExactly(Rung.GROUP_LASTS, Rung.FIRST_ONLY, Rung.EVERY_SECOND_BAR);
    assertThat(ClickLadder.between(Rung.NONE, Rung.NONE)).containsExactly(Rung.NONE);
    assertThat(ClickLadder.between(Rung.FIRST_ONLY, Rung.ALL_BEATS))
        .containsExactly(Rung.FIRST_ONLY, Rung.ALL_BEATS);
  }

  @Test
  void aRungThatSoundsLikeTheNextIsLeftOutOfALadder() {
    assertThat(ClickLadder.between(Rung.ALL_BEATS, Rung.FIRST_ONLY, Meter.parse("6/8"), null))
        .containsExactly(Rung.ALL_BEATS, Rung.FIRST_ONLY);
  }
}
