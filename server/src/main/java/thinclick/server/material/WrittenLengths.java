package thinclick.server.material;

import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Meter;

/**
 * How long notes are written where a cell does not say. A note that can be held: on a beat, or
 * inside a grouping, to the next attack as long as that is at most a beat and a half away; else a
 * beat on the beat and a step off it. What is struck cannot be held, so it is written to the next
 * attack or the next beat and never tied; triplets keep their own values. Our own choice, so that
 * short notes stay easy to read.
 *
 * @param struck true where the notes are strokes
 */
record WrittenLengths(Drill.Cell cell, Meter meter, int stepsPerBeat, boolean struck) {

  /**
   * The written length of one attack of the cell, steps.
   *
   * @param attack its index in the cell
   * @param step where it stands in the take
   */
  int at(int attack, int step) {
    if (cell.lengthSteps() != null) {
      return cell.lengthSteps().get(attack);
    }
    int gap = cell.gapAfter(attack);
    int into = step % stepsPerBeat;
    if (struck && (meter.compound() || stepsPerBeat % 3 != 0)) {
      return Math.min(gap, stepsPerBeat - into);
    }
    if (2 * gap <= 3 * stepsPerBeat && (into == 0 || cell.grouping() != null)) {
      return gap;
    }
    return into == 0 ? Math.min(gap, stepsPerBeat) : 1;
  }
}
