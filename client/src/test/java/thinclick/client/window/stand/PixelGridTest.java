package thinclick.client.window.stand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import javafx.scene.SnapshotParameters;
import javafx.scene.canvas.Canvas;
import javafx.scene.image.PixelReader;
import javafx.scene.paint.Color;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.window.look.Faces;
import thinclick.client.window.look.Palette;
import thinclick.protocol.file.Drill;
import thinclick.server.engraving.Engraver;
import thinclick.server.engraving.Ink;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Reading;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.material.PartWriter;
import thinclick.server.material.Stock;

/** Music on the pixels of a screen: by sums, and by what is painted. */
class PixelGridTest {
  private static final List<String> DRILLS =
      List.of("Threes over a blues", "Hocket in sixteenths", "Middle triplet", "Six-eight fives");

  @ParameterizedTest
  @CsvSource({
    "8, 1",
    "9, 1",
    "10.4, 1",
    "12, 1",
    "12.4, 1.25",
    "15, 1.5",
    "8.7, 2",
    "17.3, 1",
    "28, 1"
  })
  void everyStraightLineCoversWholePixelsAndTheSpacesOfAStaffAreEqual(double space, double device) {
    double unit = space * device;
    for (String drill : DRILLS) {
      StaffSystem system = system(drill);
      List<Mark> fitted = new PixelGrid(space, device).fit(system.marks());
      assertThat(fitted).hasSameSizeAs(system.marks());
      for (int i = 0; i < fitted.size(); i++) {
        if (fitted.get(i) instanceof Mark.Line line) {
          double before = ((Mark.Line) system.marks().get(i)).thickness() * unit;
          double across = line.thickness() * unit;
          assertThat(across).isGreaterThanOrEqualTo(0.999).isCloseTo(before, within(1.0));
          double edge = (line.x1() == line.x2() ? line.box().left() : line.box().top()) * unit;
          whole(edge, line);
          whole(across, line);
          whole(line.x1() == line.x2() ? line.y1() * unit : line.x1() * unit, line);
          whole(line.x1() == line.x2() ? line.y2() * unit : line.x2() * unit, line);
        }
      }
      List<Double> staff =
          fitted.stream()
              .filter(mark -> mark instanceof Mark.Line line && through(line))
              .map(mark -> ((Mark.Line) mark).y1() * unit)
              .sorted()
              .toList();
      double end =
          fitted.stream()
              .filter(mark -> mark instanceof Mark.Line line && through(line))
              .mapToDouble(mark -> ((Mark.Line) mark).x2() * unit)
              .max()
              .orElseThrow();
      assertThat(fitted)
          .as("nothing straight reaches beyond the last bar line")
          .noneMatch(mark -> mark instanceof Mark.Line line && line.x2() * unit > end + 0.5);
      for (int i = 2; i < staff.size(); i++) { // the first is the click's
        assertThat(staff.get(i) - staff.get(i - 1)).isCloseTo(Math.rint(unit), within(1e-6));
      }
    }
  }

  private static void whole(double pixels, Mark mark) {
    if (Math.abs(pixels - Math.rint(pixels)) > 1e-6) {
      throw new AssertionError(pixels + " pixels at " + mark);
    }
  }

  private static boolean through(Mark.Line line) {
    return line.y1() == line.y2() && line.ink() == Ink.FULL && line.place().bar() < 0;
  }

  @ParameterizedTest
  @CsvSource({"8, 1", "10.4, 1", "12, 1", "12.4, 1.25", "17.3, 1"})
  void stemMeetsItsHeadItsBeamAndABracketItsEnds(double space, double device) {
    StaffSystem system = system("Threes over a blues");
    List<Mark> laid = system.marks();
    List<Mark> fitted = new PixelGrid(space, device).fit(laid);
    int met = 0;
    for (int i = 0; i < laid.size(); i++) {
      for (int j = 0; j < laid.size(); j++) {
        if (laid.get(i) instanceof Mark.Line upright
            && laid.get(j) instanceof Mark.Sign sign
            && upright.x1() == upright.x2()
            && upright.ink() == Ink.FULL
            && upright.place().step() == sign.place().step()
            && sign.glyph().name().startsWith("NOTEHEAD")) {
          met += sameEdge(laid, fitted, i, j);
        } else if (laid.get(i) instanceof Mark.Line upright
            && laid.get(j) instanceof Mark.Line level
            && upright.x1() == upright.x2()
            && level.y1() == level.y2()
            && level.place().step() == upright.place().step()
            && level.ink() == upright.ink()) {
          met += sameEdge(laid, fitted, i, j);
        }
      }
    }
    assertThat(met).isGreaterThan(70);
  }

  /** Edges that are one in the layout are one on the screen. */
  private static int sameEdge(List<Mark> laid, List<Mark> fitted, int one, int other) {
    int met = 0;
    if (Math.abs(laid.get(one).box().left() - laid.get(other).box().left()) < 1e-9) {
      assertThat(fitted.get(one).box().left())
          .as("%s", laid.get(other))
          .isCloseTo(fitted.get(other).box().left(), within(1e-6));
      met++;
    }
    if (Math.abs(laid.get(one).box().right() - laid.get(other).box().right()) < 1e-9) {
      assertThat(fitted.get(one).box().right())
          .as("%s", laid.get(other))
          .isCloseTo(fitted.get(other).box().right(), within(1e-6));
      met++;
    }
    return met;
  }

  @Test
  void nothingMovesByMoreThanAPixelWhereASpaceIsWholePixels() {
    StaffSystem system = system("Threes over a blues");
    List<Mark> fitted = new PixelGrid(12, 1).fit(system.marks());
    for (int i = 0; i < fitted.size(); i++) {
      assertThat(fitted.get(i).box().left() * 12)
          .isCloseTo(system.marks().get(i).box().left() * 12, within(1.01));
      assertThat(fitted.get(i).box().top() * 12)
          .isCloseTo(system.marks().get(i).box().top() * 12, within(1.01));
    }
  }

  /** A line that is thinner than a pixel, or lies between two, is paler than its ink. */
  @ParameterizedTest
  @EnumSource(Palette.class)
  void bracketsRulerAndStaffArePaintedInTheirFullInk(Palette palette) throws Exception {
    FxToolkit.registerPrimaryStage();
    WaitForAsyncUtils.waitForAsyncFx(10_000, Faces::load);
    for (double space : new double[] {8, 10.4, 12, 21}) {
      StaffSystem system = system("Threes over a blues");
      PixelReader painted =
          WaitForAsyncUtils.waitForAsyncFx(
              10_000, () -> painted(system, palette, space).getPixelReader());
      PixelGrid grid = new PixelGrid(space, 1);
      int brackets = 0;
      for (Mark mark : grid.fit(system.marks())) {
        if (mark instanceof Mark.Line line
            && line.y1() == line.y2()
            && !line.dotted()
            && line.x2() * space < system.width() * space - 2) {
          Color ink =
              Color.web(Palette.web(line.ink() == Ink.RULE ? palette.rule() : palette.ink()));
          int y = (int) Math.rint(line.box().top() * space);
          int x = (int) Math.rint(line.x1() * space) + 2;
          if (line.ink() == Ink.RULE) {
            brackets++;
            assertThat(painted.getColor(x, y)).as("%s at %s", line, space).isEqualTo(ink);
            Color above = painted.getColor(x, y - 1);
            assertThat(above).isEqualTo(Color.web(Palette.web(palette.sheet())));
          }
        }
      }
      assertThat(brackets).isGreaterThan(8);
    }
  }

  private static javafx.scene.image.Image painted(
      StaffSystem system, Palette palette, double space) {
    Canvas canvas =
        new Canvas(Math.ceil(system.width() * space) + 1, Math.ceil(system.height() * space) + 1);
    new MarkPainter(canvas.getGraphicsContext2D(), palette, space, DevicePixels.ALIKE)
        .draw(system.marks());
    SnapshotParameters on = new SnapshotParameters();
    on.setFill(Color.web(Palette.web(palette.sheet())));
    return canvas.snapshot(on, null);
  }

  private static StaffSystem system(String title) {
    Drill drill = Stock.find(title);
    Reading reading = DealtPart.reading(PartWriter.write(drill, drill.chairs().get(0), 100, ""), 4);
    return Engraver.systems(reading.part(), reading.plans(), 105).get(0);
  }
}
