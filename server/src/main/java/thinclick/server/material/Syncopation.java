package thinclick.server.material;

import java.util.ArrayList;
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
   * here each note counts once, with the heaviest place before the next note; {@link
   * #longuetHigginsLeeEveryRest} is the other reading.
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
   * Longuet-Higgins and Lee 1984, summed over every rest of the metrical tree: a part of the tree
   * without an attack is one rest, one with an attack on its first pulse alone one note. A rest
   * makes a pair with the nearest note before it that is no heavier, in the turn before as well,
   * and counts the difference of their weights. So the toolkit SynPy (Song, Pearce and Harte 2015)
   * sums; the paper itself fixes no sum, and {@link #longuetHigginsLee} is the other reading.
   *
   * @param weights metrical levels that begin on each pulse of the cycle
   */
  public static int longuetHigginsLeeEveryRest(List<Integer> attacks, int[] weights) {
    List<Node> nodes = new ArrayList<>();
    split(attacks, weights, 0, weights.length, nodes);
    List<Node> notes = new ArrayList<>(nodes.stream().filter(Node::note).toList());
    notes =
        notes.isEmpty() ? notes : new ArrayList<>(notes.subList(notes.size() - 1, notes.size()));
    int sum = 0;
    for (Node node : nodes) {
      if (node.note()) {
        notes.add(node);
      } else {
        for (int i = notes.size() - 1; i >= 0; i--) {
          if (notes.get(i).weight() <= node.weight()) {
            sum += node.weight() - notes.get(i).weight();
            break;
          }
        }
      }
    }
    return sum;
  }

  /** A leaf of the metrical tree. */
  private record Node(boolean note, int weight) {}

  private static void split(
      List<Integer> attacks, int[] weights, int from, int to, List<Node> nodes) {
    long inside = attacks.stream().filter(attack -> attack >= from && attack < to).count();
    boolean first = attacks.contains(from);
    if (inside == 0 || (inside == 1 && first)) {
      nodes.add(new Node(first, weights[from]));
      return;
    }
    int heaviest = IntStream.range(from + 1, to).map(pulse -> weights[pulse]).max().orElseThrow();
    int at = from;
    for (int pulse = from + 1; pulse <= to; pulse++) {
      if (pulse == to || weights[pulse] == heaviest) {
        split(attacks, weights, at, pulse, nodes);
        at = pulse;
      }
    }
  }

  /**
   * Sioros and Guedes 2011 as the toolkit SynPy computes it for attacks of one loudness: each
   * attack has a potential of 1 - .5^h, h levels below the whole cycle, times the least difference
   * to its neighbours over its own and every finer level. A difference to a silent neighbour is .5
   * + d/8 for d levels between them, at most 1, to a struck one 0; the neighbour before counts .8,
   * the one after 1. The cycle is first shrunk to the coarsest grid that holds it.
   *
   * @param weights metrical levels that begin on each pulse of the cycle
   */
  public static double siorosGuedes(List<Integer> attacks, int[] weights) {
    int unit = attacks.stream().reduce(weights.length, Syncopation::gcd);
    int[] coarse = IntStream.range(0, weights.length / unit).map(i -> weights[i * unit]).toArray();
    int top = coarse[0];
    int[] levels = IntStream.of(coarse).map(weight -> top - weight).toArray();
    int finest = IntStream.of(levels).max().orElse(0);
    List<Integer> struck = attacks.stream().map(attack -> attack / unit).toList();
    double sum = 0;
    for (int at : struck) {
      double least = Double.POSITIVE_INFINITY;
      for (int level = levels[at]; level <= finest; level++) {
        double before = difference(struck, levels, at, neighbour(levels, at, -1, level));
        double after = difference(struck, levels, at, neighbour(levels, at, 1, level));
        least = Math.min(least, (0.8 * before + after) / 1.8);
      }
      sum += least * (1 - Math.pow(0.5, levels[at]));
    }
    return sum;
  }

  private static int neighbour(int[] levels, int from, int direction, int level) {
    int at = from;
    do {
      at = Math.floorMod(at + direction, levels.length);
    } while (levels[at] > level);
    return at;
  }

  private static double difference(List<Integer> struck, int[] levels, int one, int other) {
    return struck.contains(other)
        ? 0
        : Math.min(1, 0.5 + Math.abs(levels[one] - levels[other]) / 8.0);
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
