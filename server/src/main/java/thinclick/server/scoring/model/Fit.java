package thinclick.server.scoring.model;

/** One player's fitted parameters and how well the attacks fix them. */
final class Fit {
  private static final double STEP = 1e-3;

  final Likelihood likelihood;

  /** Gains, then phi between 0 and pi / 2. */
  final double[] theta;

  /** -2 log likelihood at the best. */
  final double least;

  /** Vc + Vm at the best, ms2. */
  final double scale;

  /** Covariance of the parameters from the curvature at the best. */
  final double[][] covariance;

  private Fit(Likelihood likelihood, double[] theta) {
    this.likelihood = likelihood;
    this.theta = theta;
    covariance = curvatureInverse();
    least = likelihood.at(theta);
    scale = likelihood.scale();
  }

  /** Fits the likelihood's track. */
  static Fit of(Likelihood likelihood) {
    double[] theta = new Search(likelihood).best();
    int last = theta.length - 1;
    theta[last] = Math.atan2(Math.abs(Math.sin(theta[last])), Math.abs(Math.cos(theta[last])));
    return new Fit(likelihood, theta);
  }

  double phi() {
    return theta[theta.length - 1];
  }

  /** Timekeeper SD for a beat, ms. */
  double timekeeperSd() {
    return Math.sqrt(scale) * Math.cos(phi());
  }

  /** Motor SD of an attack, ms. */
  double motorSd() {
    return Math.sqrt(scale) * Math.sin(phi());
  }

  /** Standard error of a parameter. */
  double standardError(int parameter) {
    return Math.sqrt(covariance[parameter][parameter]);
  }

  private double[][] curvatureInverse() {
    int n = theta.length;
    double[][] half = new double[n][n];
    double[] here = new double[n];
    double[] there = new double[n];
    double[] at = theta.clone();
    likelihood.at(at, here);
    for (int i = 0; i < n; i++) {
      at[i] = theta[i] + STEP;
      likelihood.at(at, there);
      at[i] = theta[i];
      for (int j = 0; j < n; j++) {
        double second = (there[j] - here[j]) / (2 * STEP);
        half[i][j] += 0.5 * second;
        half[j][i] += 0.5 * second;
      }
    }
    return Symmetric.inverse(half, 0.5);
  }
}
