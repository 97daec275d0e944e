package thinclick.server.material;

import thinclick.protocol.file.Drill;

/**
 * How long notes are written where a cell does not say: on a beat, or inside a grouping, to the
 * next attack as long as that is at most a beat and a half away; else a beat on the beat and a step
 * off it. Our own choice, so that short notes stay easy to read.
 */
final class WrittenLengths {
  private WrittenLengths() {}

  /**
   * The written length of one attack of a cell, steps.
   *
   * @param attack its index in the cell
   * @param step where it stands in the take
   */
  static int of(Drill.Cell cell, int attack, int step, int stepsPerBeat) {
    if (cell.lengthSteps() != null) {
      return cell.lengthSteps().get(attack);
    }
    int gap = cell.gapAfter(attack);
    boolean onBeat = step % stepsPerBeat == 0;
    if (2 * gap <= 3 * stepsPerBeat && (onBeat || cell.grouping() != null)) {
      return gap;
    }
    return onBeat ? Math.min(gap, stepsPerBeat) : 1;
  }
}
