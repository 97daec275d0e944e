package thinclick.server.scoring.model;

/**
 * The normal distribution and its kin, fast: for the thousands of values that a mixture's quantile
 * takes, where four digits are plenty.
 */
final class Normal {
  /** What 90 % and 95 % of a normal distribution lie within, in SDs. */
  static final double Z90 = 1.6448536269514722;

  static final double Z95 = 1.959963984540054;

  private Normal() {}

  /** Probability below z; Abramowitz and Stegun 26.2.17, error under 1e-7. */
  static double below(double z) {
    double x = Math.abs(z);
    if (x > 8) {
      return z > 0 ? 1 : 0;
    }
    double t = 1 / (1 + 0.2316419 * x);
    double tail =
        0.3989422804014327
            * Math.exp(-0.5 * x * x)
            * t
            * (0.319381530
                + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
    return z > 0 ? 1 - tail : tail;
  }

  /** Probability that F with these freedoms is below f; Paulson's cube roots. */
  static double fisherBelow(double f, double above, double under) {
    double cube = Math.cbrt(f);
    double a = 2 / (9 * above);
    double b = 2 / (9 * under);
    return below(((1 - b) * cube - (1 - a)) / Math.sqrt(b * cube * cube + a));
  }
}
