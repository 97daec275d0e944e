package thinclick.client.window.stand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.shape.LineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.window.look.Faces;
import thinclick.client.window.look.Palette;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Stage;
import thinclick.server.engraving.Box;
import thinclick.server.engraving.Engraver;
import thinclick.server.engraving.Ink;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Reading;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.material.PartWriter;
import thinclick.server.material.Stock;
import thinclick.server.material.WrittenPart;

/** The bracket under the bar that sounds, against the bar lines that are painted above it. */
class BarBracketTest {
  @BeforeAll
  static void toolkit() throws Exception {
    FxToolkit.registerPrimaryStage();
    WaitForAsyncUtils.waitForAsyncFx(10_000, Faces::load);
  }

  @ParameterizedTest
  @ValueSource(doubles = {8, 10.4, 12, 24})
  void bracketReachesFromBarLineToBarLineToThePixel(double space) {
    Drill drill = Stock.find("Threes over a blues").withStages(List.of(Stage.ofBeats(4, 1, 1)));
    WrittenPart part = PartWriter.write(drill, drill.chairs().get(0), 100, "");
    Reading reading = DealtPart.reading(part, 4);
    StaffSystem system = Engraver.systems(reading.part(), reading.plans(), 105).get(0);
    SystemView view =
        WaitForAsyncUtils.waitForAsyncFx(
            10_000,
            () ->
                new SystemView(
                    system,
                    part,
                    List.of(""),
                    List.of(),
                    Palette.LIGHT,
                    space,
                    TitleSize.pixels(1),
                    DevicePixels.ALIKE));
    List<Mark> painted = new PixelGrid(space, 1).fit(system.marks());
    for (int bar = 0; bar < 4; bar++) {
      int now = bar;
      WaitForAsyncUtils.waitForAsyncFx(10_000, () -> view.bar(now));
      Path bracket = bracket(view);
      double half = bracket.getStrokeWidth() / 2;
      double left = ((MoveTo) bracket.getElements().get(0)).getX() - half;
      double right = ((LineTo) bracket.getElements().get(3)).getX() + half;
      if (bar > 0) {
        assertThat(left).isCloseTo(line(painted, bar, system, false) * space, within(1e-6));
      }
      assertThat(right).isCloseTo(line(painted, bar + 1, system, true) * space, within(1e-6));
      double foot = ((LineTo) bracket.getElements().get(1)).getY();
      assertThat(foot - half).as("on the grid").isCloseTo(Math.rint(foot - half), within(1e-6));
    }
  }

  @Test
  void bracketOfTheFirstBarKeepsClearOfTheNamesBesideTheLanes() {
    Drill drill = Stock.find("Threes over a blues").withStages(List.of(Stage.ofBeats(12, 1, 1)));
    WrittenPart part = PartWriter.write(drill, drill.chairs().get(0), 100, "");
    Reading reading = DealtPart.reading(part, 2);
    for (StaffSystem system : Engraver.systems(reading.part(), reading.plans(), 75)) {
      SystemView view =
          WaitForAsyncUtils.waitForAsyncFx(
              10_000,
              () -> {
                SystemView made =
                    new SystemView(
                        system,
                        part,
                        List.of("Ana", "Dara"),
                        List.of(),
                        Palette.LIGHT,
                        10,
                        TitleSize.pixels(1),
                        DevicePixels.ALIKE);
                made.bar(system.firstBar());
                return made;
              });
      Path bracket = bracket(view);
      double left = ((MoveTo) bracket.getElements().get(0)).getX() - bracket.getStrokeWidth() / 2;
      List<Mark> names = view.lanes().stream().filter(Mark.Text.class::isInstance).toList();
      List<Mark> lines = view.lanes().stream().filter(Mark.Line.class::isInstance).toList();
      assertThat(names).hasSize(2);
      assertThat(lines).as("a line beside each name").hasSize(2);
      for (int lane = 0; lane < 2; lane++) {
        assertThat(names.get(lane).box().right() * 10)
            .as("line from bar %d", system.firstBar() + 1)
            .isLessThan(left - 3);
        Box line = lines.get(lane).box();
        assertThat(line.left()).isGreaterThan(names.get(lane).box().right());
        assertThat(line.right())
            .isCloseTo(system.xOf(system.firstStep() + system.steps() - 1.0), within(0.1));
        assertThat(line.bottom() * 10).as("above the bracket").isLessThan(ends(bracket) - 1);
      }
    }
  }

  /** How far up its ends reach, pixels from the line's top. */
  private static double ends(Path bracket) {
    return ((MoveTo) bracket.getElements().get(0)).getY();
  }

  private static Path bracket(SystemView view) {
    for (Node node : view.root().lookupAll("*")) {
      if (node instanceof Path path && path.isVisible() && path.getElements().size() == 4) {
        return path;
      }
    }
    throw new AssertionError("no bracket");
  }

  /** An edge of the painted line that ends so many bars, nearest to where the layout has it. */
  private static double line(List<Mark> painted, int line, StaffSystem system, boolean right) {
    double x = system.barLines().get(line);
    return painted.stream()
        .filter(
            mark ->
                mark instanceof Mark.Line one
                    && one.ink() == Ink.FULL
                    && one.x1() == one.x2()
                    && one.y2() - one.y1() > 3.9
                    && one.y1() < system.staffY()
                    && one.y2() > system.staffY())
        .mapToDouble(mark -> right ? mark.box().right() : mark.box().left())
        .reduce((one, other) -> Math.abs(one - x) < Math.abs(other - x) ? one : other)
        .orElseThrow();
  }
}
