package thinclick.server.scoring;

/**
 * Asynchronies of one player, in order of time.
 *
 * @param at the step each sounded on
 * @param millis the asynchronies
 * @param taken how much of each attack's variance its pulse took up, ms2
 */
@SuppressWarnings("ArrayRecordComponent") // columns of numbers, never compared or changed
record Sample(int[] at, double[] millis, double[] taken) {
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

  /** Sum of squares about the mean, with what the pulse took up of it given back. */
  double correctedSquares() {
    double squares = squares();
    return squares + given(squares);
  }

  private double given(double squares) {
    double given = 0;
    for (double one : taken) {
      given += one;
    }
    return Math.min(squares, given);
  }

  /**
   * How much surer the variance must not be than what was given back: half of what the pulse can
   * have taken is given back at a guess, so that it may as well have been nothing or all.
   *
   * @param freedom what the asynchronies alone are worth
   */
  double freedomOfSpread(double freedom) {
    double squares = squares();
    double given = given(squares);
    if (given <= 0) {
      return freedom;
    }
    double doubt = given / (squares + given);
    return 2 / (2 / freedom + doubt * doubt);
  }

  /** Standard deviation, corrected for what the player's own attacks moved the pulse. */
  double spread() {
    return Math.sqrt(correctedSquares() / (size() - 1));
  }
}
