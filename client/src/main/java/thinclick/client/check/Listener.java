package thinclick.client.check;

/** Finds in a recording where a known click begins, and where a knock of unknown shape does. */
final class Listener {
  /** An earlier likeness is taken for the click itself where it has so much of the best. */
  private static final double FIRST_OF = 0.6;

  /** Less likeness than this is no click. */
  private static final double LEAST_LIKENESS = 0.35;

  /** A knock is this much louder than what is around it. */
  private static final double KNOCK = 5;

  /** A knock begins where its rise passes this share of its height. */
  private static final double BEGINS = 0.2;

  private static final double HOP_SECONDS = 0.000_25;

  private final Recording heard;

  Listener(Recording heard) {
    this.heard = heard;
  }

  /**
   * Where {@code shape} begins between two samples: the earliest place about as like it as the best
   * one, because what comes later is an echo. NaN where nothing is like it.
   */
  double find(float[] shape, double from, double to) {
    int first = (int) Math.max(0, Math.ceil(from));
    int last = (int) Math.min(heard.samples().length - shape.length, Math.floor(to));
    if (last <= first) {
      return Double.NaN;
    }
    double[] likeness = likenesses(shape, first, last);
    double best = 0;
    for (double one : likeness) {
      best = Math.max(best, one);
    }
    if (best < LEAST_LIKENESS) {
      return Double.NaN;
    }
    for (int i = 1; i < likeness.length - 1; i++) {
      boolean peak = likeness[i] >= likeness[i - 1] && likeness[i] >= likeness[i + 1];
      if (peak && likeness[i] >= FIRST_OF * best && isEnvelopePeak(likeness, i)) {
        return first + i + vertex(likeness[i - 1], likeness[i], likeness[i + 1]);
      }
    }
    return Double.NaN;
  }

  /** Likeness swings with the tone; its true place is the highest swing nearby. */
  private boolean isEnvelopePeak(double[] likeness, int at) {
    int around = (int) Math.round(heard.rate() * 0.002);
    for (int i = Math.max(0, at - around); i <= Math.min(likeness.length - 1, at + around); i++) {
      if (likeness[i] > likeness[at]) {
        return false;
      }
    }
    return true;
  }

  /**
   * How like the shape the sound is from each sample on, 0 to 1. The energy under the shape is
   * carried along from place to place; only the product is summed anew.
   */
  private double[] likenesses(float[] shape, int first, int last) {
    float[] sound = heard.samples();
    double shapeEnergy = 0;
    double energy = 0;
    for (int i = 0; i < shape.length; i++) {
      shapeEnergy += (double) shape[i] * shape[i];
      energy += (double) sound[first + i] * sound[first + i];
    }
    double[] likeness = new double[last - first + 1];
    for (int at = first; at <= last; at++) {
      double most = shapeEnergy * energy;
      likeness[at - first] = most <= 0 ? 0 : Math.abs(product(shape, sound, at)) / Math.sqrt(most);
      if (at < last) {
        double comes = sound[at + shape.length];
        energy = Math.max(0, energy + comes * comes - (double) sound[at] * sound[at]);
      }
    }
    return likeness;
  }

  /** Four sums side by side, which a processor adds at once. */
  private static double product(float[] shape, float[] sound, int at) {
    double one = 0;
    double two = 0;
    double three = 0;
    double four = 0;
    int i = 0;
    for (; i + 3 < shape.length; i += 4) {
      one += (double) shape[i] * sound[at + i];
      two += (double) shape[i + 1] * sound[at + i + 1];
      three += (double) shape[i + 2] * sound[at + i + 2];
      four += (double) shape[i + 3] * sound[at + i + 3];
    }
    for (; i < shape.length; i++) {
      one += (double) shape[i] * sound[at + i];
    }
    return one + two + three + four;
  }

  private static double vertex(double before, double at, double after) {
    double bend = before - 2 * at + after;
    return bend == 0 ? 0 : Math.max(-0.5, Math.min(0.5, 0.5 * (before - after) / bend));
  }

  /**
   * Where a knock begins between two samples: the steepest rise of what sounds, led back to where
   * it starts. NaN where nothing stands out.
   */
  double knock(double from, double to) {
    int hop = (int) Math.max(1, Math.round(heard.rate() * HOP_SECONDS));
    int first = (int) Math.max(1, from) / hop;
    int last = (int) Math.min(heard.samples().length - hop - 1.0, to) / hop;
    if (last - first < 8) {
      return Double.NaN;
    }
    double[] loud = new double[last - first];
    for (int i = 0; i < loud.length; i++) {
      loud[i] = loudness((first + i) * hop, hop);
    }
    double quiet = Robust.median(loud);
    int peak = 0;
    for (int i = 1; i < loud.length; i++) {
      peak = loud[i] > loud[peak] ? i : peak;
    }
    if (loud[peak] <= KNOCK * Math.max(quiet, 1e-5)) {
      return Double.NaN;
    }
    // An echo may be louder than the knock, never earlier.
    double threshold = quiet + BEGINS * (loud[peak] - quiet);
    int start = 0;
    while (loud[start] < threshold) {
      start++;
    }
    double share = start == 0 ? 0 : (threshold - loud[start - 1]) / (loud[start] - loud[start - 1]);
    return (first + start - 1 + share) * hop + hop / 2.0;
  }

  /** The size of the differences from sample to sample: low rumble has little of it. */
  private double loudness(int from, int length) {
    double sum = 0;
    for (int i = from; i < from + length; i++) {
      double rise = heard.samples()[i] - heard.samples()[i - 1];
      sum += rise * rise;
    }
    return Math.sqrt(sum / length);
  }
}
