package thinclick.server.scoring;

import java.util.Arrays;

/** Figures of the ensemble pulse itself: how it drifted, and where it stood against the click. */
final class PulseFigures {
  private static final int LEAST_BEATS_FOR_DRIFT = 4;

  private PulseFigures() {}

  /**
   * Slope of the pulse against the written grid over a stage's steps, percent of a step a step.
   *
   * @param pool all players in the stage
   */
  static Figure drift(Understanding understood, int stage, Pool pool) {
    Sheet sheet = understood.sheet();
    return drift(understood, sheet.stageFrom[stage], sheet.stageFrom[stage + 1], pool);
  }

  /**
   * The same over any steps.
   *
   * @param pool all players in them
   */
  static Figure drift(Understanding understood, int from, int end, Pool pool) {
    Sheet sheet = understood.sheet();
    if (understood.pulse() == null) {
      return Figure.unknown(Holds.noPulse());
    }
    int to = Math.min(end, sheet.lastCountedStep + 1);
    int steps = to - from;
    if (steps < LEAST_BEATS_FOR_DRIFT * sheet.grid.stepsPerBeat()) {
      return Figure.unknown(
          Reason.Code.TOO_SHORT,
          "a drift needs " + LEAST_BEATS_FOR_DRIFT + " beats, this stretch was shorter");
    }
    if (pool.matched() < 2) {
      return Figure.unknown(Reason.tooFew("a drift", 2, pool.matched()));
    }
    double middle = (steps - 1) / 2.0;
    double sxy = 0;
    for (int i = 0; i < steps; i++) {
      double off = understood.pulseMillis(from + i) - sheet.nominalMillis(from + i);
      sxy += (i - middle) * off;
    }
    double sxx = steps * ((double) steps * steps - 1) / 12;
    double percent = 100 * sxy / sxx / sheet.stepMillis;
    Reason apart = pool.apart();
    if (apart != null) {
      return Figure.of(Round.fine(percent), apart);
    }
    if (pool.slopeWeight() <= 0) {
      return Figure.of(
          Round.fine(percent), Reason.tooFew("a drift's interval: attacks", 3, pool.matched()));
    }
    double error = 1.96 * 100 / Math.sqrt(pool.slopeWeight()) / sheet.stepMillis;
    return Figure.of(
        Round.fine(percent),
        new Interval(Round.fine(percent - error), Round.fine(percent + error)));
  }

  /** Pulse minus click over the clicks from the first matched attack to the last. */
  static Timed offClick(Understanding understood) {
    Sheet sheet = understood.sheet();
    double first = Double.POSITIVE_INFINITY;
    double last = Double.NEGATIVE_INFINITY;
    for (Reading reading : understood.readings()) {
      for (int partner : reading.partner) {
        if (partner != Matcher.NONE) {
          first = Math.min(first, reading.chair.attacks[partner]);
          last = Math.max(last, reading.chair.attacks[partner]);
        }
      }
    }
    int[] at = new int[sheet.clickSteps.length];
    double[] off = new double[at.length];
    int count = 0;
    for (int click : sheet.clickSteps) {
      double pulse = understood.pulseMillis(click);
      // half a step of grace: the click that the first and the last attack answer belongs to them
      if (pulse >= first - sheet.stepMillis / 2 && pulse <= last + sheet.stepMillis / 2) {
        at[count] = click;
        off[count++] = pulse - sheet.clickMillis(click);
      }
    }
    return Timed.of(
        new Sample(Arrays.copyOf(at, count), Arrays.copyOf(off, count), new double[count]),
        sheet.grid.stepsPerBeat());
  }
}
