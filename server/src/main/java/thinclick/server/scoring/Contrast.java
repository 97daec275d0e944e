package thinclick.server.scoring;

/**
 * The difference of two means that share one course of time: asynchronies off the beats against
 * those on them, by generalised least squares with one covariance for both.
 */
final class Contrast {
  private Contrast() {}

  /** Mean asynchrony off the beats less that on them, ms. */
  static Figure offbeatMinusOnbeat(Sheet sheet, Sample sample) {
    int n = sample.size();
    boolean[] off = new boolean[n];
    double[] sum = new double[2];
    int[] count = new int[2];
    for (int k = 0; k < n; k++) {
      off[k] = !sheet.grid.onbeat(sample.at()[k]);
      sum[off[k] ? 1 : 0] += sample.millis()[k];
      count[off[k] ? 1 : 0]++;
    }
    int fewer = Math.min(count[0], count[1]);
    if (fewer < Timed.LEAST_FOR_LEAN) {
      return Figure.unknown(
          Reason.tooFew("on against off the beat: of either", Timed.LEAST_FOR_LEAN, fewer));
    }
    double[] rest = new double[n];
    for (int k = 0; k < n; k++) {
      rest[k] = sample.millis()[k] - sum[off[k] ? 1 : 0] / count[off[k] ? 1 : 0];
    }
    Sample level = new Sample(sample.at(), rest, sample.taken());
    AsynchronyFit fit = AsynchronyFit.of(level, sheet.grid.stepsPerBeat());
    double[] found = difference(sample, off, fit, sheet.grid.stepsPerBeat());
    return Figure.of(
        Round.millis(found[0]), Intervals.mean(found[0], found[1], Math.max(1, n - 2)));
  }

  /** The difference and its standard error: three columns through one whitening filter. */
  private static double[] difference(
      Sample sample, boolean[] off, AsynchronyFit fit, int stepsPerBeat) {
    double share = fit.slowShare();
    double[] state = new double[3]; // of the data, the constant, the offbeats' indicator
    double[] error = new double[3];
    double[][] moment = new double[3][3];
    double p = share;
    for (int k = 0; k < sample.size(); k++) {
      if (k > 0) {
        double keep = AsynchronyFit.fade(sample, k, fit.memoryBeats() * stepsPerBeat);
        for (int c = 0; c < 3; c++) {
          state[c] *= keep;
        }
        p = keep * keep * p + share * (1 - keep * keep);
      }
      double weight = 1 / (p + 1 - share);
      error[0] = sample.millis()[k] - state[0];
      error[1] = 1 - state[1];
      error[2] = (off[k] ? 1 : 0) - state[2];
      for (int c = 0; c < 3; c++) {
        for (int d = 0; d < 3; d++) {
          moment[c][d] += error[c] * error[d] * weight;
        }
      }
      for (int c = 0; c < 3; c++) {
        state[c] += p * weight * error[c];
      }
      p -= p * weight * p;
    }
    double det = moment[1][1] * moment[2][2] - moment[1][2] * moment[1][2];
    double mean = (moment[2][2] * moment[0][1] - moment[1][2] * moment[0][2]) / det;
    double difference = (moment[1][1] * moment[0][2] - moment[1][2] * moment[0][1]) / det;
    double squares = moment[0][0] - mean * moment[0][1] - difference * moment[0][2];
    double variance = Math.max(0, squares) / Math.max(1, sample.size() - 2);
    return new double[] {difference, Math.sqrt(variance * moment[1][1] / det)};
  }
}
