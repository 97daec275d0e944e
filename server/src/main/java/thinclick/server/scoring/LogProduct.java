package thinclick.server.scoring;

/** The logarithm of a long product, by one logarithm for many factors. */
final class LogProduct {
  private double logs;
  private double product = 1;

  /** Multiplies by a positive factor. */
  void times(double factor) {
    product *= factor;
    if (product > 1e150 || product < 1e-150) {
      logs += Math.log(product);
      product = 1;
    }
  }

  double log() {
    return logs + Math.log(product);
  }
}
