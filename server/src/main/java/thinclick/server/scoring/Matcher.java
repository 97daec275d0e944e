package thinclick.server.scoring;

import java.util.Arrays;

/**
 * Matches one player's attacks to written attacks, one to one and in order, each within its own
 * window: as many as possible, and of those ways the one with the smallest sum of distances.
 */
final class Matcher {
  /** No partner. */
  static final int NONE = -1;

  /** Attacks looked at around one expected place; more can only come from a broken pad. */
  private static final int MOST = 16;

  private Matcher() {}

  /**
   * Finds each written attack's partner.
   *
   * @param expected where each written attack should sound, ms, ascending
   * @param window how far from it an attack still answers it, ms
   * @param attacks what was played, ms, ascending
   * @return for each written attack the index of its attack, or {@link #NONE}
   */
  static int[] match(double[] expected, double[] window, double[] attacks) {
    int n = expected.length;
    int[] partner = new int[n];
    Arrays.fill(partner, NONE);
    int from = 0;
    while (from < n) {
      int to = from + 1;
      while (to < n && expected[to] - window[to] <= expected[to - 1] + window[to - 1]) {
        to++;
      }
      matchLinked(expected, window, attacks, from, to, partner);
      from = to;
    }
    return partner;
  }

  /** Written attacks whose windows overlap are matched together. */
  private static void matchLinked(
      double[] expected, double[] window, double[] attacks, int from, int to, int[] partner) {
    if (to - from == 1) {
      partner[from] = nearest(expected[from], window[from], attacks);
      return;
    }
    int n = to - from;
    int[] low = new int[n];
    int[] high = new int[n];
    double[][] cost = new double[n][];
    int[][] came = new int[n][];
    // best[k][c]: written attacks up to k, with k on attack low[k] + c; the last entry: k dropped
    for (int k = 0; k < n; k++) {
      double at = expected[from + k];
      double reach = window[from + k];
      low[k] = first(attacks, at - reach);
      high[k] = low[k];
      while (high[k] < attacks.length && attacks[high[k]] <= at + reach) {
        high[k]++;
      }
      if (high[k] - low[k] > MOST) {
        int middle = Math.max(low[k], Math.min(high[k] - 1, first(attacks, at)));
        low[k] = Math.max(low[k], middle - MOST / 2);
        high[k] = Math.min(high[k], low[k] + MOST);
      }
    }
    double drop = 1e9; // more than any sum of distances: as many as possible come first
    int[] used = {-1};
    double[] costs = {0};
    int[][] usedAt = new int[n][];
    for (int k = 0; k < n; k++) {
      int options = high[k] - low[k];
      // A state is the last attack used so far; dropping keeps it, matching moves it on.
      int[] nextUsed = new int[used.length + options];
      double[] nextCosts = new double[used.length + options];
      int[] nextCame = new int[used.length + options];
      int size = 0;
      for (int s = 0; s < used.length; s++) {
        nextUsed[size] = used[s];
        nextCosts[size] = costs[s] + drop;
        nextCame[size++] = s;
      }
      for (int j = low[k]; j < high[k]; j++) {
        int best = -1;
        for (int s = 0; s < used.length; s++) {
          if (used[s] < j && (best < 0 || costs[s] < costs[best])) {
            best = s;
          }
        }
        if (best >= 0) {
          nextUsed[size] = j;
          nextCosts[size] = costs[best] + Math.abs(attacks[j] - expected[from + k]);
          nextCame[size++] = best;
        }
      }
      int kept = prune(nextUsed, nextCosts, nextCame, size);
      used = Arrays.copyOf(nextUsed, kept);
      costs = Arrays.copyOf(nextCosts, kept);
      came[k] = Arrays.copyOf(nextCame, kept);
      usedAt[k] = used;
      cost[k] = costs;
    }
    int state = 0;
    for (int s = 1; s < costs.length; s++) {
      if (costs[s] < costs[state]) {
        state = s;
      }
    }
    for (int k = n - 1; k >= 0; k--) {
      int before = k == 0 ? -1 : usedAt[k - 1][came[k][state]];
      partner[from + k] = usedAt[k][state] == before ? NONE : usedAt[k][state];
      state = came[k][state];
    }
  }

  /** Keeps states that use attacks sparingly or cost little; a state worse in both goes. */
  private static int prune(int[] used, double[] costs, int[] came, int size) {
    Integer[] order = new Integer[size];
    for (int i = 0; i < size; i++) {
      order[i] = i;
    }
    Arrays.sort(
        order,
        (a, b) ->
            used[a] != used[b]
                ? Integer.compare(used[a], used[b])
                : Double.compare(costs[a], costs[b]));
    int[] keptUsed = new int[size];
    double[] keptCosts = new double[size];
    int[] keptCame = new int[size];
    int kept = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i : order) {
      if (costs[i] < least) {
        least = costs[i];
        keptUsed[kept] = used[i];
        keptCosts[kept] = costs[i];
        keptCame[kept++] = came[i];
      }
    }
    System.arraycopy(keptUsed, 0, used, 0, kept);
    System.arraycopy(keptCosts, 0, costs, 0, kept);
    System.arraycopy(keptCame, 0, came, 0, kept);
    return kept;
  }

  private static int nearest(double at, double reach, double[] attacks) {
    int after = first(attacks, at);
    int best = NONE;
    if (after < attacks.length && attacks[after] - at <= reach) {
      best = after;
    }
    if (after > 0 && at - attacks[after - 1] <= reach) {
      if (best == NONE || at - attacks[after - 1] <= attacks[best] - at) {
        best = after - 1;
        while (best > 0 && attacks[best - 1] == attacks[best]) {
          best--;
        }
      }
    }
    return best;
  }

  /** The index of the first attack at or after an instant. */
  static int first(double[] attacks, double at) {
    int low = 0;
    int high = attacks.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (attacks[middle] < at) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
