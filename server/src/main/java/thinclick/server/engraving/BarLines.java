package thinclick.server.engraving;

import org.jspecify.annotations.Nullable;

/** Bar lines of a staff and of the click's own line. */
final class BarLines {
  /** The width of the sign that begins a repeat. */
  static final double REPEAT_WIDTH =
      Measure.THICK_BAR + Measure.BAR_GAP + Measure.THIN_BAR + 0.3 + 0.4;

  /** The room that is kept at the right end of a system that ends with a thick line. */
  static final double END_ROOM = REPEAT_WIDTH;

  private static final double DOT_AIR = 0.3;

  /** How far a bar line reaches above and below the click's line. */
  private static final double CLICK_HALF = 0.85;

  private final Sheet sheet;
  private final double halfHeight;
  private final @Nullable Double clickY;

  /**
   * @param clickY the click's line; null where it does not stand above this part
   */
  BarLines(Sheet sheet, StaffPart part, @Nullable Double clickY) {
    this.sheet = sheet;
    this.halfHeight = part.clef().lines() == 1 ? 1.25 : 2;
    this.clickY = clickY;
  }

  /** A single line; {@code x} is its middle. */
  void single(Place place, double x) {
    line(place, x, Measure.THIN_BAR);
  }

  /** The sign that begins a repeat, its right end at {@code x}. */
  void repeatFrom(Place place, double x) {
    double left = x - REPEAT_WIDTH;
    line(place, left + Measure.THICK_BAR / 2, Measure.THICK_BAR);
    double thin = left + Measure.THICK_BAR + Measure.BAR_GAP;
    line(place.silent(), thin + Measure.THIN_BAR / 2, Measure.THIN_BAR);
    dots(place.silent(), thin + Measure.THIN_BAR + DOT_AIR);
  }

  /** The sign that ends a repeat, its right end at {@code x}. */
  void repeatTo(Place place, double x) {
    end(place, x);
    double thin = x - Measure.THICK_BAR - Measure.BAR_GAP - Measure.THIN_BAR;
    dots(place.silent(), thin - DOT_AIR - Glyph.REPEAT_DOT.right());
  }

  /** The thin and the thick line at the end of a part, their right end at {@code x}. */
  void end(Place place, double x) {
    line(place, x - Measure.THICK_BAR / 2, Measure.THICK_BAR);
    double thin = x - Measure.THICK_BAR - Measure.BAR_GAP - Measure.THIN_BAR / 2;
    line(place.silent(), thin, Measure.THIN_BAR);
  }

  private void line(Place place, double x, double thickness) {
    sheet.rule(place, Ink.FULL, x, -halfHeight, x, halfHeight, thickness);
    if (clickY != null) {
      double half = CLICK_HALF;
      sheet.rule(place.silent(), Ink.FULL, x, clickY - half, x, clickY + half, thickness);
    }
  }

  /** The dots of a repeat, on the click's line too. */
  private void dots(Place place, double x) {
    for (double y : new double[] {-0.5, 0.5}) {
      sheet.addBehind(new Mark.Sign(place, Ink.FULL, Glyph.REPEAT_DOT, x, y, 1));
      if (clickY != null) {
        double scale = Measure.CLICK_SCALE;
        double middle = x + Glyph.REPEAT_DOT.right() * (1 - scale) / 2;
        double at = clickY + y * CLICK_HALF;
        sheet.addBehind(new Mark.Sign(place, Ink.FULL, Glyph.REPEAT_DOT, middle, at, scale));
      }
    }
  }
}
