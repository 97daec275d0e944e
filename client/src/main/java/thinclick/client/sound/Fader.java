package thinclick.client.sound;

/**
 * The gain on its way to where it was set: down within 20 ms, up by at most 12 dB a second. Where
 * the sound comes back after a gap it is where it was heard last within 150 ms, and no louder: what
 * was set higher meanwhile is reached as slowly as ever.
 */
final class Fader {
  private static final double UP_A_FRAME = Math.pow(10, 12.0 / 20 / Voice.RATE);
  private static final int DOWN_FRAMES = Voice.RATE * 20 / 1_000;
  private static final int BACK_FRAMES = Voice.RATE * 150 / 1_000;

  private double gain;
  private double wanted;
  private double stepDown;

  /** What the ear was given last, before a gap. */
  private double heard;

  /** How far up the way is the short one. */
  private double back;

  Fader(Loudness loudness) {
    gain = loudness.peak();
    wanted = gain;
    heard = gain;
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
    aim(loudness.peak());
  }

  /** From here on another output sounds: nobody knows how loud it is, so it begins softly. */
  void another() {
    heard = Math.min(heard, Loudness.FIRST.peak());
    gain = Math.min(gain, heard);
    aim(wanted);
  }

  private void aim(double peak) {
    wanted = peak;
    stepDown = Math.max(0, (gain - wanted) / DOWN_FRAMES);
    back = gain < heard ? Math.min(wanted, heard) : 0;
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
      } else if (gain < back) {
        gain = Math.min(back, gain + back / BACK_FRAMES);
      } else if (gain < wanted) {
        gain = Math.min(wanted, gain * UP_A_FRAME);
      }
      block[i] *= (float) gain;
    }
    if (wanted > 0 && gain >= back) {
      heard = gain;
    }
  }
}
