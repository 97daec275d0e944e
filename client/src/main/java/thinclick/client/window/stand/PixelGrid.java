package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import thinclick.server.engraving.Box;
import thinclick.server.engraving.Ink;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Place;

/**
 * Marks moved onto the pixels of the device, as type is: lines cover whole pixels, the spaces of a
 * staff are equal, stems meet their heads, beams and brackets their ends. The layout itself stays
 * as it is; nothing moves by more than a pixel, but what stands far off a staff whose space is no
 * whole number of pixels.
 *
 * <p>Lengths are staff spaces, as the layout's; the result is for this size only.
 */
final class PixelGrid {
  private static final double SAME = 1e-6;

  /** An upright line is made thicker by a pixel from this part of one on, a level one from none. */
  private static final double THICKER_FROM = 0.7;

  private static final double NEARLY = 0.05;

  private static final double LONGEST_LEDGER = 6;
  private static final double THICKEST_STAFF_LINE = 0.2;

  /**
   * How far off its middle a staff's own measure is followed; beyond it everything shifts alike.
   */
  private static final double REACH = 5;

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
  private long down(double thickness) {
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
  private long middle(double middle, double thickness) {
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

  /** So many pixels of the device as staff spaces. */
  double spaces(double pixels) {
    return pixels / unit;
  }

  /** The marks of one canvas, whose corner lies on a pixel, in their order. */
  List<Mark> fit(List<Mark> marks) {
    return new Fitting(marks).fitted(marks);
  }

  /** A staff: its middle, and by how much that moves. */
  private record Staff(double middle, double shift) {}

  /** A level line where it is drawn, from its upper pixel to the one after its lower. */
  private record Row(Mark.Line line, long top, long bottom) {}

  /** An upright line where it is drawn. */
  private record Upright(Mark.Line line, long left, long right) {}

  private record Column(int staff, int bar, int step) {}

  private final class Fitting {
    private final List<Staff> staves = new ArrayList<>();
    private final List<Row> rows = new ArrayList<>();
    private final List<Upright> uprights = new ArrayList<>();
    private final Map<Column, Double> columns = new HashMap<>();

    Fitting(List<Mark> marks) {
      staves(marks);
      for (Mark mark : marks) {
        if (mark instanceof Mark.Line line && line.y1() == line.y2()) {
          long across = down(line.thickness());
          long top = Math.round(moved(line.ink(), line.y1()) * unit - across / 2.0);
          rows.add(new Row(line, top, top + across));
        } else if (mark instanceof Mark.Line line && line.x1() == line.x2()) {
          long left = left(line.x1(), line.thickness());
          uprights.add(new Upright(line, left, left + across(line.thickness())));
        }
      }
      for (Mark mark : marks) {
        if (mark instanceof Mark.Sign sign && sign.place().step() >= 0) {
          toItsStem(sign);
        }
      }
    }

    /** The long level lines, those a space apart together. */
    private void staves(List<Mark> marks) {
      double[] levels =
          marks.stream()
              .filter(PixelGrid::staffLine)
              .mapToDouble(mark -> ((Mark.Line) mark).y1())
              .sorted()
              .distinct()
              .toArray();
      int from = 0;
      for (int i = 0; i < levels.length; i++) {
        if (i + 1 == levels.length || levels[i + 1] - levels[i] > 1 + SAME) {
          double middle = (levels[from] + levels[i]) / 2;
          double thickness = thickness(marks, levels[from]);
          double drawn = middle(middle, thickness) + down(thickness) / 2.0;
          staves.add(new Staff(middle, drawn / unit - middle));
          from = i + 1;
        }
      }
    }

    private double thickness(List<Mark> marks, double level) {
      return marks.stream()
          .filter(mark -> staffLine(mark) && ((Mark.Line) mark).y1() == level)
          .mapToDouble(mark -> ((Mark.Line) mark).thickness())
          .findFirst()
          .orElse(0);
    }

    private int staff(double y) {
      int nearest = -1;
      for (int i = 0; i < staves.size(); i++) {
        if (nearest < 0 || off(i, y) < off(nearest, y)) {
          nearest = i;
        }
      }
      return nearest;
    }

    private double off(int staff, double y) {
      return Math.abs(staves.get(staff).middle() - y);
    }

    /** Where a height is drawn: music keeps to its staff, all else stays. */
    private double moved(Ink ink, double y) {
      return moved(ink, y, y);
    }

    private double moved(Ink ink, double y, double of) {
      int nearest = staff(of);
      if (ink != Ink.FULL || nearest < 0) {
        return y;
      }
      Staff staff = staves.get(nearest);
      double wider = Math.max(1, Math.rint(unit)) / unit - 1;
      double off = Math.max(-REACH, Math.min(REACH, y - staff.middle()));
      return y + staff.shift() + off * wider;
    }

    /** A head moves with its stem, and all that belongs to the head with it. */
    private void toItsStem(Mark.Sign sign) {
      Box box = sign.box();
      Column column = column(sign);
      for (Upright stem : uprights) {
        if (stem.line().ink() == Ink.FULL && column.equals(column(stem.line()))) {
          double leftEdge = stem.line().box().left();
          double rightEdge = stem.line().box().right();
          if (Math.abs(leftEdge - box.left()) < SAME && rightEdge < box.right()) {
            columns.put(column, stem.left() / unit - leftEdge);
          } else if (Math.abs(rightEdge - box.right()) < SAME && leftEdge > box.left()) {
            columns.put(column, stem.right() / unit - rightEdge);
          }
        }
      }
    }

    private Column column(Mark mark) {
      Place place = mark.place();
      Box box = mark.box();
      return new Column(staff((box.top() + box.bottom()) / 2), place.bar(), place.step());
    }

    private double aside(Mark mark) {
      return mark.place().step() < 0 ? 0 : columns.getOrDefault(column(mark), 0.0);
    }

    List<Mark> fitted(List<Mark> marks) {
      List<Mark> fitted = new ArrayList<>(marks.size());
      int row = 0;
      int upright = 0;
      for (Mark mark : marks) {
        if (mark instanceof Mark.Line line && line.y1() == line.y2()) {
          fitted.add(level(rows.get(row++)));
        } else if (mark instanceof Mark.Line line && line.x1() == line.x2()) {
          fitted.add(upright(uprights.get(upright++)));
        } else if (mark instanceof Mark.Sign sign) {
          fitted.add(sign.shifted(aside(sign), moved(sign.ink(), sign.y()) - sign.y()));
        } else if (mark instanceof Mark.Text text) {
          double y = Math.rint(moved(text.ink(), text.y()) * unit) / unit;
          fitted.add(text.shifted(0, y - text.y()));
        } else {
          double y = (mark.box().top() + mark.box().bottom()) / 2;
          fitted.add(mark.shifted(aside(mark), moved(mark.ink(), y) - y));
        }
      }
      return fitted;
    }

    private Mark level(Row row) {
      Mark.Line line = row.line();
      double from = Math.min(line.x1(), line.x2());
      double to = Math.max(line.x1(), line.x2());
      double aside = to - from < LONGEST_LEDGER ? aside(line) : 0;
      double y = (row.top() + row.bottom()) / 2.0 / unit;
      return new Mark.Line(
          line.place(),
          line.ink(),
          end(line, from, aside, true) / unit,
          y,
          end(line, to, aside, false) / unit,
          y,
          (row.bottom() - row.top()) / unit,
          line.dotted());
    }

    /** An end of a level line: flush with the upright line it meets there. */
    private double end(Mark.Line line, double x, double aside, boolean left) {
      for (Upright upright : uprights) {
        Box box = upright.line().box();
        boolean touches =
            box.top() < line.y1() + line.thickness() && box.bottom() > line.y1() - line.thickness();
        boolean meets =
            Math.abs(x - upright.line().x1()) < SAME
                || Math.abs(x - (left ? box.left() : box.right())) < SAME;
        if (touches && meets) {
          return left ? upright.left() : upright.right();
        }
      }
      for (Upright upright : uprights) {
        if (!left && Math.abs(x - upright.line().box().right()) < SAME) {
          return upright.right(); // with the bar line above or below it
        }
      }
      return Math.rint((x + aside) * unit);
    }

    private Mark upright(Upright upright) {
      Mark.Line line = upright.line();
      double x = (upright.left() + upright.right()) / 2.0 / unit;
      return new Mark.Line(
          line.place(),
          line.ink(),
          x,
          height(line, Math.min(line.y1(), line.y2()), true) / unit,
          x,
          height(line, Math.max(line.y1(), line.y2()), false) / unit,
          (upright.right() - upright.left()) / unit,
          line.dotted());
    }

    /** An end of an upright line: flush with the level line it meets there. */
    private double height(Mark.Line line, double y, boolean top) {
      for (Row row : rows) {
        Box box = row.line().box();
        boolean touches =
            box.left() < line.x1() + line.thickness() && box.right() > line.x1() - line.thickness();
        boolean meets =
            Math.abs(y - row.line().y1()) < SAME
                || Math.abs(y - (top ? box.top() : box.bottom())) < SAME;
        if (touches && meets) {
          return top ? row.top() : row.bottom();
        }
      }
      return Math.rint(moved(line.ink(), y, (line.y1() + line.y2()) / 2) * unit);
    }
  }

  private static boolean staffLine(Mark mark) {
    return mark instanceof Mark.Line line
        && line.ink() == Ink.FULL
        && line.place().bar() < 0
        && line.y1() == line.y2()
        && Math.abs(line.x2() - line.x1()) > LONGEST_LEDGER
        && line.thickness() < THICKEST_STAFF_LINE;
  }
}
