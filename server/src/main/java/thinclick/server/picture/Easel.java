package thinclick.server.picture;

import java.util.ArrayList;
import java.util.List;
import thinclick.server.engraving.Face;
import thinclick.server.picture.Drawing.Anchor;
import thinclick.server.words.Unbroken;

/** Collects a drawing's items; the strokes that all parts of a picture share. */
public final class Easel {
  /** Body text. */
  public static final double BODY = 14;

  /** Remarks and ticks. */
  public static final double SMALL = 11.5;

  private final List<Drawing.Item> items = new ArrayList<>();

  /** What was drawn so far, the first at the bottom of the pile. */
  public List<Drawing.Item> items() {
    return List.copyOf(items);
  }

  void add(Drawing.Item item) {
    items.add(item);
  }

  /** Adds one. */
  public void line(double x1, double y1, double x2, double y2, double thickness, Tint tint) {
    items.add(new Drawing.Line(x1, y1, x2, y2, thickness, false, tint));
  }

  void dashed(double x1, double y1, double x2, double y2, Tint tint) {
    items.add(new Drawing.Line(x1, y1, x2, y2, 1, true, tint));
  }

  /** Adds one. */
  public void box(double x, double y, double width, double height, Tint tint) {
    items.add(new Drawing.Box(x, y, width, height, tint));
  }

  /** Adds one. */
  public void disc(double x, double y, double radius, Tint tint) {
    items.add(new Drawing.Disc(x, y, radius, tint));
  }

  /** Adds one. */
  public void words(double x, double y, double size, Anchor anchor, String text, Tint tint) {
    items.add(new Drawing.Words(x, y, size, Face.REGULAR, anchor, text, tint));
  }

  void heading(double x, double y, String text) {
    items.add(new Drawing.Words(x, y, 15, Face.SEMIBOLD, Anchor.START, text, Tint.INK));
  }

  /** Words cut to a width, so that they never run into what stands beside them. */
  public static String cut(String text, double size, double width) {
    if (Face.REGULAR.width(text, size) <= width) {
      return text;
    }
    int points = text.codePointCount(0, text.length());
    while (points > 0) {
      String shorter =
          text.substring(0, text.offsetByCodePoints(0, --points)).stripTrailing() + "…";
      if (Face.REGULAR.width(shorter, size) <= width) {
        return shorter;
      }
    }
    return "";
  }

  /** Sentences as lines of a width. */
  public static List<String> wrap(String text, double size, double width) {
    return Face.REGULAR.lines(Unbroken.pieces(text), size, width);
  }

  /** An open caret, for what was dropped. */
  void caret(double x, double y, Tint tint) {
    line(x - 3.5, y, x, y - 6, 1.2, tint);
    line(x, y - 6, x + 3.5, y, 1.2, tint);
  }

  /** A disc, plain where placed, with a foot to the left for early and to the right for late. */
  void attack(double x, double y, Tint tint) {
    disc(x, y, 2.2, tint);
    if (tint == Tint.EARLY) {
      line(x - 7, y, x, y, 1.2, tint);
    } else if (tint == Tint.LATE) {
      line(x, y, x + 7, y, 1.2, tint);
    }
  }
}
