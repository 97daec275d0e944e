package thinclick.protocol.file;

import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/**
 * A stretch of a part that answers what another part played before, so that it can be judged
 * against the call as it was played.
 *
 * @param of the calling part's place among the take's parts, from 0
 * @param fromStep where the answer begins, counted from bar 1 of the take
 * @param toStep where it ends, exclusive
 * @param laterSteps how much later it stands than its call
 */
public record Answer(int of, int fromStep, int toStep, int laterSteps) {
  public Answer {
    Check.range("of", of, 0L, 255);
    Check.range("fromStep", fromStep, 1L, Integer.MAX_VALUE);
    Check.range("laterSteps", laterSteps, 1L, fromStep);
    if (toStep <= fromStep) {
      throw new BadInput(
          "toStep", "expected more than fromStep, " + fromStep + ", found " + toStep);
    }
  }
}
