package thinclick.server.scoring.model;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Who follows whom.
 *
 * @param gains a row a player: the fraction of its distance from j that i closes at each attack of
 *     j that it hears; null on the diagonal
 * @param pairs what can be said of each two players
 */
public record Coupling(List<List<@Nullable Estimate>> gains, List<Pair> pairs) {
  /** The least difference of gains that makes one of two players the leader. */
  public static final double LEAST_DIFFERENCE = 0.1;

  public Coupling {
    List<List<@Nullable Estimate>> rows = new ArrayList<>();
    for (List<@Nullable Estimate> row : gains) {
      rows.add(Collections.unmodifiableList(new ArrayList<>(row)));
    }
    gains = List.copyOf(rows);
    pairs = List.copyOf(pairs);
  }

  /**
   * Two players against each other.
   *
   * @param first the index of one
   * @param second the index of the other
   * @param difference how much more the first follows the second than the second the first, with
   *     its 95 % interval; unknown where either gain is
   */
  public record Pair(int first, int second, Estimate difference) {
    /**
     * The index of who leads: only where the interval excludes 0 and the difference is at least
     * {@link #LEAST_DIFFERENCE}; null for "cannot tell".
     */
    public @Nullable Integer leader() {
      Double value = difference.value();
      Interval interval = difference.interval();
      if (value == null
          || interval == null
          || interval.contains(0)
          || Math.abs(value) < LEAST_DIFFERENCE) {
        return null;
      }
      return value > 0 ? second : first;
    }
  }

  /** Pairs from gains, each of them an estimate off the diagonal. */
  public static Coupling of(List<List<@Nullable Estimate>> gains) {
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < gains.size(); i++) {
      for (int j = i + 1; j < gains.size(); j++) {
        pairs.add(new Pair(i, j, difference(gains.get(i).get(j), gains.get(j).get(i))));
      }
    }
    return new Coupling(gains, pairs);
  }

  private static Estimate difference(@Nullable Estimate one, @Nullable Estimate other) {
    if (one == null || other == null) {
      throw new IllegalStateException("expected gains off the diagonal");
    }
    Double a = one.value();
    Double b = other.value();
    Interval ofA = one.interval();
    Interval ofB = other.interval();
    if (a == null || ofA == null) {
      return one;
    }
    if (b == null || ofB == null) {
      return other;
    }
    // Each end from the two nearer ends: the two gains are estimated from different attacks.
    double low = Math.hypot(a - ofA.low(), ofB.high() - b);
    double high = Math.hypot(ofA.high() - a, b - ofB.low());
    return Estimate.of(a - b, new Interval(a - b - low, a - b + high));
  }
}
