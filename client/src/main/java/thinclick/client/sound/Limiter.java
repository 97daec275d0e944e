package thinclick.client.sound;

import java.util.Arrays;

/**
 * Keeps every sample under the ceiling by turning down ahead of a peak: it looks 1 ms ahead, which
 * delays by as much, and moves its gain along a straight line of that length, so that nothing
 * crackles.
 */
final class Limiter {
  /** How far it looks ahead, frames. */
  static final int AHEAD = Voice.RATE / 1_000;

  private static final double CEILING = Math.pow(10, Loudness.CEILING_DBFS / 20);

  private final float[] waiting = new float[AHEAD];
  private final double[] lowest = new double[AHEAD];
  private final double[] asked = new double[AHEAD + 1];
  private double sum = AHEAD;
  private int at;
  private int askedAt;
  private int loudFor;
  private int soundFor;

  Limiter() {
    Arrays.fill(lowest, 1);
    Arrays.fill(asked, 1);
  }

  /** True where only silence is waiting and nothing is being turned down. */
  boolean empty() {
    return soundFor == 0 && loudFor == 0;
  }

  void apply(float[] block) {
    for (int i = 0; i < block.length; i++) {
      float in = block[i];
      double size = Math.abs(in);
      asked[askedAt] = size > CEILING ? CEILING / size : 1;
      askedAt = (askedAt + 1) % asked.length;
      loudFor = size > CEILING ? 2 * AHEAD + 2 : Math.max(0, loudFor - 1);
      soundFor = in == 0 ? Math.max(0, soundFor - 1) : AHEAD;
      double low = loudFor == 0 ? 1 : lowestAsked();
      sum += low - lowest[at];
      lowest[at] = low;
      float out = waiting[at];
      waiting[at] = in;
      at = (at + 1) % AHEAD;
      block[i] = loudFor == 0 ? out : (float) (out * sum / AHEAD);
    }
    if (loudFor == 0) {
      sum = AHEAD; // lets no rounding error pile up over hours
    }
  }

  private double lowestAsked() {
    double low = 1;
    for (double gain : asked) {
      low = Math.min(low, gain);
    }
    return low;
  }
}
