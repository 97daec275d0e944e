package thinclick.server.scoring;

import org.jspecify.annotations.Nullable;

/**
 * Some of a player's asynchronies with what they say: lean, spread, and what they are worth.
 *
 * @param sample the asynchronies
 * @param fit how they hang together; null where there are fewer than two
 */
record Timed(Sample sample, @Nullable AsynchronyFit fit) {
  static final int LEAST_FOR_LEAN = 4;
  static final int LEAST_FOR_SPREAD = 2;
  static final int LEAST_FOR_SPREAD_INTERVAL = 8;

  static Timed of(Sample sample, int stepsPerBeat) {
    return new Timed(
        sample, sample.size() < LEAST_FOR_SPREAD ? null : AsynchronyFit.of(sample, stepsPerBeat));
  }

  /** So many independent asynchronies would tell as much. */
  double worth() {
    return fit == null ? sample.size() : fit.freedom();
  }

  Figure lean() {
    return mean("a lean", LEAST_FOR_LEAN);
  }

  /** The mean with its interval, where there are enough. */
  Figure mean(String what, int least) {
    int n = sample.size();
    if (n < least || fit == null) {
      return Figure.unknown(Reason.tooFew(what, least, n));
    }
    double mean = sample.mean();
    return Figure.of(Round.millis(mean), Intervals.mean(mean, fit.meanError(), fit.freedom()));
  }

  Figure spread() {
    int n = sample.size();
    if (fit == null) {
      return Figure.unknown(Reason.tooFew("a spread", LEAST_FOR_SPREAD, n));
    }
    double sd = sample.spread();
    return n < LEAST_FOR_SPREAD_INTERVAL
        ? Figure.of(
            Round.millis(sd), Reason.tooFew("a spread's interval", LEAST_FOR_SPREAD_INTERVAL, n))
        : Figure.of(Round.millis(sd), Intervals.spread(sd, fit.freedom()));
  }
}
