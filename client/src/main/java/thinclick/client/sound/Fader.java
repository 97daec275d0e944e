package thinclick.client.sound;

/**
 * The gain on its way to where it was set: down within 20 ms, up by at most 12 dB a second, or
 * within 150 ms where the sound comes back after a gap.
 */
final class Fader {
  private static final double UP_A_FRAME = Math.pow(10, 12.0 / 20 / Voice.RATE);
  private static final int DOWN_FRAMES = Voice.RATE * 20 / 1_000;
  private static final int BACK_FRAMES = Voice.RATE * 150 / 1_000;

  private double gain;
  private double wanted;
  private double stepDown;
  private double stepBack;

  Fader(Loudness loudness) {
    gain = loudness.peak();
    wanted = gain;
  }

  /** Goes to another level. */
  void to(Loudness loudness) {
    aim(loudness.peak());
  }

  /** Goes to silence within 20 ms. */
  void mute() {
    aim(0);
  }

  /** Comes back from silence within 150 ms. */
  void back(Loudness loudness) {
    gain = 0;
    wanted = loudness.peak();
    stepBack = wanted / BACK_FRAMES;
    stepDown = 0;
  }

  private void aim(double peak) {
    wanted = peak;
    stepDown = Math.max(0, (gain - wanted) / DOWN_FRAMES);
    stepBack = gain == 0 ? wanted / BACK_FRAMES : 0;
  }

  /** True where it has arrived at silence. */
  boolean silent() {
    return gain == 0 && wanted == 0;
  }

  /** True where the gain is not on its way anywhere. */
  boolean steady() {
    return gain == wanted;
  }

  void apply(float[] block) {
    for (int i = 0; i < block.length; i++) {
      if (gain > wanted) {
        gain = Math.max(wanted, gain - stepDown);
      } else if (gain < wanted) {
        gain = Math.min(wanted, stepBack > 0 ? gain + stepBack : gain * UP_A_FRAME);
        if (gain == wanted) {
          stepBack = 0;
        }
      }
      block[i] *= (float) gain;
    }
  }
}
