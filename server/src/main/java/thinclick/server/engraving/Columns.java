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

  /** From a bar line to the head or rest after it. */
  static final double AFTER_BAR = 1;

  /** The same where the bar before has no more room. */
  static final double LEAST_AFTER_BAR = 0.8;

  /** From a head or rest to the bar line after it. */
  static final double BEFORE_BAR = 1;

  /** From a flag, a dot or a ledger line to the bar line after it. */
  static final double BEFORE_BAR_FROM_SIGN = 0.6;

  /** From a bar line to an accidental or a ledger line, which belong to the head behind them. */
  static final double AFTER_BAR_TO_SIGN = 0.6;

  /**
   * One symbol.
   *
   * @param step its step
   * @param bar its bar
   * @param downbeat true on the first step of a bar
   * @param boxes what it covers, x from the step's place, y from the staff's middle line
   * @param before how far before the step's place a bar line's edge must stand
   * @param after the same after it
   */
  record Column(int step, int bar, boolean downbeat, List<Box> boxes, double before, double after) {
    double left() {
      return boxes.stream().mapToDouble(Box::left).min().orElse(0);
    }
  }

  static Columns of(StaffPart part, List<SpelledBar> bars, Notes notes) {
    List<Column> columns = new ArrayList<>();
    for (SpelledBar bar : bars) {
      for (int i = 0; i < bar.symbols().size(); i++) {
        Symbol symbol = bar.symbols().get(i);
        if (!symbol.wholeBar()) {
          List<Mark> marks = notes.covering(bar, i);
          columns.add(
              new Column(
                  symbol.start(),
                  bar.index(),
                  symbol.start() % part.stepsPerBar() == 0,
                  marks.stream().map(Mark::box).toList(),
                  marks.stream().mapToDouble(Columns::before).max().orElse(0),
                  marks.stream().mapToDouble(Columns::after).max().orElse(0)));
        }
      }
    }
    return new Columns(columns);
  }

  private static double before(Mark mark) {
    boolean belongs =
        mark instanceof Mark.Line
            || (mark instanceof Mark.Sign sign && sign.glyph().name().startsWith("ACCIDENTAL"));
    return (belongs ? AFTER_BAR_TO_SIGN : LEAST_AFTER_BAR) - mark.box().left();
  }

  private static double after(Mark mark) {
    boolean stands =
        mark instanceof Mark.Sign sign
            && (sign.glyph().name().startsWith("NOTEHEAD")
                || sign.glyph().name().startsWith("REST_"));
    return mark.box().right() + (stands ? BEFORE_BAR : BEFORE_BAR_FROM_SIGN);
  }

  /** How far what stands on the first step of a bar reaches before it, at most. */
  double reachBefore() {
    return columns.stream()
        .filter(Column::downbeat)
        .mapToDouble(c -> -c.left())
        .max()
        .orElse(Measure.HALF_HEAD);
  }

  /** The narrowest step at which nothing touches, at least {@link Measure#MIN_STEP}. */
  double stepWidth() {
    double width = Measure.MIN_STEP;
    for (int i = 0; i + 1 < columns.size(); i++) {
      Column column = columns.get(i);
      Column next = columns.get(i + 1);
      width = Math.max(width, apart(column, next) / (next.step() - column.step()));
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
