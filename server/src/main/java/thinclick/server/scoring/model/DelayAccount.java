package thinclick.server.scoring.model;

/**
 * What the line cost and what the players did, over the longest stretch without a click. All in ms
 * a beat, positive slowing.
 *
 * <p>Everybody waits a little for what is heard late: two players with gains a and b who play
 * together slow by a b D / (a + b) a beat, alternating by a b D / (a + b - a b) an exchange, D
 * being the delay there plus back. Only that sum matters, so clock error cancels.
 *
 * @param fromStep the first step of the stretch
 * @param toStep the step after its last
 * @param measured how the players' common course moved: a least-squares slope over their attacks
 * @param network what the delays alone make of the fitted gains
 * @param remainder the players' own part: measured less network
 * @param toldApart false where the line's part is no larger than what chance leaves open: then the
 *     two cannot be separated
 */
public record DelayAccount(
    int fromStep,
    int toStep,
    double measured,
    Estimate network,
    Estimate remainder,
    boolean toldApart) {
  /** True where the players' own part is known not to be 0. */
  public boolean playersMoved() {
    Interval interval = remainder.interval();
    return toldApart && interval != null && !interval.contains(0);
  }
}
