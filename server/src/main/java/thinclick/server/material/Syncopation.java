package thinclick.server.material;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Published measures of how syncopated a rhythm is. All take the attacks of one cycle, ascending,
 * and its number of pulses; the cycle is repeated, so that the last note ends at the first attack.
 */
public final class Syncopation {
  private Syncopation() {}

  /**
   * Keith 1991, "From Polychords to Polya": a note is as long as the greatest power of two of
   * pulses that fits before the next attack, and begins off the beat where it does not begin on a
   * multiple of that. How many do; the unweighted count of Gomez and others 2005.
   *
   * @param pulses a power of two
   */
  public static int keithCount(List<Integer> attacks, int pulses) {
    return (int) keithLabels(attacks, pulses).chars().filter(c -> c == 'A' || c == 'S').count();
  }

  /**
   * Keith 1991 weighted: 1 for a note that only ends off the beat (hesitation), 2 for one that only
   * begins there (anticipation), 3 for both (syncopation); the sum.
   *
   * @param pulses a power of two
   */
  public static int keithWeighted(List<Integer> attacks, int pulses) {
    return keithLabels(attacks, pulses).chars().map("-HAS"::indexOf).sum();
  }

  /** Keith's category of each note: {@code -}, H, A or S. */
  public static String keithLabels(List<Integer> attacks, int pulses) {
    if (Integer.bitCount(pulses) != 1) {
      throw new IllegalArgumentException("expected a power of two of pulses, found " + pulses);
    }
    StringBuilder labels = new StringBuilder();
    for (int i = 0; i < attacks.size(); i++) {
      int length = gap(attacks, pulses, i);
      int unit = Integer.highestOneBit(length);
      boolean begins = attacks.get(i) % unit != 0;
      boolean ends = (attacks.get(i) + length) % unit != 0;
      labels.append("-HAS".charAt((begins ? 2 : 0) + (ends ? 1 : 0)));
    }
    return labels.toString();
  }

  /**
   * Off-beatness, Toussaint: how many attacks stand where no equal division of the cycle has a
   * point, on pulses coprime to its length.
   */
  public static int offBeatness(List<Integer> attacks, int pulses) {
    return (int) attacks.stream().filter(attack -> gcd(attack, pulses) == 1).count();
  }

  /**
   * Weighted note-to-beat distance, Gomez, Melvin, Rappaport and Toussaint 2005: a note at distance
   * T from the nearest beat, in beats, counts 1/T; 2/T where it ends after the next beat but before
   * the one after; nothing on a beat. The mean over the notes.
   *
   * <p>The rule's "not later than" the second beat is read as "before": so all sixteen published
   * values come out, while the other reading gives Soukous 22/5 for the published 18/5.
   *
   * @param beat pulses in a beat
   */
  public static double noteToBeatDistance(List<Integer> attacks, int pulses, int beat) {
    double sum = 0;
    for (int i = 0; i < attacks.size(); i++) {
      int into = attacks.get(i) % beat;
      if (into != 0) {
        double distance = (double) Math.min(into, beat - into) / beat;
        int nextBeat = attacks.get(i) - into + beat;
        int end = attacks.get(i) + gap(attacks, pulses, i);
        boolean overOne = end > nextBeat && end < nextBeat + beat;
        sum += (overOne ? 2 : 1) / distance;
      }
    }
    return attacks.isEmpty() ? 0 : sum / attacks.size();
  }

  /**
   * Metric complexity, Toussaint: the most weight that so many attacks can have, less the weight
   * that these have.
   *
   * @param weights metrical levels that begin on each pulse of the cycle, 1 and more
   */
  public static int metricComplexity(List<Integer> attacks, int[] weights) {
    int most =
        Arrays.stream(weights)
            .boxed()
            .sorted((one, other) -> other - one)
            .limit(attacks.size())
            .mapToInt(Integer::intValue)
            .sum();
    return most - attacks.stream().mapToInt(attack -> weights[attack]).sum();
  }

  /**
   * Longuet-Higgins and Lee 1984: a note and a later rest or tie that is at least as heavy are a
   * syncopation of the difference of their weights. The paper does not fix how a bar is summed;
   * here each note counts once, with the heaviest place before the next note.
   *
   * @param weights metrical levels that begin on each pulse of the cycle
   */
  public static int longuetHigginsLee(List<Integer> attacks, int[] weights) {
    int sum = 0;
    for (int i = 0; i < attacks.size(); i++) {
      int attack = attacks.get(i);
      int heaviest =
          IntStream.range(attack + 1, attack + gap(attacks, weights.length, i))
              .map(pulse -> weights[pulse % weights.length])
              .max()
              .orElse(0);
      sum += Math.max(0, heaviest - weights[attack]);
    }
    return sum;
  }

  /**
   * The weights of a cycle that is halved to the end: 5 1 2 1 3 1 2 1 4 ... for sixteen pulses. An
   * odd length is divided by three first where that is possible: 4 1 1 2 1 1 3 ... for twelve.
   */
  public static int[] binaryWeights(int pulses) {
    int[] weights = new int[pulses];
    Arrays.fill(weights, 1);
    int unit = pulses;
    while (unit > 1) {
      unit = unit % 2 == 0 ? unit / 2 : unit % 3 == 0 ? unit / 3 : 1;
      for (int pulse = 0; unit > 1 && pulse < pulses; pulse += unit) {
        weights[pulse]++;
      }
    }
    weights[0] += pulses > 1 ? 1 : 0;
    return weights;
  }

  private static int gap(List<Integer> attacks, int pulses, int attack) {
    int next = attack + 1 < attacks.size() ? attacks.get(attack + 1) : pulses + attacks.get(0);
    return next - attacks.get(attack);
  }

  private static int gcd(int a, int b) {
    return b == 0 ? a : gcd(b, a % b);
  }
}
