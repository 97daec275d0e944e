package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Meter;

class CellsTest {
  private static final Drill.Cell EVEN = Cells.even(Meter.FOUR_FOUR, 2, 1);

  private static Drill.Cell stock(String title) {
    return Stock.find(title).chairs().get(0).cell();
  }

  @Test
  void theHeaviestPositionsAreLeftOutFirst() {
    assertThat(Cells.leaveOutHeaviest(EVEN, 1, Meter.FOUR_FOUR, 2, null))
        .isEqualTo(stock("Bare one"));
    assertThat(Cells.leaveOutHeaviest(EVEN, 2, Meter.FOUR_FOUR, 2, null))
        .isEqualTo(stock("Bare one and three"));
    assertThat(Cells.leaveOutHeaviest(EVEN, 3, Meter.FOUR_FOUR, 2, null))
        .isEqualTo(stock("Ands alone"));
    assertThatThrownBy(() -> Cells.leaveOutHeaviest(EVEN, 4, Meter.FOUR_FOUR, 2, null))
        .hasMessage("leave-out: expected 1 to 3, found 4");
  }

  @Test
  void sixteenthsLoseTheirAndsAfterTheirBeats() {
    Drill.Cell even = Cells.even(Meter.FOUR_FOUR, 4, 1);

    assertThat(Cells.leaveOutHeaviest(even, 4, Meter.FOUR_FOUR, 4, null).attackSteps())
        .containsExactly(1, 3, 5, 7, 9, 11, 13, 15);
    assertThat(
            Cells.leaveOutHeaviest(
                    Cells.even(Meter.parse("6/8"), 3, 1), 2, Meter.parse("6/8"), 3, null)
                .attackSteps())
        .containsExactly(1, 2, 4, 5);
  }

  @Test
  void stepsAreLeftOutByHand() {
    assertThat(Cells.leaveOut(EVEN, List.of(0, 5)).attackSteps()).containsExactly(1, 2, 3, 4, 6, 7);
    assertThatThrownBy(() -> Cells.leaveOut(stock("Charleston"), List.of(1)))
        .hasMessage("leave-out: expected attacked steps, of [0, 3], found 1");
    assertThatThrownBy(() -> Cells.leaveOut(stock("Charleston"), List.of(0, 3)))
        .hasMessageContaining("at least one attack");
  }

  @Test
  void aCellBeginsAndEndsOffTheBeat() {
    assertThat(Cells.beginOffBeat(EVEN, 2).attackSteps()).startsWith(1);
    assertThat(Cells.beginOffBeat(Drill.Cell.of(8, List.of(0, 2, 4)), 2).attackSteps())
        .containsExactly(1, 2, 4);
    assertThat(Cells.endOffBeat(stock("Habanera"), Meter.FOUR_FOUR, 2, null).attackSteps())
        .containsExactly(0, 3);
    assertThat(Cells.endOffBeat(Drill.Cell.of(8, List.of(0, 2, 4)), Meter.FOUR_FOUR, 2, 3))
        .isEqualTo(
            new Drill.Cell(8, List.of(0, 2, 4, 5), null, List.of(2, 2, 1, 3), null, null, null));
    assertThatThrownBy(() -> Cells.endOffBeat(EVEN, Meter.FOUR_FOUR, 2, 2))
        .hasMessage("end-off: expected 1 to 1, found 2");
  }

  @Test
  void displacementGoesRoundTheCell() {
    assertThat(Cells.displace(stock("Charleston"), 6).attackSteps()).containsExactly(1, 6);
    assertThat(Cells.displace(stock("Charleston"), -1).attackSteps()).containsExactly(2, 7);
  }

  @Test
  void rotationBeginsOnAnotherAttackAndRetrogradeTurnsTheGapsRound() {
    assertThat(Cells.rotate(stock("Tresillo"), 1).attackSteps()).containsExactly(0, 3, 5);
    assertThat(Cells.retrograde(stock("Tresillo")).attackSteps()).containsExactly(0, 2, 5);
    assertThat(Cells.augment(stock("Tresillo"), 2).attackSteps()).containsExactly(0, 6, 12);
    assertThat(Cells.augment(stock("Tresillo"), 2).grouping()).isEqualTo(6);
  }

  @Test
  void accentsAndLengthsGoAlongWithTheirAttacks() {
    Drill.Cell cell =
        new Drill.Cell(8, List.of(0, 3, 6), List.of(3), List.of(3, 1, 2), null, null, null);

    assertThat(Cells.displace(cell, 3))
        .isEqualTo(
            new Drill.Cell(8, List.of(1, 3, 6), List.of(6), List.of(2, 3, 1), null, null, null));
    assertThat(Cells.augment(cell, 2))
        .isEqualTo(
            new Drill.Cell(16, List.of(0, 6, 12), List.of(6), List.of(6, 2, 4), null, null, null));
    assertThat(Cells.accented(cell, List.of(0, 6)).accentSteps()).containsExactly(0, 6);
    assertThatThrownBy(() -> Cells.accented(cell, List.of(1)))
        .hasMessageContaining("expected steps of [0, 3, 6], found [1]");
  }

  /** Derived: displaced by k in each cycle a cell is home again after n / gcd(n, k) cycles. */
  @ParameterizedTest
  @CsvSource({"16, 1, 16", "16, 2, 8", "16, 3, 16", "16, 6, 8", "12, 8, 3", "8, 4, 2"})
  void repeatedDisplacementReturnsHome(int steps, int by, int cycles) {
    Drill.Cell cell = Drill.Cell.of(steps, List.of(0, 1));
    Drill.Cell moved = cell;
    for (int i = 1; i <= cycles; i++) {
      moved = Cells.displace(moved, by);
      assertThat(moved.equals(cell)).as("cycle %d", i).isEqualTo(i == cycles);
    }
  }

  @Test
  void whatIsDoneAndUndoneLeavesTheCellAsItWas() {
    for (long seed = 0; seed < 2_000; seed++) {
      Drill.Cell cell = random(new SplittableRandom(seed));
      int by = (int) (seed % 41) - 20;
      String where = "seed " + seed + ": " + cell;
      assertThat(Cells.displace(cell, cell.steps() * 3)).as(where).isEqualTo(cell);
      assertThat(Cells.displace(Cells.displace(cell, by), -by).attackSteps())
          .as(where)
          .isEqualTo(cell.attackSteps());
      assertThat(Cells.retrograde(Cells.retrograde(cell)).attackSteps())
          .as(where)
          .isEqualTo(cell.attackSteps());
      assertThat(Cells.displace(cell, by).attackSteps())
          .as(where)
          .hasSameSizeAs(cell.attackSteps());
      assertThat(new RhythmShape(Cells.rotate(cell, by).attackSteps(), cell.steps()).distances())
          .as(where)
          .isEqualTo(new RhythmShape(cell.attackSteps(), cell.steps()).distances());
    }
  }

  private static Drill.Cell random(SplittableRandom random) {
    int steps = random.nextInt(4, 33);
    TreeSet<Integer> attacks = new TreeSet<>(List.of(random.nextInt(steps)));
    while (random.nextInt(6) > 0) {
      attacks.add(random.nextInt(steps));
    }
    return Drill.Cell.of(steps, new ArrayList<>(attacks));
  }

  /** Each is the design's stock, which was written by hand. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Short threes   | 3 | 0     | 16 | UPBEAT",
        "Hollow threes  | 3 | 0 1   | 16 | UPBEAT",
        "Split fives    | 5 | 0 3   | 16 | UPBEAT",
        "Long threes    | 3 | 0     | 32 | UPBEAT",
        "Long fives     | 5 | 0     | 32 | DOWNBEAT",
        "Long sixes     | 6 | 0     | 32 | DOWNBEAT",
        "Long sevens    | 7 | 0     | 32 | UPBEAT",
        "Split sevens   | 7 | 0 2 4 | 32 | UPBEAT",
        "Waltz fives    | 5 | 0     | 24 | DOWNBEAT",
        "Waltz sevens   | 7 | 0     | 24 | UPBEAT"
      })
  void aTailFillsWhatTheGroupingLeavesOver(
      String title, int grouping, String inner, int steps, GroupedCell.Aim aim) {
    List<Integer> figure =
        java.util.Arrays.stream(inner.split(" ", -1)).map(Integer::valueOf).toList();

    assertThat(GroupedCell.of(grouping, figure, steps, 2, aim)).isEqualTo(stock(title));
  }

  @Test
  void everyGroupingFillsEveryPeriodAndEndsWhereItAims() {
    for (int grouping = 2; grouping <= 12; grouping++) {
      for (int steps = 16; steps <= 64; steps += 4) {
        for (int stepsPerBeat : new int[] {2, 4}) {
          for (GroupedCell.Aim aim : GroupedCell.Aim.values()) {
            Drill.Cell cell = GroupedCell.of(grouping, List.of(0), steps, stepsPerBeat, aim);
            String where = grouping + " over " + steps + " " + aim + " " + cell.attackSteps();
            assertThat(cell.attackSteps()).as(where).startsWith(0);
            if (steps % grouping != 0) {
              int aimed = steps - stepsPerBeat;
              aimed += aim == GroupedCell.Aim.UPBEAT ? stepsPerBeat / 2 : 0;
              assertThat(cell.attackSteps()).as(where).endsWith(aimed);
            }
            for (int i = 0; i < cell.attackSteps().size(); i++) {
              assertThat(cell.gapAfter(i)).as(where).isLessThanOrEqualTo(Math.max(grouping, 7));
            }
          }
        }
      }
    }
    assertThatThrownBy(() -> GroupedCell.of(13, List.of(0), 32, 2, GroupedCell.Aim.UPBEAT))
        .hasMessage("grouping: expected 2 to 12, found 13");
    assertThatThrownBy(() -> GroupedCell.of(3, List.of(0, 4), 32, 2, GroupedCell.Aim.UPBEAT))
        .hasMessage("inner[1]: expected 0 to 2, found 4");
  }

  @Test
  void variationsKeepTheCycle() {
    Drill.Cell threes = stock("Short threes");

    assertThat(Variations.easier(threes, Meter.FOUR_FOUR, 2, null).attackSteps())
        .containsExactly(0, 6, 12);
    assertThat(Variations.harder(threes).attackSteps())
        .containsExactly(0, 2, 3, 5, 6, 8, 9, 11, 12, 14, 15);
    assertThat(Variations.harder(stock("Ands alone")).attackSteps()).containsExactly(3, 5, 7);
  }
}
