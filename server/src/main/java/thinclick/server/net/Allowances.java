package thinclick.server.net;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The same allowance for each of many who are told apart by a key, which strangers may make up:
 * those that owe nothing are forgotten first, then the oldest.
 */
final class Allowances<K> {
  private final Map<K, Allowance> each = new LinkedHashMap<>();
  private final double perSecond;
  private final double burst;
  private final int most;

  /**
   * @param perSecond what comes back to each every second
   * @param burst what each may take at once
   * @param most how many are remembered
   */
  Allowances(double perSecond, double burst, int most) {
    this.perSecond = perSecond;
    this.burst = burst;
    this.most = most;
  }

  /** Takes one of a key's; false, and nothing taken, where none is allowed now. */
  boolean take(K key, long nowNanos) {
    if (each.size() >= most && !each.containsKey(key)) {
      each.values().removeIf(one -> one.full(nowNanos));
      if (each.size() >= most) {
        each.remove(each.keySet().iterator().next());
      }
    }
    return each.computeIfAbsent(key, any -> new Allowance(perSecond, burst, nowNanos))
        .take(1, nowNanos);
  }

  /** True where one of a key's might be taken now; it is not remembered for that. */
  boolean has(K key, long nowNanos) {
    Allowance one = each.get(key);
    return one == null || one.has(1, nowNanos);
  }

  /** True where a key owes nothing, known or not. */
  boolean full(K key, long nowNanos) {
    Allowance one = each.get(key);
    return one == null || one.full(nowNanos);
  }

  /** How many are remembered. */
  int size() {
    return each.size();
  }
}
