package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.file.Drill;

class GroupingsTest {
  /** lcm(g, b) = g b / gcd pulses; in bars that over b, in groups that over g. Derived. */
  @ParameterizedTest
  @CsvSource({
    "3, 8, 24, 3, 8",
    "3, 16, 48, 3, 16",
    "5, 16, 80, 5, 16",
    "3, 4, 12, 3, 4",
    "5, 12, 60, 5, 12",
    "5, 8, 40, 5, 8",
    "7, 16, 112, 7, 16",
    "6, 16, 48, 3, 8",
    "7, 8, 56, 7, 8"
  })
  void aGroupingMeetsTheBarAgainAfterTheLeastCommonMultiple(
      int grouping, int bar, int pulses, int bars, int groups) {
    Drill.Cell one = Drill.Cell.of(grouping, List.of(0), grouping);

    assertThat(Groupings.realignsAfter(grouping, bar)).isEqualTo(pulses);
    assertThat(Groupings.comesRound(one, 0, 1, bar, bars + 1)).isEqualTo(Optional.of(bars));
    assertThat(Groupings.lay(one, 0, 1, bar, pulses)).hasSize(groups);
  }

  /** Common practice, no source. */
  @Test
  void groupingsOfThreeAndSixEighthsBeginAnewInBarFour() {
    assertThat(comesRound("Long threes")).contains(3);
    assertThat(comesRound("Long sixes")).contains(3);
  }

  /** Common practice, no source. */
  @Test
  void twoBarsHoldFiveGroupsOfThreeAndOneEighthOver() {
    Drill.Cell cell = Stock.find("Short threes").chairs().get(0).cell();

    assertThat(Groupings.lengths(cell)).containsExactly(3, 3, 3, 3, 3, 1);
    assertThat(Groupings.tailStart(cell)).isEqualTo(15);
  }

  /** Common practice, no source. */
  @Test
  void groupingsThatFitTheBeatNeverLeaveIt() {
    Drill.Cell threes = Drill.Cell.of(3, List.of(0), 3);
    Drill.Cell twos = Drill.Cell.of(2, List.of(0), 2);

    assertThat(Groupings.comesRound(threes, 0, 3, 12, 64)).isEmpty();
    assertThat(Groupings.comesRound(twos, 0, 2, 8, 64)).isEmpty();
    assertThat(Groupings.lay(threes, 0, 3, 12, 48)).allMatch(group -> group.beatSteps().isEmpty());
  }

  @Test
  void aDisplacedEntryMovesTheBarInWhichTheFigureComesRound() {
    Drill.Cell cell = Stock.find("Long threes").chairs().get(0).cell();

    assertThat(Groupings.comesRound(cell, 2, 2, 8, 16)).contains(1);
    assertThat(Groupings.comesRound(cell, 1, 2, 8, 16)).contains(2);
    assertThat(Groupings.comesRound(cell, 3, 2, 8, 16)).contains(3);
  }

  @Test
  void theTailBeginsWhereTheFigureIsNotRepeated() {
    assertThat(Groupings.tailStart(Stock.find("Long threes").chairs().get(0).cell())).isEqualTo(27);
    assertThat(Groupings.tailStart(Stock.find("Waltz fives").chairs().get(0).cell())).isEqualTo(20);
    assertThat(Groupings.lengths(Stock.find("Split sevens").chairs().get(0).cell()))
        .containsExactly(7, 7, 7, 7, 4);
  }

  @Test
  void beatsAndBarLinesThatCutAGroupAreNamed() {
    List<Group> groups =
        Groupings.lay(Stock.find("Long threes").chairs().get(0).cell(), 0, 2, 8, 32);

    assertThat(groups.get(0)).isEqualTo(new Group(0, 3, false, List.of(2), List.of(), true));
    assertThat(groups.get(2)).isEqualTo(new Group(6, 9, false, List.of(8), List.of(8), false));
    assertThat(groups.get(9)).isEqualTo(new Group(27, 32, true, List.of(28, 30), List.of(), false));
  }

  private static Optional<Integer> comesRound(String title) {
    Drill drill = Stock.find(title);
    return Groupings.comesRound(
        drill.chairs().get(0).cell(), 0, drill.stepsPerBeat(), drill.stepsPerBar(), 8);
  }

  /** a against b has a + b - gcd attacks, and their gaps read the same backwards. Derived. */
  @ParameterizedTest
  @CsvSource({
    "3, 2, 0 2 3 4, 2 1 1 2",
    "4, 3, 0 3 4 6 8 9, 3 1 2 2 1 3",
    "5, 3, 0 3 5 6 9 10 12, 3 2 1 3 1 2 3",
    "5, 4, 0 4 5 8 10 12 15 16, 4 1 3 2 2 3 1 4",
    "7, 4, 0 4 7 8 12 14 16 20 21 24, 4 3 1 4 2 2 4 1 3 4"
  })
  void layersOfTwoGroupingsMeetAsOneComposite(int a, int b, String attacks, String gaps) {
    int cycle = a * b;
    TreeSet<Integer> both = new TreeSet<>();
    both.addAll(Cells.repeated(Drill.Cell.of(cycle / a, List.of(0)), cycle).attackSteps());
    both.addAll(Cells.repeated(Drill.Cell.of(cycle / b, List.of(0)), cycle).attackSteps());
    List<Integer> composite = List.copyOf(both);

    assertThat(composite).isEqualTo(numbers(attacks)).hasSize(a + b - 1);
    List<Integer> found = new RhythmShape(composite, cycle).gaps();
    assertThat(found).isEqualTo(numbers(gaps));
    List<Integer> backwards = new ArrayList<>(found);
    Collections.reverse(backwards);
    assertThat(backwards).isEqualTo(found);
  }

  private static List<Integer> numbers(String written) {
    return Arrays.stream(written.split(" ", -1)).map(Integer::valueOf).toList();
  }
}
