package thinclick.protocol.music;

import thinclick.protocol.json.Check;

/**
 * The written grid laid on room time: which step sounds when.
 *
 * <p>Every instant is computed from the step's number with one rounding, never by adding steps up,
 * so nothing drifts however long a take lasts.
 *
 * @param meter the meter
 * @param stepsPerBeat 2, 3, 4 or 6
 * @param tempo beats a minute, 30 to 320; the dotted quarter in meters of 8
 * @param swing how pairs of steps are shared
 * @param startMicros the room time of step 0, bar 1
 */
public record StepGrid(Meter meter, int stepsPerBeat, double tempo, Swing swing, long startMicros) {
  /** The slowest tempo, beats a minute. */
  public static final double MIN_TEMPO = 30;

  /** The fastest tempo, beats a minute. */
  public static final double MAX_TEMPO = 320;

  public StepGrid {
    meter.checkStepsPerBeat(stepsPerBeat);
    Check.range("tempo", tempo, MIN_TEMPO, MAX_TEMPO);
    swing.checkStepsPerBeat(stepsPerBeat);
  }

  /** The nominal length of a step in microseconds, before swing. */
  public double stepMicros() {
    return 60e6 / (tempo * stepsPerBeat);
  }

  /** The length of a beat in microseconds. */
  public double beatMicros() {
    return 60e6 / tempo;
  }

  /** Steps a bar. */
  public int stepsPerBar() {
    return meter.stepsPerBar(stepsPerBeat);
  }

  /** The bar, from 0, that a step stands in; negative before bar 1. */
  public long barOf(long step) {
    return Math.floorDiv(step, (long) stepsPerBar());
  }

  /** The place of a step in its bar, from 0. */
  public int stepInBar(long step) {
    return (int) Math.floorMod(step, (long) stepsPerBar());
  }

  /** True where the step is a beat; all others are offbeats. */
  public boolean onbeat(long step) {
    return Math.floorMod(step, (long) stepsPerBeat) == 0;
  }

  /**
   * Where a step lies on the straight grid once swing is applied, in steps: the odd step of each
   * pair comes late by the ratio. With {@code "band"} swing the answer is the step itself.
   */
  public double swungStep(long step) {
    if (swing.ratio() == 1.0 || Math.floorMod(step, 2L) == 0) {
      return step;
    }
    return step - 1 + 2 * swing.ratio() / (1 + swing.ratio());
  }

  /** Room time of a step after swing, unrounded microseconds. */
  public double microsAt(long step) {
    return startMicros + offsetMicros(step);
  }

  /** Room time of a step after swing, rounded once to whole microseconds. */
  public long instantOf(long step) {
    return startMicros + Math.round(offsetMicros(step));
  }

  private double offsetMicros(long step) {
    return swungStep(step) * 60e6 / (tempo * stepsPerBeat);
  }
}
