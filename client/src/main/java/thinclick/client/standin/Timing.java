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
 * @param silentDriftPercent how much slower the own tempo gets where no click has sounded for a
 *     bar, percent of a step a step; positive drags, negative pushes
 */
public record Timing(
    double timekeeperMillis,
    double motorMillis,
    double clickGain,
    double peerGain,
    double leanMillis,
    double dropShare,
    double silentDriftPercent) {

  /**
   * The gain towards all others together that keeps four players closest: a quarter (Wing, Endo,
   * Yates and Bradbury 2014, Frontiers in Psychology 5:1115).
   */
  public static final double QUARTET_OPTIMUM = 0.25;

  /**
   * The gain that keeps one player closest to a click, {@code (sqrt(Vc^2 + 4 Vc Vm) - Vc) / 2 Vm}
   * with a timekeeper of 10 ms and a hand of 5 ms (linear phase correction, Vorberg and Schulze
   * 2002, Journal of Mathematical Psychology 46:56).
   */
  public static final double CLICK_OPTIMUM = 2 * (Math.sqrt(2) - 1);

  /**
   * A practised player: standard deviations within what is reported for musicians, half of the
   * distance to a click, less than would be best, as people do (our own choice), and to the others
   * a quarter in all.
   */
  public static final Timing PRACTISED = new Timing(8, 5, 0.5, QUARTET_OPTIMUM, 0, 0.01);

  /** A player whose tempo stays when the click goes. */
  public Timing(
      double timekeeperMillis,
      double motorMillis,
      double clickGain,
      double peerGain,
      double leanMillis,
      double dropShare) {
    this(timekeeperMillis, motorMillis, clickGain, peerGain, leanMillis, dropShare, 0);
  }

  public Timing {
    Check.range("timekeeperMillis", timekeeperMillis, 0.0, 200.0);
    Check.range("motorMillis", motorMillis, 0.0, 200.0);
    Check.range("clickGain", clickGain, 0.0, 1.0);
    Check.range("peerGain", peerGain, 0.0, 1.0);
    Check.range("leanMillis", leanMillis, -250.0, 250.0);
    Check.range("dropShare", dropShare, 0.0, 1.0);
    Check.range("silentDriftPercent", silentDriftPercent, -20.0, 20.0);
  }

  /** The same with another lean. */
  public Timing leaning(double millis) {
    return new Timing(
        timekeeperMillis, motorMillis, clickGain, peerGain, millis, dropShare, silentDriftPercent);
  }

  /** The same with another tempo of its own where no click sounds. */
  public Timing driftingInSilence(double percent) {
    return new Timing(
        timekeeperMillis, motorMillis, clickGain, peerGain, leanMillis, dropShare, percent);
  }
}
