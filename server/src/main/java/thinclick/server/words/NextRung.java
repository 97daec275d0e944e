package thinclick.server.words;

import java.util.List;

/**
 * Whether the click gets thinner: two takes held at 90 % or more, upbeats at 85 % or more, at most
 * a tenth of a beat off at a return, and the band goes up a rung (where a click came back and
 * nobody can say how far off the band was, it has not shown that and stays); under 75 %, or with a
 * quarter of the players off for more than four bars, it goes down one, and two where half the band
 * was lost; else it stays. One of many who is off holds up nobody: that is for the one to mend, and
 * the leader is told who. All thresholds are our own choice.
 */
public final class NextRung {
  private static final double UP_HOLD = 90;
  private static final double UP_UPBEATS = 85;
  private static final double UP_RETURN_OF_BEAT = 0.1;
  private static final double DOWN_HOLD = 75;
  private static final double A_QUARTER = 0.25;
  private static final double HALF_THE_BAND = 0.5;

  private NextRung() {}

  /** What to do with the click; one thing changes at a time, so tempo and level stay. */
  public enum Move {
    /** A thinner click. */
    UP,
    /** Held well once: the same again, and then a thinner click. */
    ONCE_MORE,
    /** The same again. */
    STAY,
    /** A fuller click. */
    DOWN,
    /** Two rungs fuller. */
    DOWN_TWO,
    /** Too little was played to say. */
    NO_VERDICT
  }

  /**
   * Decides from the takes at one drill, tempo and click plan.
   *
   * @param outcomes the oldest first; only the last two count
   */
  public static Move after(List<Outcome> outcomes) {
    if (outcomes.isEmpty()) {
      return Move.NO_VERDICT;
    }
    Outcome last = outcomes.get(outcomes.size() - 1);
    Double hold = last.holdPercent();
    if (hold == null || last.tooFew()) {
      return Move.NO_VERDICT;
    }
    if (last.lostShare() >= HALF_THE_BAND) {
      return Move.DOWN_TWO;
    }
    if (hold < DOWN_HOLD || last.displacedShare() >= A_QUARTER) {
      return Move.DOWN;
    }
    if (!fitForMore(last)) {
      return Move.STAY;
    }
    boolean twice = outcomes.size() > 1 && fitForMore(outcomes.get(outcomes.size() - 2));
    return twice ? Move.UP : Move.ONCE_MORE;
  }

  private static boolean fitForMore(Outcome take) {
    Double hold = take.holdPercent();
    Double upbeats = take.upbeatPercent();
    Double back = take.returnOfBeat();
    return hold != null
        && !take.tooFew()
        && hold >= UP_HOLD
        && (upbeats == null || upbeats >= UP_UPBEATS)
        && (!take.clickCameBack() || (back != null && back <= UP_RETURN_OF_BEAT))
        && take.displacedShare() < A_QUARTER;
  }
}
