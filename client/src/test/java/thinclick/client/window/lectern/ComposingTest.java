package thinclick.client.window.lectern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Feel;
import thinclick.protocol.file.FreeBars;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.Stock;

/** What a leader writes to compose a drill. */
class ComposingTest {
  private static Composing wish(
      Drill from, String cell, String grouping, String period, String scale, String progression) {
    return new Composing(
        from, "", "", "", cell, grouping, period, "", scale, progression, "", "", "", "", null, "");
  }

  @Test
  void aCellAloneIsADrill() {
    Drill drill = wish(null, "1 4 7", "", "", "", "").drill();
    assertThat(drill.title()).isEqualTo("Own drill");
    assertThat(drill.periodBars()).isEqualTo(1);
    assertThat(drill.chairs().get(0).cell().attackSteps()).containsExactly(0, 3, 6);
  }

  /** Neither a cell nor a grouping has to be there: then every step of the bar is played. */
  @Test
  void aTitleAloneIsADrillOfEvenSteps() {
    Drill drill =
        new Composing(null, " Mine ", "", "", "", "", "", "", "", "", "", "", "", "", null, "")
            .drill();
    assertThat(drill.title()).isEqualTo("Mine");
    assertThat(drill.meter()).hasToString("4/4");
    assertThat(drill.chairs().get(0).cell().attackSteps()).containsExactly(0, 1, 2, 3, 4, 5, 6, 7);
  }

  @Test
  void aGroupingIsLaidOverAPeriodWithATail() {
    Drill drill = wish(null, "", "3", "4", "", "").drill();
    assertThat(drill.periodBars()).isEqualTo(4);
    // common practice, no source: threes over four bars leave two eighths, ending on the last and
    assertThat(drill.chairs().get(0).cell().attackSteps()).startsWith(0, 3, 6, 9).contains(31);
    assertThat(drill.chairs().get(0).cell().grouping()).isEqualTo(3);
  }

  @Test
  void aDrillOfTheStockIsChangedAndGoesByAnotherName() {
    Drill drill = wish(Stock.find("Charleston"), "", "", "", "dorian", "").drill();
    assertThat(drill.title()).isEqualTo("Charleston, own");
    assertThat(drill.chairs().get(0).line().scale()).isEqualTo("dorian");
    assertThat(drill.chairs().get(0).cell())
        .isEqualTo(Stock.find("Charleston").chairs().get(0).cell());
  }

  @Test
  void everyWishIsHeard() {
    Drill drill =
        new Composing(
                null,
                "Mine",
                "3/4",
                "2",
                "1 4",
                "",
                "2",
                "2",
                "",
                "Dm7 | G7",
                "C",
                "piano, bass",
                "25 -10",
                "2-3 of 4",
                DealKind.CANON,
                "all beats to first only")
            .drill();
    assertThat(drill.title()).isEqualTo("Mine");
    assertThat(drill.meter()).hasToString("3/4");
    assertThat(drill.periodBars()).isEqualTo(2);
    assertThat(drill.chairs().get(0).entryStep()).isEqualTo(1);
    assertThat(drill.chairs().get(0).instrument()).isEqualTo("piano");
    assertThat(drill.chairs().get(0).line().progression()).isEqualTo("Dm7 | G7");
    assertThat(drill.deal().kind()).isEqualTo(DealKind.CANON);
    assertThat(drill.stages()).hasSize(3);
    assertThat(drill.chairs().get(0).feelMillis()).isEqualTo(new Feel(25, -10));
    assertThat(drill.chairs().get(0).free()).containsExactly(new FreeBars(1, 3, 4));
  }

  @Test
  void aWishThatIsNotUnderstoodIsNamed() {
    refused(wish(null, "1 x", "", "", "", ""), "found \"x\"");
    refused(wish(null, "1 4", "", "", "dorien", ""), "dorian");
    refused(wish(null, "1 4", "", "", "dorian", "Dm7"), "found both");
  }

  /** Musicians count from one; a file's step 0 is never asked for, nor said in a complaint. */
  @Test
  void stepsAreCountedFromOne() {
    refused(wish(null, "0 3", "", "", "", ""), "expected 1 to 10000, found 0");
    refused(wish(null, "1 9", "", "1", "", ""), "expected 1 to 8, found 9");
    refused(wish(null, "1 6", "5", "5", "", ""), "expected 1 to 5, found 6");
    refused(wish(null, "4 1", "", "", "", ""), "expected more than 4, the one before, found 1");
    assertThat(wish(null, "1 5", "5", "5", "", "").drill().chairs().get(0).cell().attackSteps())
        .startsWith(0, 4, 5, 9);
  }

  private static void refused(Composing wish, String says) {
    assertThatThrownBy(wish::drill).isInstanceOf(BadInput.class).hasMessageContaining(says);
  }
}
