package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.List;
import thinclick.server.engraving.Ink;
import thinclick.server.engraving.Mark;

/** By how much each staff of a canvas moves onto whole pixels, and all that keeps to it. */
final class StaffShifts {
  /** A level line that is no longer may be a ledger line, staff spaces. */
  static final double LONGEST_LEDGER = 6;

  private static final double SAME = 1e-6;
  private static final double THICKEST_STAFF_LINE = 0.2;

  /**
   * How far off its middle a staff's own measure is followed; beyond it everything shifts alike.
   */
  private static final double REACH = 5;

  /** A staff: its middle, and by how much that moves. */
  private record Staff(double middle, double shift) {}

  private final double unit;
  private final List<Staff> staves = new ArrayList<>();

  StaffShifts(PixelGrid grid, List<Mark> marks) {
    unit = grid.unit();
    find(grid, marks);
  }

  /** The long level lines, those a space apart together. */
  private void find(PixelGrid grid, List<Mark> marks) {
    double[] levels =
        marks.stream()
            .filter(StaffShifts::staffLine)
            .mapToDouble(mark -> ((Mark.Line) mark).y1())
            .sorted()
            .distinct()
            .toArray();
    int from = 0;
    for (int i = 0; i < levels.length; i++) {
      if (i + 1 == levels.length || levels[i + 1] - levels[i] > 1 + SAME) {
        double middle = (levels[from] + levels[i]) / 2;
        double thickness = thickness(marks, levels[from]);
        double drawn = grid.middle(middle, thickness) + grid.down(thickness) / 2.0;
        staves.add(new Staff(middle, drawn / unit - middle));
        from = i + 1;
      }
    }
  }

  private static double thickness(List<Mark> marks, double level) {
    return marks.stream()
        .filter(mark -> staffLine(mark) && ((Mark.Line) mark).y1() == level)
        .mapToDouble(mark -> ((Mark.Line) mark).thickness())
        .findFirst()
        .orElse(0);
  }

  /** Which staff is nearest to a height; -1 where there is none. */
  int nearest(double y) {
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
  double moved(Ink ink, double y) {
    return moved(ink, y, y);
  }

  /** The same by the staff that is nearest to another height. */
  double moved(Ink ink, double y, double of) {
    int nearest = nearest(of);
    if (ink != Ink.FULL || nearest < 0) {
      return y;
    }
    Staff staff = staves.get(nearest);
    double wider = Math.max(1, Math.rint(unit)) / unit - 1;
    double off = Math.max(-REACH, Math.min(REACH, y - staff.middle()));
    return y + staff.shift() + off * wider;
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
