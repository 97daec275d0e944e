package thinclick.server.scoring.model;

/**
 * Closed forms for one tap a beat under a click on every m-th beat, corrected there by a fraction a
 * of the asynchrony: A(k+1) = A(k) - a A(k) [on clicks] + timekeeper noise + the difference of two
 * motor delays (Vorberg and Wing 1996 for m = 1; the thinned form is derived in the tests).
 */
final class ThinnedClick {
  private ThinnedClick() {}

  /**
   * Variance of the attack {@code beatsAfter} beats after a click, 1 to {@code everyBeats}, ms2.
   *
   * @param gain the fraction a of the asynchrony that a click corrects, above 0 and below 2
   * @param timekeeper Vc, ms2 for a beat
   * @param motor Vm, ms2
   */
  static double variance(
      double gain, double timekeeper, double motor, int everyBeats, int beatsAfter) {
    double atClick = (everyBeats * timekeeper + 2 * gain * motor) / (gain * (2 - gain));
    return (1 - gain) * (1 - gain) * atClick + beatsAfter * timekeeper + 2 * gain * motor;
  }

  /** The gain that keeps the attacks on the clicks steadiest. */
  static double bestGain(double timekeeper, double motor, int everyBeats) {
    double waited = everyBeats * timekeeper;
    return 2 * waited / (waited + Math.sqrt(waited * waited + 4 * waited * motor));
  }
}
