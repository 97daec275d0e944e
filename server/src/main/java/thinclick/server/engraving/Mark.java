package thinclick.server.engraving;

import java.util.List;

/**
 * One thing drawn on a page. Lengths are staff spaces, x to the right, y downward; a staff space is
 * a quarter of the distance between the outer lines of a staff.
 *
 * <p>The same marks are drawn on the screen, as SVG and as PDF.
 */
public sealed interface Mark {
  /** Where in the music it stands and how it is said. */
  Place place();

  /** What it is drawn with. */
  Ink ink();

  /** The same mark elsewhere. */
  Mark shifted(double dx, double dy);

  /** The rectangle it covers; for text as wide as the layout takes it to be. */
  Box box();

  /**
   * A music sign of Bravura. Drawn as text its font size is {@code 4 * scale} staff spaces.
   *
   * @param x the sign's origin, at its left
   * @param y its baseline
   * @param scale 1 for full size
   */
  record Sign(Place place, Ink ink, Glyph glyph, double x, double y, double scale) implements Mark {
    @Override
    public Sign shifted(double dx, double dy) {
      return new Sign(place, ink, glyph, x + dx, y + dy, scale);
    }

    @Override
    public Box box() {
      return new Box(
          x + glyph.left() * scale,
          y - glyph.top() * scale,
          x + glyph.right() * scale,
          y - glyph.bottom() * scale);
    }
  }

  /**
   * A straight line with square ends.
   *
   * @param thickness its width across
   * @param dotted true for a row of dots
   */
  record Line(
      Place place,
      Ink ink,
      double x1,
      double y1,
      double x2,
      double y2,
      double thickness,
      boolean dotted)
      implements Mark {
    /** The distance of the dots of a dotted line; each is as long as the line is thick. */
    public static final double DOT_PERIOD = 0.4;

    @Override
    public Line shifted(double dx, double dy) {
      return new Line(place, ink, x1 + dx, y1 + dy, x2 + dx, y2 + dy, thickness, dotted);
    }

    @Override
    public Box box() {
      double across = thickness / 2;
      boolean upright = x1 == x2;
      boolean level = y1 == y2;
      return new Box(
          Math.min(x1, x2) - (level ? 0 : across),
          Math.min(y1, y2) - (upright ? 0 : across),
          Math.max(x1, x2) + (level ? 0 : across),
          Math.max(y1, y2) + (upright ? 0 : across));
    }
  }

  /**
   * A filled shape bounded by curves, closed.
   *
   * @param x where it begins
   * @param y where it begins
   * @param curves the way round
   */
  record Shape(Place place, Ink ink, double x, double y, List<Curve> curves) implements Mark {
    public Shape {
      curves = List.copyOf(curves);
    }

    @Override
    public Shape shifted(double dx, double dy) {
      return new Shape(
          place, ink, x + dx, y + dy, curves.stream().map(c -> c.shifted(dx, dy)).toList());
    }

    @Override
    public Box box() {
      Box box = new Box(x, y, x, y);
      double fromX = x;
      double fromY = y;
      for (Curve curve : curves) {
        // the middle of a symmetric arc is its extreme; enough for ties
        double midX = (fromX + 3 * curve.x1() + 3 * curve.x2() + curve.x()) / 8;
        double midY = (fromY + 3 * curve.y1() + 3 * curve.y2() + curve.y()) / 8;
        box = box.with(new Box(midX, midY, midX, midY));
        box = box.with(new Box(curve.x(), curve.y(), curve.x(), curve.y()));
        fromX = curve.x();
        fromY = curve.y();
      }
      return box;
    }
  }

  /**
   * A cubic curve from where the last one ended.
   *
   * @param x1 first control point
   * @param y1 first control point
   * @param x2 second control point
   * @param y2 second control point
   * @param x its end
   * @param y its end
   */
  record Curve(double x1, double y1, double x2, double y2, double x, double y) {
    Curve shifted(double dx, double dy) {
      return new Curve(x1 + dx, y1 + dy, x2 + dx, y2 + dy, x + dx, y + dy);
    }
  }

  /**
   * A line of text.
   *
   * @param size the font size
   * @param x where it begins
   * @param y its baseline
   */
  record Text(Place place, Ink ink, String text, Face face, double size, double x, double y)
      implements Mark {
    private static final double ASCENT = 0.72;
    private static final double DESCENT = 0.22;

    @Override
    public Text shifted(double dx, double dy) {
      return new Text(place, ink, text, face, size, x + dx, y + dy);
    }

    /** How wide it is. */
    public double width() {
      return face.width(text, size);
    }

    @Override
    public Box box() {
      return new Box(x, y - ASCENT * size, x + width(), y + DESCENT * size);
    }
  }
}
