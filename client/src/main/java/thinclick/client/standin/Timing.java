package thinclick.client.standin;

import thinclick.protocol.json.Check;

/**
 * How a stand-in keeps time: the parameters of linear phase correction.
 *
 * <p>Model: Vorberg and Wing 1996 for a click, Wing, Endo, Bradbury and Vorberg 2014 (J R Soc
 * Interface 11:20131125) for several players. Between beats the timekeeper wanders, every attack
 * adds motor noise of its own, and at each click or heard attack the player closes a part of the
 * distance.
 *
 * @param timekeeperMillis standard deviation of the timekeeper over one beat, ms
 * @param motorMillis standard deviation of the hand, ms
 * @param clickGain the part of the distance to a click that is closed at it, 0 to 1
 * @param peerGain the part of the distance to one other player that is closed at an attack of
 *     theirs, shared out evenly where several are heard, 0 to 1
 * @param leanMillis a steady lean, positive late
 * @param dropShare the share of written attacks left out, 0 to 1
 */
public record Timing(
    double timekeeperMillis,
    double motorMillis,
    double clickGain,
    double peerGain,
    double leanMillis,
    double dropShare) {

  /**
   * A practised player: standard deviations within what is reported for musicians, a quarter of the
   * distance to the others in all (the statistical optimum of a quartet, Wing et al. 2014).
   */
  public static final Timing PRACTISED = new Timing(8, 5, 0.5, 0.25, 0, 0.01);

  public Timing {
    Check.range("timekeeperMillis", timekeeperMillis, 0.0, 200.0);
    Check.range("motorMillis", motorMillis, 0.0, 200.0);
    Check.range("clickGain", clickGain, 0.0, 1.0);
    Check.range("peerGain", peerGain, 0.0, 1.0);
    Check.range("leanMillis", leanMillis, -250.0, 250.0);
    Check.range("dropShare", dropShare, 0.0, 1.0);
  }

  /** The same with another lean. */
  public Timing leaning(double millis) {
    return new Timing(timekeeperMillis, motorMillis, clickGain, peerGain, millis, dropShare);
  }
}
