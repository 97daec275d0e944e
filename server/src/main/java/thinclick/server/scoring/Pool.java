package thinclick.server.scoring;

import org.jspecify.annotations.Nullable;

/** Several players put together: sums of counts, deviations about each player's own mean. */
final class Pool {
  private final Tolerance tolerance;
  private int written;
  private int placed;
  private int judgeable;
  private int matched;
  private boolean chance;
  private double worth;
  private double squares;
  private double freedom;
  private double plain;
  private double unsure;
  private double slopeWeight;
  private @Nullable Reason apart;

  Pool(Tolerance tolerance) {
    this.tolerance = tolerance;
  }

  void add(Judged one, Slice slice) {
    written += one.written(slice);
    placed += one.placed(slice);
    judgeable += one.judgeable(slice);
    chance |= one.chance && one.written(slice) > 0;
    Timed timed = one.timed(slice);
    Sample sample = timed.sample();
    matched += sample.size();
    worth += timed.worth();
    apart = timed.apart() == null ? apart : timed.apart();
    if (sample.size() < Timed.LEAST_FOR_SPREAD) {
      return;
    }
    unsure += Math.pow(sample.squares(), 2) / timed.worth();
    plain += sample.squares();
    squares += sample.correctedSquares();
    freedom += sample.size() - 1;
    if (sample.size() > 2 && sample.squares() > 0) {
      double inflation = sample.size() / Math.max(1, timed.worth());
      slopeWeight +=
          sample.squaresOfSteps()
              / (Math.max(1e-6, sample.spread() * sample.spread()) * Math.max(1, inflation));
    }
  }

  int written() {
    return written;
  }

  int placed() {
    return placed;
  }

  int matched() {
    return matched;
  }

  /** Why nothing that hangs on the pulse has an interval, or null. */
  @Nullable Reason apart() {
    return apart;
  }

  /** Inverse variance of a slope fitted through all these attacks, (ms a step)^-2. */
  double slopeWeight() {
    return slopeWeight;
  }

  Figure hold() {
    return Holds.figure(written, judgeable, placed, chance, worth, apart, tolerance);
  }

  Figure spread() {
    if (freedom <= 0) {
      return Figure.unknown(Reason.tooFew("a spread", Timed.LEAST_FOR_SPREAD, matched));
    }
    double sd = Math.sqrt(squares / freedom);
    if (apart != null) {
      return Figure.of(Round.millis(sd), apart);
    }
    return matched < Timed.LEAST_FOR_SPREAD_INTERVAL
        ? Figure.of(
            Round.millis(sd),
            Reason.tooFew("a spread's interval", Timed.LEAST_FOR_SPREAD_INTERVAL, matched))
        : Figure.of(
            Round.millis(sd), Intervals.spread(sd, unsure > 0 ? plain * plain / unsure : freedom));
  }
}
