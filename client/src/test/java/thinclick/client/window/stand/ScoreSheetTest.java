package thinclick.client.window.stand;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.shape.LineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.window.look.Faces;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.BarMark;
import thinclick.client.window.session.BarMark.Kind;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Stage;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.material.PartWriter;
import thinclick.server.material.Stock;
import thinclick.server.material.WrittenPart;
import thinclick.server.words.SheetWords;

/**
 * The page of a long part: what is needed next is there, at every size; marks say what they mean.
 */
class ScoreSheetTest {
  private static final List<Stage> BARS_64 =
      List.of(
          Stage.ofBeats(16, 1, 1, 2, 3, 4),
          Stage.ofBeats(16, 1, 1, 3),
          Stage.ofBeats(16, 2, 1),
          Stage.ofBeats(16, 4, 1));

  @BeforeAll
  static void toolkit() throws Exception {
    FxToolkit.registerPrimaryStage();
    WaitForAsyncUtils.waitForAsyncFx(10_000, Faces::load);
  }

  @Test
  void theNextLineOfSixtyFourBarsIsThereBeforeItIsNeeded() {
    ScoreSheet sheet = sheet(1, 1_040, 560);
    for (int bar = 0; bar < 64; bar++) {
      int now = bar;
      WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.bar(now));
      assertThat(shows(sheet, bar)).as("bar %d", bar + 1).isTrue();
      assertThat(bar == 63 || shows(sheet, bar + 1)).as("after bar %d", bar + 1).isTrue();
    }
  }

  @Test
  void twoLinesStandOnThePageAtEveryHeightThatHoldsThem() {
    for (int height = 480; height < 620; height += 3) {
      ScoreSheet sheet = sheet(1, 905, height);
      assertThat(sheet.shown()).as("at %d pixels", height).hasSizeGreaterThanOrEqualTo(2);
    }
  }

  /** Large music on a small page: one line, whose last bar is the first of the line after it. */
  @ParameterizedTest
  @CsvSource({"2, 1040, 420", "2.4, 700, 400", "1, 1040, 130"})
  void whereOneLineFitsTheNextBarIsThereBeforeItIsNeeded(double scale, int width, int height) {
    ScoreSheet sheet = sheet(scale, width, height);
    for (int bar = 0; bar < 64; bar++) {
      int now = bar;
      WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.bar(now));
      assertThat(sheet.shown()).hasSize(1);
      assertThat(shows(sheet, bar)).as("bar %d", bar + 1).isTrue();
      assertThat(bar == 63 || shows(sheet, bar + 1)).as("after bar %d", bar + 1).isTrue();
      SystemView line = sheet.shown().get(0);
      assertThat(line.height()).isLessThanOrEqualTo(height + 0.5);
      assertThat(line.system().width() * line.space()).isLessThanOrEqualTo(width + 0.5);
    }
  }

  @Test
  void thePageStaysFullAtTheEnd() {
    ScoreSheet sheet = sheet(1, 1_040, 560);
    WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.bar(63));
    assertThat(sheet.shown()).hasSize(2);
    assertThat(shows(sheet, 63)).isTrue();
  }

  @Test
  void theStaffIsAsLargeAsItIsAskedForBetweenEightAndTwentyEight() {
    assertThat(sheet(0.5, 1_040, 560).shown().get(0).space()).isEqualTo(8);
    assertThat(sheet(1, 1_800, 1_400).shown().get(0).space()).isEqualTo(12);
    assertThat(sheet(2, 1_800, 1_400).shown().get(0).space()).isEqualTo(24);
    assertThat(sheet(9, 1_800, 2_400).shown().get(0).space()).isEqualTo(28);
  }

  @Test
  void whatASmallPageCannotHoldIsMadeSmallerNotCutOff() {
    ScoreSheet sheet = sheet(2, 500, 260);
    SystemView first = sheet.shown().get(0);
    assertThat(first.system().width() * first.space()).isLessThanOrEqualTo(500.5);
    assertThat(first.height()).isLessThanOrEqualTo(260.5);
  }

  @ParameterizedTest
  @EnumSource(Palette.class)
  void thirtyMillisEarlyHasAFootToTheLeftInTheColourOfEarly(Palette palette) {
    StaffSystem system = sheet(1, 1_040, 560).shown().get(0).system();
    Path early = shape(new BarMark(Kind.EARLY, 2, -30, -0.12), system, palette);
    Path late = shape(new BarMark(Kind.LATE, 2, 30, 0.12), system, palette);
    assertThat(foot(early)).isNegative();
    assertThat(foot(late)).isPositive();
    assertThat(early.getStroke()).isEqualTo(Color.web(Palette.web(palette.early())));
    assertThat(late.getStroke()).isEqualTo(Color.web(Palette.web(palette.late())));
    double written = system.xOf(2) * 10;
    assertThat(((MoveTo) early.getElements().get(0)).getX()).isLessThan(written);
    assertThat(
            SpokenLine.of(
                0, List.of(new BarMark(Kind.EARLY, 2, -30, -0.12)), SheetWords.in(Locale.ENGLISH)))
        .isEqualTo("bar 1, early 30 ms");
  }

  private static Path shape(BarMark mark, StaffSystem system, Palette palette) {
    Node marks = MarkShapes.of(List.of(mark), system, palette, 10);
    return (Path) ((Group) marks).getChildren().get(0);
  }

  /** How far the foot reaches beside the tick; negative to the left. */
  private static double foot(Path path) {
    LineTo down = (LineTo) path.getElements().get(1);
    LineTo end = (LineTo) path.getElements().get(2);
    return end.getX() - down.getX();
  }

  private static boolean shows(ScoreSheet sheet, int bar) {
    return sheet.shown().stream().anyMatch(line -> line.has(bar));
  }

  private static ScoreSheet sheet(double scale, double width, double height) {
    Drill drill = Stock.find("Threes over a blues").withStages(BARS_64);
    WrittenPart part = PartWriter.write(drill, drill.chairs().get(0), 100, "");
    return WaitForAsyncUtils.waitForAsyncFx(
        10_000,
        () -> {
          ScoreSheet sheet = new ScoreSheet();
          sheet.dress(Palette.LIGHT, scale);
          ((Region) sheet.root()).resize(width, height);
          sheet.show(part, List.of());
          return sheet;
        });
  }
}
