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
 * The marks of one canvas on a grid of pixels: first the lines find their pixels, staves before all
 * else, then heads follow their stems, and ends are flush with what they meet.
 */
final class PixelFit {
  private static final double SAME = 1e-6;
  private static final double LONGEST_LEDGER = StaffShifts.LONGEST_LEDGER;

  /** A level line where it is drawn, from its upper pixel to the one after its lower. */
  private record Row(Mark.Line line, long top, long bottom) {}

  /** An upright line where it is drawn. */
  private record Upright(Mark.Line line, long left, long right) {}

  /** What is played at one step of one staff. */
  private record Column(int staff, int bar, int step) {}

  private final double unit;
  private final List<Mark> marks;
  private final StaffShifts staves;
  private final List<Row> rows = new ArrayList<>();
  private final List<Upright> uprights = new ArrayList<>();
  private final Map<Column, Double> columns = new HashMap<>();

  PixelFit(PixelGrid grid, List<Mark> marks) {
    this.unit = grid.unit();
    this.marks = marks;
    this.staves = new StaffShifts(grid, marks);
    for (Mark mark : marks) {
      if (mark instanceof Mark.Line line && line.y1() == line.y2()) {
        long across = grid.down(line.thickness());
        long top = Math.round(staves.moved(line.ink(), line.y1()) * unit - across / 2.0);
        rows.add(new Row(line, top, top + across));
      } else if (mark instanceof Mark.Line line && line.x1() == line.x2()) {
        long left = grid.left(line.x1(), line.thickness());
        uprights.add(new Upright(line, left, left + grid.across(line.thickness())));
      }
    }
    for (Mark mark : marks) {
      if (mark instanceof Mark.Sign sign && sign.place().step() >= 0) {
        toItsStem(sign);
      }
    }
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
    return new Column(staves.nearest((box.top() + box.bottom()) / 2), place.bar(), place.step());
  }

  private double aside(Mark mark) {
    return mark.place().step() < 0 ? 0 : columns.getOrDefault(column(mark), 0.0);
  }

  List<Mark> fitted() {
    List<Mark> fitted = new ArrayList<>(marks.size());
    int row = 0;
    int upright = 0;
    for (Mark mark : marks) {
      if (mark instanceof Mark.Line line && line.y1() == line.y2()) {
        fitted.add(level(rows.get(row++)));
      } else if (mark instanceof Mark.Line line && line.x1() == line.x2()) {
        fitted.add(upright(uprights.get(upright++)));
      } else if (mark instanceof Mark.Sign sign) {
        fitted.add(sign.shifted(aside(sign), staves.moved(sign.ink(), sign.y()) - sign.y()));
      } else if (mark instanceof Mark.Text text) {
        double y = Math.rint(staves.moved(text.ink(), text.y()) * unit) / unit;
        fitted.add(text.shifted(0, y - text.y()));
      } else {
        double y = (mark.box().top() + mark.box().bottom()) / 2;
        fitted.add(mark.shifted(aside(mark), staves.moved(mark.ink(), y) - y));
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
    return Math.rint(staves.moved(line.ink(), y, (line.y1() + line.y2()) / 2) * unit);
  }
}
