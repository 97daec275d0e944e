package thinclick.server.engraving;

import java.util.Arrays;
import java.util.List;

/**
 * Where bar lines stand between the steps: as far before the first step of their bar as the signs
 * on any first step need, and nearer only where the bar before needs the room. A copyist leaves
 * about a head's width on either side.
 */
final class BarPlaces {
  private final int stepsPerBar;
  private final double[] needed;
  private final List<Columns> staves;
  private final double usual;

  /**
   * Bar lines through several staves.
   *
   * @param bars how many bars there are
   * @param staves what stands on each
   */
  BarPlaces(int stepsPerBar, int bars, List<Columns> staves) {
    this.stepsPerBar = stepsPerBar;
    this.staves = staves;
    needed = new double[bars + 1];
    double most = Measure.HALF_HEAD + Columns.AFTER_BAR + Measure.THIN_BAR / 2;
    for (Columns staff : staves) {
      for (Columns.Column column : staff.columns()) {
        if (column.downbeat()) {
          double line = column.before() + Measure.THIN_BAR / 2;
          needed[column.bar()] = Math.max(needed[column.bar()], line);
          most = Math.max(most, line);
        }
      }
    }
    usual = most;
  }

  /** The narrowest step at which every bar line has its room. */
  double stepWidth() {
    double width = Measure.MIN_STEP;
    for (Columns staff : staves) {
      width = Math.max(width, staff.stepWidth());
      for (Columns.Column column : staff.columns()) {
        width = Math.max(width, (beyond(column) + needed[column.bar() + 1]) / toEnd(column));
      }
    }
    return width;
  }

  /** How far before the first step of a bar its line stands where there is room for it. */
  double usual() {
    return usual;
  }

  /** How far before the first step of each bar its line stands, and at last that after the end. */
  double[] distances(double stepWidth) {
    double[] distances = new double[needed.length];
    Arrays.fill(distances, usual);
    for (Columns staff : staves) {
      for (Columns.Column column : staff.columns()) {
        double room = toEnd(column) * stepWidth - beyond(column);
        int line = column.bar() + 1;
        distances[line] = Math.max(needed[line], Math.min(distances[line], room));
      }
    }
    return distances;
  }

  private static double beyond(Columns.Column column) {
    return column.after() + Measure.THIN_BAR / 2;
  }

  private int toEnd(Columns.Column column) {
    return stepsPerBar - column.step() % stepsPerBar;
  }
}
