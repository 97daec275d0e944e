package thinclick.client.sound;

import org.jspecify.annotations.Nullable;

/**
 * How something sounds: short struck tones. The click rises within 1 ms and dies away, its energy
 * mostly between 1 and 4 kHz, where it carries through a band without being loud; the sound of the
 * one lies a fifth higher. What others play sounds softer, by what they do for the whole.
 */
public enum Voice implements Sound {
  /** Any beat but the first. */
  BEAT(1_200, 2.1, 0.6, 9, 0, 1),
  /** The first step of a bar. */
  ONE(1_800, 2.1, 0.6, 9, 0, 1),
  /** A timekeeper's: a bright tick, mostly hiss. */
  TICK(5_200, 1.37, 0.5, 12, 0.9, 0.45),
  /** A bass's: low and round. */
  LOW(196, 2, 0.35, 45, 0, 0.8),
  /** A timeline's: two hard sticks. */
  STICKS(2_480, 1.5, 0.25, 7, 0.05, 0.5),
  /** A comping chair's: hollow wood, middle high. */
  WOOD(620, 2.4, 0.5, 18, 0.05, 0.6),
  /** An answering chair's: brighter, a little longer. */
  BELL(930, 2.76, 0.5, 35, 0, 0.5),
  /** A shaker's: hiss alone. */
  SAND(7_000, 1.2, 0.2, 16, 1, 0.35);

  /** Samples a second, everywhere in this package. */
  public static final int RATE = 48_000;

  private static final double RISE_SECONDS = 0.001;
  private static final int FRAMES = RATE * 60 / 1_000;

  private final double hertz;
  private final double loudest;

  @SuppressWarnings("ImmutableEnumChecker") // written here alone, never handed out
  private final float[] samples;

  /**
   * @param partial the second partial as a multiple of the first; a wood block's stands a little
   *     above the octave, and the ear hears a knock
   * @param share of the second partial
   * @param decayMillis until it has fallen to 1/e
   * @param hiss the share of noise
   * @param loudest its peak, 1 for the click's
   */
  Voice(
      double hertz, double partial, double share, double decayMillis, double hiss, double loudest) {
    this.hertz = hertz;
    this.loudest = loudest;
    this.samples = struck(hertz, partial, share, decayMillis / 1e3, hiss, loudest);
  }

  /** The sound of a chair that does this for the whole; wood where nothing is said of it. */
  public static Voice ofRole(@Nullable String role) {
    if (role == null) {
      return WOOD;
    }
    return switch (role) {
      case "ride", "timekeeper", "drums" -> TICK;
      case "bass" -> LOW;
      case "clave", "timeline" -> STICKS;
      case "shaker" -> SAND;
      case "answer", "answers", "horn answers", "horns" -> BELL;
      default -> WOOD;
    };
  }

  /** The tone's lowest frequency. */
  double hertz() {
    return hertz;
  }

  /** Its peak, 1 for the click's. */
  double loudest() {
    return loudest;
  }

  @Override
  public int frames() {
    return samples.length;
  }

  /** The loudest one of a voice is {@link #loudest()}, either way. */
  @Override
  public float sample(int frame) {
    return samples[frame];
  }

  @Override
  public boolean ofTheOne() {
    return this == ONE;
  }

  /** The whole sound. */
  public float[] shape() {
    return samples.clone();
  }

  private static float[] struck(
      double hertz, double partial, double share, double decay, double hiss, double loudest) {
    double[] wave = new double[FRAMES];
    double peak = 0;
    long noise = 0x5DEECE66DL;
    for (int i = 0; i < FRAMES; i++) {
      double seconds = (double) i / RATE;
      double rise =
          seconds < RISE_SECONDS ? 0.5 - 0.5 * Math.cos(Math.PI * seconds / RISE_SECONDS) : 1;
      double fall = Math.exp(-seconds / decay) * (1 - (double) i / FRAMES);
      double turn = 2 * Math.PI * hertz * seconds;
      noise = noise * 6_364_136_223_846_793_005L + 1_442_695_040_888_963_407L;
      double grain = (noise >> 11) / (double) (1L << 52);
      double tone = Math.sin(turn) + share * Math.sin(partial * turn);
      wave[i] = rise * fall * ((1 - hiss) * tone + hiss * grain);
      peak = Math.max(peak, Math.abs(wave[i]));
    }
    float[] samples = new float[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      samples[i] = (float) (loudest * wave[i] / peak);
    }
    return samples;
  }
}
