package thinclick.client.window.stand;

import java.util.List;
import thinclick.server.engraving.Mark;

/**
 * Marks moved onto the pixels of the device, as type is: lines cover whole pixels, the spaces of a
 * staff are equal, stems meet their heads, beams and brackets their ends. The layout itself stays
 * as it is; nothing moves by more than a pixel, but what stands far off a staff whose space is no
 * whole number of pixels.
 *
 * <p>Lengths are staff spaces, as the layout's; the result is for this size only.
 */
final class PixelGrid {
  /** An upright line is made thicker by a pixel from this part of one on, a level one from none. */
  private static final double THICKER_FROM = 0.7;

  private static final double NEARLY = 0.05;

  private final double unit;

  /**
   * A grid.
   *
   * @param space pixels of one staff space, as the window counts them
   * @param device pixels of the device in one of them
   */
  PixelGrid(double space, double device) {
    this.unit = space * device;
  }

  /**
   * How many pixels of the device a level line is thick, at least one. Between two thicknesses it
   * is the thinner: a staff has many, and a ledger line is to look like the staff's.
   */
  long down(double thickness) {
    return Math.max(1, (long) Math.floor(thickness * unit + NEARLY));
  }

  /** How many pixels of the device an upright line is thick, at least one. */
  long across(double thickness) {
    return Math.max(1, (long) Math.ceil(thickness * unit - THICKER_FROM));
  }

  /** The pixel at which an upright line begins. */
  long left(double middle, double thickness) {
    return Math.round((middle - thickness / 2) * unit);
  }

  /** The pixel at which the middle line of a staff begins. */
  long middle(double middle, double thickness) {
    return Math.round(middle * unit - down(thickness) / 2.0);
  }

  /** Where a staff of five lines is drawn: its uppermost pixel and the one after its lowest. */
  Edges staff(double middle, double thickness) {
    long line = middle(middle, thickness);
    long reach = 2 * Math.max(1, Math.round(unit));
    return new Edges(line - reach, line + down(thickness) + reach);
  }

  /** The uppermost pixel of what is drawn, and the one after its lowest. */
  record Edges(long top, long bottom) {}

  /** Pixels of the device in one staff space. */
  double unit() {
    return unit;
  }

  /** So many pixels of the device as staff spaces. */
  double spaces(double pixels) {
    return pixels / unit;
  }

  /** The marks of one canvas, whose corner lies on a pixel, in their order. */
  List<Mark> fit(List<Mark> marks) {
    return new PixelFit(this, marks).fitted();
  }
}
