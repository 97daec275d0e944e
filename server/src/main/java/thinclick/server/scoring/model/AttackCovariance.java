package thinclick.server.scoring.model;

/**
 * How the attacks of one player against a click vary together, before any of them is known.
 *
 * <p>Attack i and a later attack j have covariance c_i times what is left after each click between
 * them, so every sum over pairs is one walk backwards or forwards: the cost is linear.
 */
final class AttackCovariance {
  /** Variance of each attack, ms2. */
  final double[] variance;

  /** Covariance of each attack with the hidden position after its own correction, ms2. */
  private final double[] carried;

  /** What clicks between attack i and the next leave of the hidden position. */
  private final double[] between;

  /** What the correction at attack i itself leaves of the hidden position before it. */
  private final double[] stays;

  /**
   * Walks a track.
   *
   * @param track own attacks and clicks; heard attacks are not looked at
   * @param gain the fraction that each click closes
   * @param timekeeper Vc, ms2 for one beat
   * @param motor Vm, ms2
   * @param start variance of the hidden position before the first event, ms2
   */
  AttackCovariance(Track track, double gain, double timekeeper, double motor, double start) {
    int n = track.observed;
    variance = new double[n];
    carried = new double[n];
    between = new double[n];
    stays = new double[n];
    double p = start;
    int attack = -1;
    double left = 1;
    for (int k = 0; k < track.events(); k++) {
      double g = track.click[k] ? gain : 0;
      if (track.position[k] >= 0) {
        if (attack >= 0) {
          between[attack] = left;
        }
        left = 1;
        attack++;
        variance[attack] = p + motor;
        carried[attack] = (1 - g) * p - g * motor;
        stays[attack] = 1 - g;
        p = (1 - g) * (1 - g) * p + g * g * motor;
      } else {
        left *= 1 - g;
        p *= (1 - g) * (1 - g);
      }
      p += timekeeper * track.gapBeats[k];
    }
  }

  /** Variance of the hidden position in a long count-in that is heard, not played. */
  static double listened(double gain, double timekeeper) {
    return timekeeper / Math.max(gain * (2 - gain), 0.02);
  }

  /** Covariance of attack i with the {@code lag}-th attack after it, ms2. */
  double covariance(int i, int lag) {
    if (lag == 0) {
      return variance[i];
    }
    double product = carried[i] * between[i];
    for (int k = i + 1; k < i + lag; k++) {
      product *= stays[k] * between[k];
    }
    return product;
  }

  /** The sums over all pairs that {@link #expectedVariance} and {@link #freedom} need. */
  private record Sums(double trace, double all, double rows, double squares) {}

  private Sums sums() {
    int n = variance.length;
    double[] later = new double[n];
    double ahead = 0;
    double aheadSquared = 0;
    double squares = 0;
    for (int i = n - 1; i >= 0; i--) {
      double b = between[i];
      double s = i + 1 < n ? stays[i + 1] : 0;
      boolean last = i + 1 >= n;
      ahead = last ? 0 : b * (1 + s * ahead);
      aheadSquared = last ? 0 : b * b * (1 + s * s * aheadSquared);
      later[i] = carried[i] * ahead;
      squares += variance[i] * variance[i] + 2 * carried[i] * carried[i] * aheadSquared;
    }
    double trace = 0;
    double all = 0;
    double rows = 0;
    double earlier = 0;
    for (int i = 0; i < n; i++) {
      double row = earlier + variance[i] + later[i];
      trace += variance[i];
      all += row;
      rows += row * row;
      earlier = between[i] * (stays[i] * earlier + carried[i]);
    }
    return new Sums(trace, all, rows, squares);
  }

  /** The variance (n - 1) that attacks about their own mean are expected to show, ms2. */
  double expectedVariance() {
    int n = variance.length;
    Sums s = sums();
    return (s.trace - s.all / n) / (n - 1);
  }

  /** Degrees of freedom of that variance: tr(C S)^2 / tr((C S)^2), C the centring. */
  double freedom() {
    int n = variance.length;
    Sums s = sums();
    double trace = s.trace - s.all / n;
    double squares = s.squares - 2 * s.rows / n + s.all * s.all / ((double) n * n);
    return Math.min(n - 1, trace * trace / squares);
  }
}
