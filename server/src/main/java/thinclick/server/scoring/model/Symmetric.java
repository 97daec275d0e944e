package thinclick.server.scoring.model;

/** Small symmetric positive matrices: inverse by Cholesky, with a floor under every pivot. */
final class Symmetric {
  private Symmetric() {}

  /** The inverse; directions without information come out with a huge variance, never infinite. */
  static double[][] inverse(double[][] a) {
    return inverse(a, 0);
  }

  /** True where every pivot of the Cholesky factor is at least {@code floor}. */
  static boolean pivotsReach(double[][] a, double floor) {
    int n = a.length;
    double[][] l = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = a[i][j];
        for (int k = 0; k < j; k++) {
          sum -= l[i][k] * l[j][k];
        }
        if (i > j) {
          l[i][j] = sum / l[j][j];
        } else if (sum >= floor) {
          l[i][i] = Math.sqrt(sum);
        } else {
          return false;
        }
      }
    }
    return true;
  }

  /** The inverse with no pivot below {@code floor}. */
  static double[][] inverse(double[][] a, double floor) {
    int n = a.length;
    double[][] l = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = a[i][j];
        for (int k = 0; k < j; k++) {
          sum -= l[i][k] * l[j][k];
        }
        if (i == j) {
          l[i][i] = Math.sqrt(Math.max(sum, Math.max(floor, 1e-12 * Math.abs(a[i][i]) + 1e-200)));
        } else {
          l[i][j] = sum / l[j][j];
        }
      }
    }
    double[][] inverse = new double[n][n];
    double[] x = new double[n];
    for (int c = 0; c < n; c++) {
      for (int i = 0; i < n; i++) {
        double sum = i == c ? 1 : 0;
        for (int k = 0; k < i; k++) {
          sum -= l[i][k] * x[k];
        }
        x[i] = sum / l[i][i];
      }
      for (int i = n - 1; i >= 0; i--) {
        double sum = x[i];
        for (int k = i + 1; k < n; k++) {
          sum -= l[k][i] * x[k];
        }
        x[i] = sum / l[i][i];
        inverse[i][c] = x[i];
      }
    }
    return inverse;
  }
}
