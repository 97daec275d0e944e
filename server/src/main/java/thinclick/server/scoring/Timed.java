package thinclick.server.scoring;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Some of a player's asynchronies with what they say: lean, spread, and what they are worth.
 *
 * @param sample the asynchronies
 * @param stepsPerBeat steps a beat
 * @param fit how they hang together; null where there are fewer than two
 * @param apart why no interval can be given where the band did not stay together, or null
 */
record Timed(Sample sample, int stepsPerBeat, @Nullable AsynchronyFit fit, @Nullable Reason apart) {
  static final int LEAST_FOR_LEAN = 4;
  static final int LEAST_FOR_SPREAD = 2;
  static final int LEAST_FOR_SPREAD_INTERVAL = 8;

  static Timed of(Sample sample, int stepsPerBeat) {
    return new Timed(
        sample,
        stepsPerBeat,
        sample.size() < LEAST_FOR_SPREAD ? null : AsynchronyFit.of(sample, stepsPerBeat),
        null);
  }

  /** The same in a band of which somebody wandered off. */
  Timed inABandThatCameApart() {
    return new Timed(
        sample,
        stepsPerBeat,
        fit,
        new Reason(
            Reason.Code.UNSTABLE,
            "the players did not stay together in silence, so the pulse is no steady measure"));
  }

  /**
   * The same with no more certainty than its stages leave: where a thinner click makes them
   * unequal, the unsteadiest decides (Satterthwaite's rule).
   */
  Timed overStages(List<Timed> stages) {
    double sum = 0;
    double squared = 0;
    double errors = 0;
    for (Timed one : stages) {
      if (one.fit != null) {
        double squares = one.sample.squares();
        sum += squares;
        squared += squares * squares / one.fit.freedom();
        errors += Math.pow(one.sample.size() * one.fit.meanError(), 2);
      }
    }
    return fit == null || squared <= 0
        ? this
        : new Timed(
            sample,
            stepsPerBeat,
            fit.atMost(sum * sum / squared, Math.sqrt(errors) / sample.size()),
            apart);
  }

  /** So many independent asynchronies would tell as much. */
  double worth() {
    return fit == null ? sample.size() : fit.freedom();
  }

  /** Why no interval can be given where the distance from the pulse has no steady mean. */
  @Nullable Reason wanders() {
    if (apart != null) {
      return apart;
    }
    int n = sample.size();
    if (fit == null || n < LEAST_FOR_SPREAD_INTERVAL) {
      return null;
    }
    double beats = (double) (sample.at()[n - 1] - sample.at()[0]) / stepsPerBeat;
    return fit.wanders(beats)
        ? new Reason(
            Reason.Code.UNSTABLE,
            "the distance from the pulse wandered off and did not come back, it has no steady mean")
        : null;
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
    Reason wanders = wanders();
    if (wanders != null) {
      return Figure.of(Round.millis(mean), wanders);
    }
    return Figure.of(Round.millis(mean), Intervals.mean(mean, fit.meanError(), fit.freedom()));
  }

  Figure spread() {
    int n = sample.size();
    if (fit == null) {
      return Figure.unknown(Reason.tooFew("a spread", LEAST_FOR_SPREAD, n));
    }
    double sd = sample.spread();
    Reason wanders = wanders();
    if (wanders != null) {
      return Figure.of(Round.millis(sd), wanders);
    }
    return n < LEAST_FOR_SPREAD_INTERVAL
        ? Figure.of(
            Round.millis(sd), Reason.tooFew("a spread's interval", LEAST_FOR_SPREAD_INTERVAL, n))
        : Figure.of(Round.millis(sd), Intervals.spread(sd, sample.freedomOfSpread(fit.freedom())));
  }
}
