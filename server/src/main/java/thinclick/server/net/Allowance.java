package thinclick.server.net;

/** How much of something is allowed: so many a second on the average, so many at once. */
final class Allowance {
  private final double perNano;
  private final double burst;
  private double left;
  private long atNanos;

  /**
   * @param perSecond what comes back each second
   * @param burst what may be taken at once
   */
  Allowance(double perSecond, double burst, long nowNanos) {
    this.perNano = perSecond / 1e9;
    this.burst = burst;
    this.left = burst;
    this.atNanos = nowNanos;
  }

  /** Takes so many; false, and nothing taken, where they are not allowed now. */
  boolean take(int count, long nowNanos) {
    if (!has(count, nowNanos)) {
      return false;
    }
    left -= count;
    return true;
  }

  /** True where so many might be taken now. */
  boolean has(int count, long nowNanos) {
    left = Math.min(burst, left + (nowNanos - atNanos) * perNano);
    atNanos = nowNanos;
    return left >= count;
  }

  /** True where nothing is owed any more, so that this need not be remembered. */
  boolean full(long nowNanos) {
    return left + (nowNanos - atNanos) * perNano >= burst;
  }
}
