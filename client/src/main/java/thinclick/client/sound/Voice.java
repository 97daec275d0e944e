package thinclick.client.sound;

/**
 * How a click sounds: a struck tone that rises within 1 ms and dies away, its energy mostly between
 * 1 and 4 kHz, where it carries through a band without being loud. The sound of the one lies a
 * fifth higher.
 */
public enum Voice {
  /** Any beat but the first. */
  BEAT(1_200),
  /** The first step of a bar. */
  ONE(1_800);

  /** Samples a second, everywhere in this package. */
  public static final int RATE = 48_000;

  private static final double RISE_SECONDS = 0.001;
  private static final double DECAY_SECONDS = 0.009;
  private static final int FRAMES = RATE * 60 / 1_000;

  private final double hertz;

  @SuppressWarnings("ImmutableEnumChecker") // written here alone, never handed out
  private final float[] samples;

  Voice(double hertz) {
    this.hertz = hertz;
    this.samples = struck(hertz);
  }

  /** The tone's lowest frequency. */
  double hertz() {
    return hertz;
  }

  /** How long it sounds, frames. */
  int frames() {
    return samples.length;
  }

  /** One sample, between -1 and 1; the loudest one of a voice is 1 or -1. */
  float sample(int frame) {
    return samples[frame];
  }

  /** The whole sound, samples between -1 and 1. */
  public float[] shape() {
    return samples.clone();
  }

  private static float[] struck(double hertz) {
    double[] wave = new double[FRAMES];
    double peak = 0;
    for (int i = 0; i < FRAMES; i++) {
      double seconds = (double) i / RATE;
      double rise =
          seconds < RISE_SECONDS ? 0.5 - 0.5 * Math.cos(Math.PI * seconds / RISE_SECONDS) : 1;
      double fall = Math.exp(-seconds / DECAY_SECONDS) * (1 - (double) i / FRAMES);
      double turn = 2 * Math.PI * hertz * seconds;
      // A wood block's second partial stands a little above the octave; the ear hears a knock.
      wave[i] = rise * fall * (Math.sin(turn) + 0.6 * Math.sin(2.1 * turn));
      peak = Math.max(peak, Math.abs(wave[i]));
    }
    float[] samples = new float[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      samples[i] = (float) (wave[i] / peak);
    }
    return samples;
  }
}
