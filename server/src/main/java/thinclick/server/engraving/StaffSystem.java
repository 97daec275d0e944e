package thinclick.server.engraving;

import java.util.List;

/**
 * One line of music, laid out: its marks, from its own upper left corner, and where time stands in
 * it, so that others can draw on the same measure.
 *
 * @param firstBar its first bar in the part, from 0
 * @param bars how many it has
 * @param firstStep the step of its first place
 * @param steps how many steps it has
 * @param firstX where its first step stands: the middle of a notehead
 * @param stepWidth the distance of two steps; a step's place is strictly linear in time
 * @param staffY the staff's middle line
 * @param clickY the click's own line; where it stands above another part, where it would begin
 * @param barLines from where the first bar begins to the line that ends the last: the middle of a
 *     single line, the outer edge of the lines that end a repeat or the part; one more than bars
 * @param nameRight where a name ends that stands before one of its lines: the click's, and whoever
 *     is named below the staff
 * @param rulerY the rule of the beats, below the staff; offsets in time belong here
 * @param width its width
 * @param height its height
 * @param marks all that is drawn
 */
public record StaffSystem(
    int firstBar,
    int bars,
    int firstStep,
    int steps,
    double firstX,
    double stepWidth,
    double staffY,
    double clickY,
    List<Double> barLines,
    double nameRight,
    double rulerY,
    double width,
    double height,
    List<Mark> marks) {
  public StaffSystem {
    barLines = List.copyOf(barLines);
    marks = List.copyOf(marks);
  }

  /** Where a step stands, and anything between two steps. */
  public double xOf(double step) {
    return firstX + (step - firstStep) * stepWidth;
  }

  /** The same with all that is drawn so much lower. */
  public StaffSystem lowered(double by) {
    return new StaffSystem(
        firstBar,
        bars,
        firstStep,
        steps,
        firstX,
        stepWidth,
        staffY + by,
        clickY + by,
        barLines,
        nameRight,
        rulerY + by,
        width,
        height + by,
        marks.stream().map(mark -> mark.shifted(0, by)).toList());
  }
}
