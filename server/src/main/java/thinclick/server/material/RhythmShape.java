package thinclick.server.material;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Properties of a cyclic rhythm as a set of points on a circle; Toussaint, The Geometry of Musical
 * Rhythm, 2013.
 *
 * @param attacks ascending, from 0
 * @param pulses length of the cycle
 */
public record RhythmShape(List<Integer> attacks, int pulses) {
  public RhythmShape {
    attacks = List.copyOf(attacks);
  }

  /** Gaps from each attack to the next, the last one to the first. */
  public List<Integer> gaps() {
    List<Integer> gaps = new ArrayList<>();
    for (int i = 0; i < attacks.size(); i++) {
      int next = i + 1 < attacks.size() ? attacks.get(i + 1) : attacks.get(0) + pulses;
      gaps.add(next - attacks.get(i));
    }
    return gaps;
  }

  /** How many different gaps there are. */
  public int distinctGaps() {
    return new HashSet<>(gaps()).size();
  }

  /** Distances round the circle, the shorter way, and how many pairs of attacks have each. */
  public Map<Integer, Integer> distances() {
    Map<Integer, Integer> distances = new TreeMap<>();
    for (int i = 0; i < attacks.size(); i++) {
      for (int j = i + 1; j < attacks.size(); j++) {
        int apart = attacks.get(j) - attacks.get(i);
        distances.merge(Math.min(apart, pulses - apart), 1, Integer::sum);
      }
    }
    return distances;
  }

  /**
   * Normalised pairwise variability of the gaps: 100/(m-1) times the sum over neighbours, without
   * the pair of last and first, of their difference over their mean.
   */
  public double variability() {
    List<Integer> gaps = gaps();
    double sum = 0;
    for (int i = 1; i < gaps.size(); i++) {
      double mean = (gaps.get(i) + gaps.get(i - 1)) / 2.0;
      sum += Math.abs(gaps.get(i) - gaps.get(i - 1)) / mean;
    }
    return 100 * sum / (gaps.size() - 1);
  }

  /** True where no two attacks divide the cycle in halves. */
  public boolean odd() {
    return pulses % 2 != 0 || !distances().containsKey(pulses / 2);
  }

  /** True where every span of attacks has one length or two that differ by one. */
  public boolean maximallyEven() {
    List<Integer> gaps = gaps();
    for (int span = 1; span < gaps.size(); span++) {
      Set<Integer> lengths = new HashSet<>();
      for (int i = 0; i < gaps.size(); i++) {
        int length = 0;
        for (int j = 0; j < span; j++) {
          length += gaps.get((i + j) % gaps.size());
        }
        lengths.add(length);
      }
      int least = lengths.stream().min(Integer::compare).orElseThrow();
      if (!lengths.stream().allMatch(length -> length - least <= 1)) {
        return false;
      }
    }
    return true;
  }

  /** True where the distances occur once, twice, three times and so on, each number once. */
  public boolean deep() {
    Map<Integer, Integer> times = new HashMap<>();
    distances().values().forEach(count -> times.merge(count, 1, Integer::sum));
    return times.values().stream().allMatch(count -> count == 1);
  }
}
