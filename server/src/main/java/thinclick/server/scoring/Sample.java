package thinclick.server.scoring;

/**
 * Asynchronies of one player, in order of time.
 *
 * @param at the step each sounded on
 * @param millis the asynchronies
 * @param leverage how much of each attack's own distance its pulse took up, 0-1
 */
@SuppressWarnings("ArrayRecordComponent") // columns of numbers, never compared or changed
record Sample(int[] at, double[] millis, double[] leverage) {
  int size() {
    return millis.length;
  }

  double mean() {
    double sum = 0;
    for (double one : millis) {
      sum += one;
    }
    return sum / millis.length;
  }

  /** Sum of squares about the mean. */
  double squares() {
    double mean = mean();
    double sum = 0;
    for (double one : millis) {
      sum += (one - mean) * (one - mean);
    }
    return sum;
  }

  /** Sum of squares of the steps about their mean, steps squared. */
  double squaresOfSteps() {
    double mean = 0;
    for (int one : at) {
      mean += one / (double) at.length;
    }
    double sum = 0;
    for (int one : at) {
      sum += (one - mean) * (one - mean);
    }
    return sum;
  }

  /** Degrees of freedom: one for the mean, and what the pulse took up of each attack. */
  double freedom() {
    double sum = -1;
    for (double one : leverage) {
      sum += 1 - one;
    }
    return Math.max(0.1, sum);
  }

  /** Standard deviation, corrected for what the player's own attacks moved the pulse. */
  double spread() {
    return Math.sqrt(squares() / freedom());
  }
}
