package thinclick.server.picture;

import java.util.List;
import thinclick.server.engraving.Face;

/**
 * A drawing in its own units, a unit being a 96th of an inch; x to the right, y downward, the first
 * item at the bottom of the pile.
 *
 * @param width of the sheet
 * @param height of the sheet
 * @param title what it is, for those who cannot see it
 * @param says what it shows, in sentences, for the same
 * @param items what is drawn
 */
public record Drawing(double width, double height, String title, String says, List<Item> items) {
  /** What a page of paper leaves free on every side, of its width: 15 mm of A4. */
  private static final double FREE_ON_PAPER = 15.0 / 210;

  public Drawing {
    items = List.copyOf(items);
  }

  /** The same without the margin that is free on every side, for a page that has its own. */
  public Drawing trimmed(double margin) {
    return new Drawing(
        width - 2 * margin,
        height - 2 * margin,
        title,
        says,
        items.stream().map(item -> item.shifted(-margin, -margin)).toList());
  }

  /**
   * The same with the margin of a page of paper.
   *
   * @param margin what is free on every side already
   */
  public Drawing onPaper(double margin) {
    return trimmed((margin - FREE_ON_PAPER * width) / (1 - 2 * FREE_ON_PAPER));
  }

  /** Something drawn. */
  public sealed interface Item {
    /** Its colour. */
    Tint tint();

    /** The same at another place. */
    Item shifted(double dx, double dy);
  }

  /** A straight line; dashed where something is planned or missing. */
  public record Line(
      double x1, double y1, double x2, double y2, double thickness, boolean dashed, Tint tint)
      implements Item {
    @Override
    public Line shifted(double dx, double dy) {
      return new Line(x1 + dx, y1 + dy, x2 + dx, y2 + dy, thickness, dashed, tint);
    }
  }

  /** A filled box. */
  public record Box(double x, double y, double width, double height, Tint tint) implements Item {
    @Override
    public Box shifted(double dx, double dy) {
      return new Box(x + dx, y + dy, width, height, tint);
    }
  }

  /** A filled disc. */
  public record Disc(double x, double y, double radius, Tint tint) implements Item {
    @Override
    public Disc shifted(double dx, double dy) {
      return new Disc(x + dx, y + dy, radius, tint);
    }
  }

  /**
   * Words on one line.
   *
   * @param x where they begin, are centred or end, by {@code anchor}
   * @param y the line they stand on
   */
  public record Words(
      double x, double y, double size, Face face, Anchor anchor, String text, Tint tint)
      implements Item {
    @Override
    public Words shifted(double dx, double dy) {
      return new Words(x + dx, y + dy, size, face, anchor, text, tint);
    }

    /** The left edge. */
    public double left() {
      double width = face.width(text, size);
      return switch (anchor) {
        case START -> x;
        case MIDDLE -> x - width / 2;
        case END -> x - width;
      };
    }
  }

  /** Which part of the words stands at their place. */
  public enum Anchor {
    START,
    MIDDLE,
    END
  }
}
