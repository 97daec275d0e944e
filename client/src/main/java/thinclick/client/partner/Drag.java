package thinclick.client.partner;

/**
 * What hearing each other late does to the tempo of two who listen to each other: each takes up a
 * part of the distance to what is heard, what is heard is late by the delay, so both fall behind by
 * that part of the delay at every beat. With all of it taken up on both sides it would be the whole
 * delay, half of the way there and back.
 */
public final class Drag {
  /** The part of the distance that practised players take up in a pair (Wing et al. 2014). */
  public static final double USUAL_GAIN = 0.25;

  private Drag() {}

  /**
   * Milliseconds by which each beat gets longer.
   *
   * @param delayMillis one way, the same in both directions
   * @param gain the part of the distance that each takes up at a beat, 0 to 1
   */
  public static double millisABeat(double delayMillis, double gain) {
    return gain * delayMillis;
  }

  /** The same in percent of the beat. */
  public static double percent(double delayMillis, double gain, double beatMillis) {
    return 100 * millisABeat(delayMillis, gain) / beatMillis;
  }
}
