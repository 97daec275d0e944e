package thinclick.client.window.stand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import javafx.geometry.Bounds;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.shape.Line;
import javafx.scene.shape.LineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import javafx.scene.text.Text;
import javafx.scene.text.TextBoundsType;
import org.jspecify.annotations.Nullable;
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
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Stage;
import thinclick.server.engraving.Engraver;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.material.PartWriter;
import thinclick.server.material.Stock;
import thinclick.server.material.WrittenPart;
import thinclick.server.words.SheetWords;

/**
 * The page of a long part: what is needed next is there, at every size; marks say what they mean.
 */
class ScoreSheetTest {
  private static final Words WORDS = Words.in(Locale.ENGLISH);

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
      SystemView line = first(sheet);
      assertThat(line.height()).isLessThanOrEqualTo(height + 0.5);
      assertThat(line.system().width() * line.space()).isLessThanOrEqualTo(width + 0.5);
    }
  }

  /** One line a page of three bars and of two, two lines of two bars. */
  @ParameterizedTest
  @CsvSource({"1, 1812, 300, true", "2, 1040, 420, false", "1, 1040, 560, true"})
  void aBarsMarksAreReadWhileTheNextSoundsAlsoWhereAStageBegins(
      double scale, int width, int height, boolean kept) {
    ScoreSheet sheet = sheet(scale, width, height);
    assertThat(sheet.leafProperty().get().keepsOver()).isEqualTo(kept);
    for (int bar = 1; bar < 64; bar++) {
      int now = bar;
      WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.bar(now));
      assertThat(kept && !shows(sheet, bar - 1)).as("in bar %d", bar + 1).isFalse();
      assertThat(sheet.shown().get(0).staves().get(0).headed()).as("bar %d", bar + 1).isTrue();
      if (bar % 16 == 0) {
        assertThat(directionBars(sheet)).as("the words of its stage").contains(bar);
      }
    }
  }

  /** The bars above which words stand on the page. */
  private static List<Integer> directionBars(ScoreSheet sheet) {
    return sheet.shown().stream()
        .flatMap(line -> line.staves().get(0).system().marks().stream())
        .filter(mark -> mark instanceof Mark.Text text && text.size() == Engraver.DIRECTION_SIZE)
        .map(mark -> mark.place().bar())
        .toList();
  }

  @Test
  void thePageStaysFullAtTheEnd() {
    ScoreSheet sheet = sheet(1, 1_040, 560);
    WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.bar(63));
    assertThat(sheet.shown()).hasSize(2);
    assertThat(shows(sheet, 63)).isTrue();
  }

  @Test
  void theStaffIsAtLeastAsLargeAsItIsAskedForAndFillsThePage() {
    assertThat(first(sheet(0.5, 1_040, 700)).space()).isBetween(8.0, 12.0);
    assertThat(first(sheet(1, 1_800, 1_400)).space()).isBetween(12.0, 18.0);
    assertThat(first(sheet(2, 1_800, 1_460)).space())
        .as("asked for are 24, and two bars take 75.2 spaces of the width")
        .isBetween(23.9, 28.0);
    assertThat(first(sheet(9, 2_000, 2_400)).space()).isEqualTo(28);
    assertThat(first(sheet(2, 3_800, 2_000)).space()).as("the largest text").isEqualTo(28);
    assertThat(first(sheet(11.0 / 15, 3_800, 2_000)).space())
        .as("the smallest text")
        .isBetween(8.0, 12.0);
  }

  /** Music on a page of any size is never smaller because larger music was asked for. */
  @ParameterizedTest
  @CsvSource({"1812, 800", "1258, 500", "1258, 360", "916, 440", "916, 280", "700, 250"})
  void largerIsNeverSmaller(double width, double height) {
    Cutting.Uncut uncut = Cutting.Uncut.of(List.of(part(0)));
    double before = 0;
    for (double scale = 0.75; scale <= 2; scale += 0.25) {
      SheetFit fit = Fitting.of(uncut, new SheetPage(width, height, scale, List.of(1), 0));
      assertThat(fit.space()).as("at %.2f", scale).isGreaterThanOrEqualTo(before - 0.2);
      assertThat(fit.height(List.of(1))).isLessThanOrEqualTo(height + 0.1);
      before = fit.space();
    }
  }

  /** As in a printed part: no more paper is left below the last line than between two. */
  @ParameterizedTest
  @CsvSource({"1812, 800", "1258, 500", "916, 460", "1812, 400"})
  void aPageIsFilled(double width, double height) {
    for (String title : List.of("Threes over a blues", "Even eighths")) {
      ScoreSheet sheet =
          sheet(
              new ScoreSheet(List.of(List.of("")), new FittedPages(), WORDS),
              part(title, 0),
              1,
              width,
              height);
      double music = 0;
      double wide = 0;
      for (ScoreLine line : sheet.shown()) {
        SystemView staff = line.staves().get(0);
        music += staff.height();
        wide = Math.max(wide, staff.system().width() * staff.space());
      }
      assertThat(music / height).as(title).isGreaterThan(0.6);
      assertThat(wide / width).as(title).isGreaterThan(0.9);
    }
  }

  @Test
  void whatASmallPageCannotHoldIsMadeSmallerNotCutOff() {
    ScoreSheet sheet = sheet(2, 500, 260);
    SystemView first = first(sheet);
    assertThat(first.system().width() * first.space()).isLessThanOrEqualTo(500.5);
    assertThat(first.height()).isLessThanOrEqualTo(260.5);
  }

  /**
   * Up to four read from one screen, 64 bars each: no staff under 8 pixels, as many parts on a page
   * as that allows, every player on one page or another; pages with as many parts are cut alike, so
   * that nothing jumps when one is turned to. Width and height are those of the music on a page of
   * the usual text size.
   */
  @ParameterizedTest
  @CsvSource({
    // drill, screen, music's width, height, pages of 1, 2, 3, 4 different parts
    "Threes over a blues, 1366x768, 1170, 480, 1, 1, 2, 2",
    "Threes over a blues, 1024x768, 830, 450, 1, 1, 2, 2",
    "Threes over a blues, 1920x1080, 1720, 800, 1, 1, 1, 2",
    "Even eighths, 1366x768, 1170, 480, 1, 1, 1, 1",
    "Even eighths, 1024x768, 830, 450, 1, 1, 1, 2",
    "Even eighths, 1920x1080, 1720, 800, 1, 1, 1, 1"
  })
  void severalReadAtEightPixelsAndMore(
      String drill,
      String screen,
      double width,
      double height,
      int one,
      int two,
      int three,
      int four) {
    List<Integer> pages = List.of(one, two, three, four);
    for (int chairs = 1; chairs <= 4; chairs++) {
      Map<Integer, List<Double>> cuts = new HashMap<>();
      List<WrittenPart> parts = new ArrayList<>();
      for (int chair = 0; chair < chairs; chair++) {
        parts.add(part(drill, chair));
      }
      ReaderPages made = new ReaderPages(new FittedPages());
      made.readers(chairs);
      made.fit(parts, width, height, 1);
      List<Integer> seen = new ArrayList<>();
      int turned = 0;
      do {
        Beside on = Beside.of(made.shown(), parts);
        List<Beside> alike =
            on.alike(made.others().stream().map(page -> Beside.of(page, parts)).toList());
        double music = width - ScoreSheet.margin(on.parts().size(), 1);
        SheetFit fit =
            Fitting.of(uncut(on, alike), new SheetPage(music, height, 1, on.lanes(alike), 0));
        StaffSystem first = fit.lines().get(0).get(0);
        List<Double> cut = new ArrayList<>(first.barLines());
        cut.addAll(List.of(fit.space(), first.firstX(), first.stepWidth()));
        cut.addAll(fit.staves(on.lanes(alike)));
        assertThat(cuts.computeIfAbsent(on.parts().size(), size -> cut))
            .as("turned to")
            .isEqualTo(cut);
        assertThat(fit.space())
            .as("%d chairs on %s", chairs, screen)
            .isGreaterThanOrEqualTo(chairs == 1 ? 8 : 7.99);
        assertThat(fit.lines().get(0).get(0).width() * fit.space())
            .isLessThanOrEqualTo(music + 0.5);
        made.shown().forEach(seen::addAll);
        turned++;
        made.turn(1);
      } while (made.several() && !made.shown().get(0).contains(0));
      assertThat(seen).doesNotHaveDuplicates().hasSize(chairs);
      assertThat(turned).as("pages of %d on %s", chairs, screen).isEqualTo(pages.get(chairs - 1));
    }
  }

  /** Spelled together with the pages that are cut alike. */
  private static Cutting.Uncut uncut(Beside page, List<Beside> alike) {
    List<List<WrittenPart>> pages = new ArrayList<>(List.of(page.parts()));
    alike.forEach(other -> pages.add(other.parts()));
    return Cutting.Uncut.led(
        pages, Cutting.Uncut.leading(pages.stream().flatMap(List::stream).toList()));
  }

  /** As in a printed score: one place for a beat, one for a bar line, names beside their staves. */
  @ParameterizedTest
  @CsvSource({"1258, 700", "1720, 900", "916, 620"})
  void theStavesOfAScoreStandUnderEachOther(double width, double height) {
    ScoreSheet sheet =
        new ScoreSheet(
            List.of(List.of("Ana"), List.of("Ben"), List.of("Cleo")), new FittedPages(), WORDS);
    WaitForAsyncUtils.waitForAsyncFx(
        10_000,
        () -> {
          ((Region) sheet.root()).resize(width, height);
          for (int staff = 0; staff < 3; staff++) {
            sheet.show(staff, part(staff), List.of());
          }
          sheet.bar(6);
          ((Parent) sheet.root()).layout();
        });
    ScoreLine line = sheet.shown().get(0);
    assertThat(line.staves()).hasSize(3);
    StaffSystem first = line.staves().get(0).system();
    double above = 0;
    for (int staff = 0; staff < 3; staff++) {
      SystemView view = line.staves().get(staff);
      for (int step = first.firstStep(); step < first.firstStep() + first.steps(); step++) {
        assertThat(view.system().xOf(step)).isEqualTo(first.xOf(step));
      }
      assertThat(view.system().barLines()).isEqualTo(first.barLines());
      assertThat(view.space()).isEqualTo(line.staves().get(0).space());
      Bounds on = view.root().getBoundsInParent();
      assertThat(on.getMinY()).as("below the staff before").isGreaterThanOrEqualTo(above - 1);
      above = on.getMaxY();
      String name = List.of("Ana", "Ben", "Cleo").get(staff);
      Node label =
          line.root().lookupAll(".strong").stream()
              .filter(node -> ((Label) node).getText().equals(name))
              .findFirst()
              .orElseThrow();
      Bounds at = line.root().sceneToLocal(label.localToScene(label.getBoundsInLocal()));
      assertThat((at.getMinY() + at.getMaxY()) / 2)
          .as("%s beside the staff", name)
          .isCloseTo(line.staffY(staff), within(2.0));
      assertThat(at.getMaxX()).isLessThan(view.root().getLayoutX());
    }
    Line join = (Line) line.root().lookup("Line");
    double left = join.getStartX() - join.getStrokeWidth() / 2;
    assertThat(List.of(left, join.getStrokeWidth(), join.getStartY(), join.getEndY()))
        .as("what joins the staves covers whole pixels")
        .allSatisfy(edge -> assertThat(edge).isCloseTo(Math.rint(edge), within(1e-6)));
    assertThat(join.getEndY() - join.getStartY())
        .as("from the first staff to the last")
        .isCloseTo(line.staffY(2) - line.staffY(0) + 4 * first(sheet).space(), within(4.0));
  }

  @ParameterizedTest
  @CsvSource({"1812, 820", "1812, 900", "1258, 900"})
  void stavesOfALineStandEvenlyApart(double width, double height) {
    ScoreLine line = score(List.of(0, 1, 2, 3), List.of(), width, height).shown().get(0);
    double apart = line.staffY(1) - line.staffY(0);
    for (int staff = 2; staff < 4; staff++) {
      assertThat(line.staffY(staff) - line.staffY(staff - 1)).isCloseTo(apart, within(1.0));
    }
  }

  /** With two parts each, and with two and one. */
  @ParameterizedTest
  @CsvSource({"1272, 500, 4", "930, 460, 4", "1272, 500, 3", "930, 460, 3"})
  void whatIsTurnedToHasStavesAsLargeAndTheClickInItsPlace(
      double width, double height, int players) {
    List<Integer> first = List.of(0, 1);
    List<Integer> second = IntStream.range(2, players).boxed().toList();
    ScoreSheet one = score(first, List.of(second), width, height);
    ScoreSheet other = score(second, List.of(first), width, height);
    assertThat(first(other).space()).isEqualTo(first(one).space());
    assertThat(one.shown().get(0).bars().firstBar()).isZero();
    assertThat(other.shown().get(0).root().lookup(".strong"))
        .as("named where it stands alone too")
        .isNotNull();
    if (players == 4) {
      assertThat(clickAt(other)).isCloseTo(clickAt(one), within(1.0));
    }
  }

  /** Where the click's line of the first line stands, pixels from the page's top. */
  private static double clickAt(ScoreSheet sheet) {
    ScoreLine line = sheet.shown().get(0);
    SystemView view = line.staves().get(0);
    return line.root().getLayoutY() + line.head() + view.system().clickY() * view.space();
  }

  @Test
  void musicIsDrawnOnThePixelsOfTheScreenItsWindowHasBeenMovedTo() {
    ScoreSheet sheet = sheet(1, 1_040, 560);
    WaitForAsyncUtils.waitForAsyncFx(
        10_000,
        () -> {
          javafx.stage.Stage stage = new javafx.stage.Stage();
          stage.setScene(new Scene((Parent) sheet.root(), 1_040, 560));
          stage.show();
          for (double scale : List.of(1.5, 1.25, 2.0)) {
            stage.setRenderScaleY(scale);
            assertThat(first(sheet).pixels().each()).isEqualTo(scale);
            double top = first(sheet).staffTop() * scale;
            assertThat(top).as("at %s", scale).isCloseTo(Math.rint(top), within(1e-6));
          }
          stage.getScene().setRoot(new Group());
          assertThat(first(sheet).pixels().each()).as("out of the window").isEqualTo(2);
          stage.close();
        });
  }

  /** A page of the parts of some players, beside pages of others. */
  private static ScoreSheet score(
      List<Integer> players, List<List<Integer>> beside, double width, double height) {
    List<WrittenPart> parts = IntStream.range(0, 4).mapToObj(ScoreSheetTest::part).toList();
    ScoreSheet sheet =
        new ScoreSheet(
            players.stream().map(player -> List.of("" + player)).toList(),
            new FittedPages(),
            WORDS);
    WaitForAsyncUtils.waitForAsyncFx(
        10_000,
        () -> {
          ((Region) sheet.root()).resize(width, height);
          for (int staff = 0; staff < players.size(); staff++) {
            sheet.show(staff, parts.get(players.get(staff)), List.of());
          }
          sheet.beside(
              beside.stream()
                  .map(page -> Beside.of(page.stream().map(List::of).toList(), parts))
                  .toList(),
              List.of());
          ((Parent) sheet.root()).layout();
        });
    return sheet;
  }

  @Test
  void aPageThatIsTurnedSaysSoBetweenItsHalves() {
    ScoreSheet sheet = sheet(1, 1_040, 560);
    PageTurn.Line lower = sheet.shown().get(1).bars();
    assertThat(turnSays(sheet)).isNull();
    WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.bar(lower.firstBar() + lower.bars() - 1));
    ScoreLine above = sheet.shown().get(0);
    assertThat(above.bars().firstBar()).isGreaterThan(lower.firstBar());
    Text says = turnSays(sheet);
    assertThat(says).isNotNull();
    assertThat(says.getText())
        .isEqualTo(WORDS.say("stand.turn.above", above.bars().firstBar() + 1));
    assertThat(((Text) sheet.root().lookup("#turn-reminds")).getText())
        .as("what clicks below, where the words above are those of what comes")
        .isEqualTo("(click on all beats)");
    Bounds band = says.getParent().lookup("Rectangle").getBoundsInParent();
    ScoreLine below = sheet.shown().get(1);
    SystemView upper = above.staves().get(0);
    double bracket = above.head() + upper.height();
    double foot = above.root().getLayoutY() + bracket;
    double head = below.root().getLayoutY() + below.head();
    assertThat(band.getMinY()).isGreaterThan(foot);
    assertThat(head - band.getMaxY())
        .as("as much air below the band as above it")
        .isCloseTo(band.getMinY() - foot, within(1.5));
    Text letters = new Text(says.getText());
    letters.setFont(says.getFont());
    letters.setBoundsType(TextBoundsType.VISUAL);
    double line = says.getLayoutBounds().getMinY() + says.getBaselineOffset();
    assertThat(line + letters.getLayoutBounds().getMinY())
        .as("tall letters clear of the upper line")
        .isGreaterThan(band.getMinY() + 1.5);
    assertThat(line + letters.getLayoutBounds().getMaxY())
        .as("deep letters clear of the lower line")
        .isLessThan(band.getMaxY() - 1.5);
    WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.bar(above.bars().firstBar() + 1));
    assertThat(turnSays(sheet)).isNull();
    assertThat(sheet.shown().get(1).bars().firstBar()).isGreaterThan(above.bars().firstBar());
  }

  @Test
  void aPageIsTurnedByHandWhileNoTakeRunsAndStaysWhereATakeEnded() {
    ScoreSheet sheet = sheet(1, 1_040, 560);
    int pages = sheet.leafProperty().get().pages();
    assertThat(pages).isGreaterThan(2);
    WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.leaf(1));
    assertThat(sheet.leafProperty().get().page()).isEqualTo(1);
    WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.bar(-1));
    assertThat(sheet.leafProperty().get().page()).as("a take begins").isZero();
    WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.bar(40));
    int at = sheet.leafProperty().get().page();
    WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.leaf(1));
    assertThat(sheet.leafProperty().get().page()).as("a take runs").isEqualTo(at);
    WaitForAsyncUtils.waitForAsyncFx(10_000, sheet::rest);
    assertThat(sheet.leafProperty().get().page()).isEqualTo(at);
    assertThat(shows(sheet, 40)).isTrue();
    WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.leaf(99));
    assertThat(sheet.leafProperty().get().page()).isEqualTo(pages - 1);
  }

  /** Two lines a page, and one whose last bar is the first of the next page. */
  @ParameterizedTest
  @CsvSource({"1, 1040, 560, 0", "2, 1040, 420, 1"})
  void everyPageSaysWhichBarsOfSixtyFourItHas(double scale, int width, int height, int shared) {
    ScoreSheet sheet = sheet(scale, width, height);
    int next = 0;
    for (int page = 0; page < sheet.leafProperty().get().pages(); page++) {
      Leaf leaf = sheet.leafProperty().get();
      assertThat(leaf.page()).isEqualTo(page);
      assertThat(leaf.bars()).isEqualTo(64);
      assertThat(leaf.endBar()).isGreaterThan(leaf.firstBar());
      assertThat(IntStream.range(leaf.firstBar(), leaf.endBar()))
          .allMatch(bar -> shows(sheet, bar));
      assertThat(shows(sheet, leaf.firstBar() - 1)).isFalse();
      assertThat(shows(sheet, leaf.endBar())).isFalse();
      if (leaf.last()) {
        assertThat(leaf.firstBar()).isLessThanOrEqualTo(next);
        assertThat(leaf.endBar()).isEqualTo(64);
      } else {
        assertThat(leaf.firstBar()).isEqualTo(next);
        next = leaf.endBar() - shared;
      }
      WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.leaf(1));
    }
  }

  /**
   * The eye finds the beats in the same place below every line of the part, and the staves on every
   * page where they were on the one before: at the size of the music in usual windows.
   */
  @ParameterizedTest
  @CsvSource({"1040, 560", "927, 471", "1272, 500", "1812, 800"})
  void theRulerStandsAsFarBelowEveryLine(double width, double height) {
    ScoreSheet sheet = sheet(1, width, height);
    double first = rulerBelow(sheet.shown().get(0));
    List<Double> staves = staves(sheet);
    assertThat(staves).hasSizeGreaterThanOrEqualTo(2);
    for (int page = 0; page < sheet.leafProperty().get().pages(); page++) {
      for (ScoreLine line : sheet.shown()) {
        assertThat(rulerBelow(line)).isEqualTo(first);
      }
      assertThat(staves(sheet)).as("page %d", page + 1).isEqualTo(staves);
      WaitForAsyncUtils.waitForAsyncFx(10_000, () -> sheet.leaf(1));
    }
  }

  /** Where the staves of a page stand, pixels from its top. */
  private static List<Double> staves(ScoreSheet sheet) {
    return sheet.shown().stream()
        .map(line -> (double) Math.round(line.root().getLayoutY() + line.staffY(0)))
        .toList();
  }

  private static double rulerBelow(ScoreLine line) {
    StaffSystem system = line.staves().get(0).system();
    return Math.round(100 * (system.rulerY() - system.staffY())) / 100.0;
  }

  /** Turned to from the score on which four stand, at the sizes of usual windows. */
  @ParameterizedTest
  @CsvSource({"1272, 500", "930, 460", "1812, 820"})
  void aPartAloneIsNoSmallerThanInTheScore(double width, double height) {
    WrittenPart part = part(0);
    List<WrittenPart> four = List.of(part, part, part, part);
    ReaderPages pages = new ReaderPages(new FittedPages());
    pages.readers(4);
    pages.fit(four, width, height, 1);
    assertThat(pages.shown()).as("all read one line").hasSize(1);
    ScoreSheet all =
        sheet(
            new ScoreSheet(List.of(List.of("A", "B", "C", "D")), new FittedPages(), WORDS),
            part,
            1,
            width,
            height);
    ScoreSheet alone =
        sheet(
            new ScoreSheet(List.of(List.of("A")), new FittedPages(), WORDS),
            part,
            1,
            width,
            height);
    pages.choose(0);
    List<Beside> score = pages.score().stream().map(lines -> Beside.of(lines, four)).toList();
    WaitForAsyncUtils.waitForAsyncFx(10_000, () -> alone.beside(List.of(), score));
    assertThat(first(alone).space()).isGreaterThanOrEqualTo(first(all).space() - 0.01);
  }

  @Test
  void whoReadsTheSameLineReadsItTogetherWithMarksInALaneEach() {
    List<WrittenPart> parts = List.of(part(0), part(1), part(0));
    assertThat(ChairPages.lines(parts)).containsExactly(List.of(0, 2), List.of(1));
    ScoreSheet together =
        sheet(
            new ScoreSheet(List.of(List.of("Ana", "Ben")), new FittedPages(), WORDS),
            part(0),
            1,
            1_040,
            560);
    double one = first(sheet(1, 1_040, 560)).system().height();
    SystemView line = first(together);
    assertThat(line.height() / line.space()).as("a lane more").isCloseTo(one + 5.7, within(1.0));
    WaitForAsyncUtils.waitForAsyncFx(
        10_000,
        () -> {
          together.marks(0, 0, 0, List.of(new BarMark(Kind.PLACED, 2, 0, 0)));
          together.marks(0, 1, 0, List.of(new BarMark(Kind.EARLY, 2, -30, -0.12)));
        });
    assertThat(spoken(line)).containsExactly("Ana: bar 1, placed", "Ben: bar 1, early 30 ms");
    WaitForAsyncUtils.waitForAsyncFx(10_000, () -> together.clearMarks(0, 0));
    assertThat(spoken(line)).containsExactly("Ben: bar 1, early 30 ms");
  }

  @Test
  void largerTextPagesEarlierAndAKeyTurnsRoundAndRound() {
    List<WrittenPart> parts = List.of(part(0), part(1), part(2), part(3));
    ReaderPages pages = new ReaderPages(new FittedPages());
    pages.readers(4);
    pages.fit(parts, 1_720, 900, 1.5);
    assertThat(pages.shown()).containsExactly(List.of(0), List.of(1));
    assertThat(pages.elsewhere(pages.shown())).containsExactly(2, 3);
    pages.turn(1);
    assertThat(pages.shown()).containsExactly(List.of(2), List.of(3));
    pages.fit(parts, 1_720, 900, 1);
    assertThat(pages.shown()).as("all fit for a moment").hasSize(4);
    pages.fit(parts, 1_720, 900, 1.5);
    assertThat(pages.shown()).as("as it was").containsExactly(List.of(2), List.of(3));
    pages.turn(-1);
    assertThat(pages.shown()).containsExactly(List.of(0), List.of(1));
    pages.fit(parts, 1_720, 900, 1);
    assertThat(pages.shown()).as("all fit again").hasSize(4);
    pages.turn(1);
    assertThat(pages.shown()).as("then each alone").containsExactly(List.of(0));
    pages.turn(-1);
    assertThat(pages.shown()).hasSize(4);
  }

  @ParameterizedTest
  @EnumSource(Palette.class)
  void thirtyMillisEarlyHasAFootToTheLeftInTheColourOfEarly(Palette palette) {
    StaffSystem system = first(sheet(1, 1_040, 560)).system();
    Path early = shape(new BarMark(Kind.EARLY, 2, -30, -0.12), system, palette);
    Path late = shape(new BarMark(Kind.LATE, 2, 30, 0.12), system, palette);
    assertThat(foot(early)).isNegative();
    assertThat(foot(late)).isPositive();
    assertThat(early.getStroke()).isEqualTo(Color.web(Palette.web(palette.early())));
    assertThat(late.getStroke()).isEqualTo(Color.web(Palette.web(palette.late())));
    double written = system.xOf(2) * 10;
    double tick = ((MoveTo) early.getElements().get(0)).getX();
    assertThat(tick).isLessThan(written);
    assertThat(tick)
        .as("its true place, to half a pixel")
        .isCloseTo(written - 0.12 * system.stepWidth() * 10, within(0.5));
    assertThat(early.getStrokeWidth()).isEqualTo(2);
    assertThat((tick - 1) % 1).as("covers whole pixels").isZero();
    assertThat(
            SpokenLine.of(
                0, List.of(new BarMark(Kind.EARLY, 2, -30, -0.12)), SheetWords.in(Locale.ENGLISH)))
        .isEqualTo("bar 1, early 30 ms");
  }

  private static Path shape(BarMark mark, StaffSystem system, Palette palette) {
    Node marks = MarkShapes.of(List.of(mark), system, palette, 10, DevicePixels.ALIKE);
    return (Path) ((Group) marks).getChildren().get(0);
  }

  /** How far the foot reaches beside the tick; negative to the left. */
  private static double foot(Path path) {
    LineTo down = (LineTo) path.getElements().get(1);
    LineTo end = (LineTo) path.getElements().get(2);
    return end.getX() - down.getX();
  }

  private static boolean shows(ScoreSheet sheet, int bar) {
    return sheet.shown().stream().anyMatch(line -> line.staves().get(0).has(bar));
  }

  private static ScoreSheet sheet(double scale, double width, double height) {
    return sheet(
        new ScoreSheet(List.of(List.of("")), new FittedPages(), WORDS),
        part(0),
        scale,
        width,
        height);
  }

  private static SystemView first(ScoreSheet sheet) {
    return sheet.shown().get(0).staves().get(0);
  }

  /** The words of the rule between two halves of a page; null where none is seen. */
  private static @Nullable Text turnSays(ScoreSheet sheet) {
    return sheet.root().lookup("#turn-says") instanceof Text text && text.getParent().isVisible()
        ? text
        : null;
  }

  private static WrittenPart part(int later) {
    return part("Threes over a blues", later);
  }

  /** A drill's first chair, entered so many steps later. */
  private static WrittenPart part(String title, int later) {
    Drill drill = Stock.find(title).withStages(BARS_64);
    Drill.Chair chair = drill.chairs().get(0);
    return PartWriter.write(
        drill,
        new Drill.Chair(
            chair.chair(),
            chair.role(),
            chair.cell(),
            chair.entryStep() + later,
            chair.line(),
            chair.feelMillis(),
            chair.instrument(),
            chair.free()),
        100,
        "");
  }

  private static List<String> spoken(SystemView line) {
    return WaitForAsyncUtils.waitForAsyncFx(
        10_000,
        () ->
            line.root().lookupAll("*").stream()
                .map(Node::getAccessibleText)
                .filter(said -> said != null && said.contains(": bar"))
                .toList());
  }

  private static ScoreSheet sheet(
      ScoreSheet sheet, WrittenPart part, double scale, double width, double height) {
    return WaitForAsyncUtils.waitForAsyncFx(
        10_000,
        () -> {
          sheet.dress(Palette.LIGHT, scale);
          ((Region) sheet.root()).resize(width, height);
          sheet.show(0, part, List.of());
          return sheet;
        });
  }
}
