package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;

/**
 * How one player's asynchronies hang together: a part that comes anew with every attack and a slow
 * part that fades. Asynchronies that hang together tell less than as many independent ones, so this
 * is where intervals get their width from.
 *
 * <p>The likelihood of a fading slow part plus noise, with the mean by generalised least squares
 * and the scale concentrated out, over a small grid of (share of the slow part, memory). The
 * freedom is averaged over the grid by likelihood: the likeliest point alone is too sure of itself
 * wherever few attacks tell how slow the slow part is. The error of the mean is the likeliest
 * point's, which holds the mean often enough. Linear in attacks.
 *
 * @param meanError standard error of the plain mean, ms
 * @param freedom effective degrees of freedom of the variance, tr(CS)^2 / tr((CS)^2) with the
 *     fitted covariance S and the centring C
 * @param variance of one asynchrony, ms2
 * @param slowShare the slow part's share of it
 * @param memoryBeats after so many beats the slow part has faded to 1/e
 */
record AsynchronyFit(
    double meanError, double freedom, double variance, double slowShare, double memoryBeats) {
  private static final double[] SHARES = {0, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9};
  private static final double[] MEMORIES = {0.7, 1.5, 3, 6, 12, 24, 72};

  /** What is less than this times as likely as the likeliest is left out. */
  private static final double LEAST_WEIGHT = 0.05;

  /** Fits at least two asynchronies. */
  static AsynchronyFit of(Sample sample, int stepsPerBeat) {
    int n = sample.size();
    double bestLikelihood = Double.NEGATIVE_INFINITY;
    double[] best = {0, MEMORIES[0]};
    double found = 0;
    double[] variance = new double[1];
    double[] keep = new double[n];
    List<double[]> tried = new ArrayList<>();
    for (double memory : MEMORIES) {
      for (int k = 1; k < n; k++) {
        keep[k] = fade(sample, k, memory * stepsPerBeat);
      }
      for (double share : SHARES) {
        if (share == 0 && memory != MEMORIES[0]) {
          continue; // without a slow part its memory means nothing
        }
        double likely = likelihood(sample, share, keep, variance);
        tried.add(new double[] {likely, share, memory});
        if (likely > bestLikelihood) {
          bestLikelihood = likely;
          best = new double[] {share, memory};
          found = variance[0];
        }
      }
    }
    double[] likeliest = sums(sample, best[0], best[1] * stepsPerBeat);
    double weights = 0;
    double doubt = 0;
    for (double[] one : tried) {
      double weight = Math.exp(one[0] - bestLikelihood);
      if (weight >= LEAST_WEIGHT) {
        weights += weight;
        doubt += weight / Math.max(1, sums(sample, one[1], one[2] * stepsPerBeat)[1]);
      }
    }
    return new AsynchronyFit(
        Math.sqrt(found * likeliest[0]) / n, weights / doubt, found, best[0], best[1]);
  }

  /**
   * True where the asynchronies wandered off and hardly came back in all this time, as between
   * players who do not follow each other: then there is no steady mean to give an interval of.
   *
   * @param beats how long it took, beats
   */
  boolean wanders(double beats) {
    return slowShare >= 0.6 && memoryBeats >= 24 && 12 * memoryBeats > beats;
  }

  /** The same with no more degrees of freedom and no smaller an error of the mean than these. */
  AsynchronyFit atMost(double otherFreedom, double otherError) {
    return new AsynchronyFit(
        Math.max(meanError, otherError),
        Math.max(1, Math.min(freedom, otherFreedom)),
        variance,
        slowShare,
        memoryBeats);
  }

  /** Restricted log likelihood; fills in the variance of one asynchrony. */
  private static double likelihood(Sample sample, double share, double[] keeps, double[] filled) {
    int n = sample.size();
    double x = 0; // filter of the data
    double u = 0; // filter of the constant column
    double p = share;
    double xx = 0;
    double xu = 0;
    double uu = 0;
    LogProduct variances = new LogProduct();
    for (int k = 0; k < n; k++) {
      if (k > 0) {
        double keep = keeps[k];
        x *= keep;
        u *= keep;
        p = keep * keep * p + share * (1 - keep * keep);
      }
      double s = p + 1 - share;
      double ex = sample.millis()[k] - x;
      double eu = 1 - u;
      double weight = 1 / s;
      xx += ex * ex * weight;
      xu += ex * eu * weight;
      uu += eu * eu * weight;
      variances.times(s);
      double gain = p * weight;
      x += gain * ex;
      u += gain * eu;
      p -= gain * p;
    }
    double mean = xu / uu;
    double variance = Math.max(1e-6, (xx - xu * mean) / (n - 1));
    filled[0] = variance;
    return -0.5 * ((n - 1) * Math.log(variance) + variances.log() + Math.log(uu));
  }

  /** The sum of all correlations, and the degrees of freedom of the variance. */
  private static double[] sums(Sample sample, double share, double memory) {
    int n = sample.size();
    double fast = 1 - share;
    double[] row = new double[n];
    double[] squareRow = new double[n];
    rows(sample, memory, row);
    rows(sample, memory / 2, squareRow);
    double total = 0; // 1'S1
    double ofRows = 0; // 1'SS1
    double squares = 0; // tr(SS)
    for (int k = 0; k < n; k++) {
      double r = fast + share * row[k];
      total += r;
      ofRows += r * r;
      squares += fast * fast + 2 * fast * share + share * share * squareRow[k];
    }
    double trace = n - total / n;
    double traceOfSquare = squares - 2 * ofRows / n + total / n * (total / n);
    double freedom = n < 3 ? n - 1 : trace * trace / Math.max(1e-12, traceOfSquare);
    return new double[] {total, freedom};
  }

  /** For each attack the sum over all attacks of exp(-gap / memory), itself among them. */
  private static void rows(Sample sample, double memory, double[] row) {
    int n = sample.size();
    double before = 0;
    for (int k = 0; k < n; k++) {
      before = k == 0 ? 0 : (before + 1) * fade(sample, k, memory);
      row[k] = 1 + before;
    }
    double after = 0;
    for (int k = n - 2; k >= 0; k--) {
      after = (after + 1) * fade(sample, k + 1, memory);
      row[k] += after;
    }
  }

  static double fade(Sample sample, int k, double memory) {
    return Math.exp(-(sample.at()[k] - sample.at()[k - 1]) / memory);
  }
}
