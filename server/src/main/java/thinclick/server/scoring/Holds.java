package thinclick.server.scoring;

import org.jspecify.annotations.Nullable;

/** The share of written attacks that were placed, or why it cannot be known. */
final class Holds {
  private Holds() {}

  static Figure of(Judged one, Slice slice, Tolerance tolerance) {
    return figure(
        one.written(slice),
        one.judgeable(slice),
        one.placed(slice),
        one.chance,
        one.timed(slice).worth(),
        one.timed(slice).wanders(),
        tolerance);
  }

  /** The same of a stage; unknown where the player was there for less than half of it. */
  static Figure ofStage(Judged one, int stage, Tolerance tolerance) {
    Slice slice = one.stage(stage);
    if (one.sheet().stoppedBeforeHalf(stage)) {
      return Figure.unknown(stopped());
    }
    int counted = one.written(slice);
    if (2 * counted < one.writtenAnyway(stage)) {
      return Figure.unknown(
          Reason.Code.TOO_SHORT, "the player was away for more than half of this stage");
    }
    return of(one, slice, tolerance);
  }

  /** A few bars of a stage say nothing of how it is held. */
  static Reason stopped() {
    return new Reason(
        Reason.Code.TOO_SHORT, "the take was stopped before half of this stage was played");
  }

  /**
   * The figure from its counts.
   *
   * @param worth so many independent asynchronies would tell as much
   * @param wanders why there is no interval, or null
   */
  static Figure figure(
      int written,
      int judgeable,
      int placed,
      boolean chance,
      double worth,
      @Nullable Reason wanders,
      Tolerance tolerance) {
    if (written == 0) {
      return Figure.unknown(Reason.Code.NOTHING_WRITTEN, "nothing is written here");
    }
    if (chance) {
      return Figure.unknown(
          Reason.Code.CHANCE_WOULD_PLACE,
          "a tolerance of "
              + Math.round(tolerance.millis())
              + " ms is over 35 % of the smallest written gap, luck alone would place attacks");
    }
    if (judgeable == 0) {
      return Figure.unknown(noPulse());
    }
    double percent = Round.percent(100.0 * placed / judgeable);
    return wanders != null
        ? Figure.of(percent, wanders)
        : Figure.of(percent, Intervals.share(placed, judgeable, worth));
  }

  static Reason noPulse() {
    return new Reason(Reason.Code.NO_PULSE, "one player in silence has nobody to be together with");
  }
}
