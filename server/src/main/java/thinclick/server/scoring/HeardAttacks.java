package thinclick.server.scoring;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** What was played around each written attack, at each shift, as a likelihood over phases. */
final class HeardAttacks {
  private static final double NOISE_REACH = 3.5;

  /** Attacks looked at around one place; more can only come from a broken pad. */
  private static final int MOST = 8;

  private final Places places;
  private final int[] steps;
  private final double[] attacks;
  private final int[] shifts;
  private final double[] feel;
  private final double noise;
  private final double bin;
  private final int half;
  private final int bins;
  private final double gain;

  /** The first attack worth looking at for each shift; moves along with the part. */
  private final int[] pointer;

  /**
   * What one player played.
   *
   * @param gain how much likelier an attack in its place is than a drop and an addition there
   */
  HeardAttacks(
      Places places,
      int[] steps,
      double[] attacks,
      int[] shifts,
      double[] feel,
      double noise,
      double bin,
      int half,
      double gain) {
    this.places = places;
    this.steps = steps;
    this.attacks = attacks;
    this.shifts = shifts;
    this.feel = feel;
    this.noise = noise;
    this.bin = bin;
    this.half = half;
    this.gain = gain;
    bins = 2 * half + 1;
    pointer = new int[shifts.length];
  }

  /** Whether anything was played near enough to answer it at this shift. */
  boolean inReach(int k, int d, double middle) {
    double at = places.at(steps[k] + shifts[d]) + feel[k] + middle;
    int j = from(d, at - half * bin - NOISE_REACH * noise);
    return j < attacks.length && attacks[j] <= at + half * bin + NOISE_REACH * noise;
  }

  /**
   * How much likelier what was played is with this written attack played than with it dropped, by
   * phase; null where nothing was played within reach.
   */
  double @Nullable [] likely(int k, int d, double middle) {
    double reach = half * bin + NOISE_REACH * noise;
    double at = places.at(steps[k] + shifts[d]) + feel[k] + middle;
    double[] likely = null;
    int seen = 0;
    for (int j = from(d, at - reach);
        j < attacks.length && attacks[j] <= at + reach && seen < MOST;
        j++, seen++) {
      if (likely == null) {
        likely = new double[bins];
        Arrays.fill(likely, 1);
      }
      double off = (attacks[j] - at) / bin + half;
      int low = Math.max(0, (int) Math.ceil(off - NOISE_REACH * noise / bin));
      int high = Math.min(bins - 1, (int) Math.floor(off + NOISE_REACH * noise / bin));
      // a normal curve by recurrence: each value from the one before, each factor likewise
      double width = bin / noise;
      double z = (low - off) * width;
      double value = gain * Math.exp(-z * z / 2);
      double factor = Math.exp(-z * width - width * width / 2);
      double change = Math.exp(-width * width);
      for (int b = low; b <= high; b++) {
        likely[b] += value;
        value *= factor;
        factor *= change;
      }
    }
    return likely;
  }

  /** The first attack at or after an instant; looked for from where the last look ended. */
  private int from(int d, double at) {
    int j = pointer[d];
    while (j > 0 && attacks[j - 1] >= at) {
      j--;
    }
    while (j < attacks.length && attacks[j] < at) {
      j++;
    }
    pointer[d] = j;
    return j;
  }
}
