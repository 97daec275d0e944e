package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;

/**
 * What stands on each step, as rectangles around the step's own place, and how far apart steps must
 * be so that none touch.
 *
 * @param columns in order of steps
 */
record Columns(List<Column> columns) {
  private static final double AIR = 0.22;
  private static final double BAR_AIR = 0.32;
  private static final double MOST_BAR_DISTANCE = 1.5;

  /**
   * One symbol.
   *
   * @param step its step
   * @param downbeat true on the first step of a bar
   * @param boxes what it covers, x from the step's place, y from the staff's middle line
   */
  record Column(int step, boolean downbeat, List<Box> boxes) {
    double left() {
      return boxes.stream().mapToDouble(Box::left).min().orElse(0);
    }

    double right() {
      return boxes.stream().mapToDouble(Box::right).max().orElse(0);
    }
  }

  static Columns of(StaffPart part, List<SpelledBar> bars, Notes notes) {
    List<Column> columns = new ArrayList<>();
    for (SpelledBar bar : bars) {
      for (int i = 0; i < bar.symbols().size(); i++) {
        Symbol symbol = bar.symbols().get(i);
        if (!symbol.wholeBar()) {
          boolean downbeat = symbol.start() % part.stepsPerBar() == 0;
          columns.add(new Column(symbol.start(), downbeat, notes.boxes(bar, i)));
        }
      }
    }
    return new Columns(columns);
  }

  /** How far what stands on the first step of a bar reaches before it. */
  double reachBefore() {
    return columns.stream()
        .filter(Column::downbeat)
        .mapToDouble(c -> -c.left())
        .max()
        .orElse(Measure.HALF_HEAD);
  }

  /** How far what stands last in a bar reaches toward the bar line, from the bar's last step. */
  double reachAfter(int stepsPerBar, double stepWidth) {
    return columns.stream()
        .mapToDouble(c -> c.right() - (stepsPerBar - 1 - c.step() % stepsPerBar) * stepWidth)
        .max()
        .orElse(Measure.HALF_HEAD);
  }

  /**
   * How far before the first step of a bar its line stands: in the middle of what is free, but no
   * farther than {@value #MOST_BAR_DISTANCE} from the step if that is enough.
   *
   * @param before how far the first step's signs reach before it
   * @param after how far the last step's signs reach after it
   */
  static double barDistance(double before, double after, double stepWidth) {
    double least = before + BAR_AIR + Measure.THIN_BAR / 2;
    double middle = before + (stepWidth - after - before) / 2;
    return Math.max(least, Math.min(MOST_BAR_DISTANCE, middle));
  }

  /**
   * The narrowest step at which nothing touches, at least {@link Measure#MIN_STEP}.
   *
   * @param before how far the signs on the first step of a bar reach before it
   */
  double stepWidth(int stepsPerBar, double before) {
    double barDistance = before + BAR_AIR + Measure.THIN_BAR / 2;
    double width = Measure.MIN_STEP;
    for (int i = 0; i < columns.size(); i++) {
      Column column = columns.get(i);
      int barEnd = (column.step() / stepsPerBar + 1) * stepsPerBar;
      double toBar = column.right() + BAR_AIR + Measure.THIN_BAR / 2 + barDistance;
      width = Math.max(width, toBar / (barEnd - column.step()));
      if (i + 1 < columns.size()) {
        Column next = columns.get(i + 1);
        width = Math.max(width, apart(column, next) / (next.step() - column.step()));
      }
    }
    return width;
  }

  private static double apart(Column column, Column next) {
    double apart = 0;
    for (Box box : column.boxes()) {
      for (Box other : next.boxes()) {
        if (box.top() < other.bottom() + AIR && other.top() < box.bottom() + AIR) {
          apart = Math.max(apart, box.right() - other.left() + AIR);
        }
      }
    }
    return apart;
  }
}
