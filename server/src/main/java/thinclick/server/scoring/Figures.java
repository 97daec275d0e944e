package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Take;

/** From an understanding to the figures of a review. */
final class Figures {
  private final Understanding understood;
  private final Sheet sheet;
  private final ModelFigures timings;
  private final Tolerance tolerance;
  private final Judged[] judged;
  private final boolean alone;

  Figures(Understanding understood) {
    this.understood = understood;
    sheet = understood.sheet();
    timings = Timings.of(understood);
    tolerance = Tolerance.of(sheet, understood.swing());
    alone = understood.pulse() == null;
    judged = new Judged[sheet.chairs.size()];
    for (int i = 0; i < judged.length; i++) {
      judged[i] = new Judged(understood, i, tolerance);
    }
    boolean[] apart = new boolean[sheet.stageClicks.length];
    for (int s = 0; s < apart.length; s++) {
      for (Judged one : judged) {
        apart[s] |= !alone && !sheet.stageClicks[s] && one.timed(one.stage(s)).wanders() != null;
      }
    }
    for (Judged one : judged) {
      one.bandCameApart(apart);
    }
  }

  Analysis analysis() {
    Take take = sheet.take;
    List<PlayerReview> players = new ArrayList<>();
    List<Analysis.PlayerAnalysis> analyses = new ArrayList<>();
    for (int i = 0; i < judged.length; i++) {
      players.add(player(judged[i], timings.player(i)));
      analyses.add(new Fates(judged[i], sheet).analysis());
    }
    List<StageReview> stages = new ArrayList<>();
    for (int s = 0; s < take.stages().size(); s++) {
      stages.add(stage(s));
    }
    List<@Nullable Double> pulse = new ArrayList<>(sheet.steps);
    for (int step = 0; step < sheet.steps; step++) {
      boolean known = !alone || sheet.stageClicks[sheet.stageOf(step)];
      pulse.add(known ? (Double) understood.pulseMillis(step) : null);
    }
    Review review =
        new Review(
            players,
            stages,
            ensemble(stages),
            take.title(),
            take.meter(),
            take.tempo(),
            take.stepsPerBeat(),
            tolerance.millis(),
            tolerance.byRule(),
            tolerance.smallestGapMillis(),
            new Responses(take, analyses, pulse, tolerance.millis()).all(),
            new FreeReviews(understood, judged, tolerance).all());
    return new Analysis(take, review, analyses, pulse);
  }

  private PlayerReview player(Judged one, ModelFigures.Player timing) {
    Reading reading = one.reading;
    Slice whole = one.whole();
    Timed all = one.timed(whole);
    Figure lean = all.lean();
    int[] added = one.addedByStage();
    List<PlayerStage> stages = new ArrayList<>();
    for (int s = 0; s < sheet.stageClicks.length; s++) {
      stages.add(playerStage(one, s, added[s]));
    }
    double uncertainty = reading.chair.uncertaintyMillis;
    return new PlayerReview(
        reading.chair.part.player(),
        reading.size(),
        one.placed(whole),
        one.dropped(whole),
        one.addedCount(),
        lean,
        all.spread(),
        position(one, Slice.Kind.ONBEAT),
        position(one, Slice.Kind.OFFBEAT),
        Contrast.offbeatMinusOnbeat(sheet, all.sample()),
        Episodes.displacements(sheet, reading),
        Holds.of(one, whole, tolerance),
        lean.known() ? (Double) charged(lean.get(), uncertainty) : null,
        uncertainty,
        swing(one),
        timing.timekeeperMillis(),
        timing.motorMillis(),
        timing.clickGain(),
        timing.tendencyMillis(),
        timing.forecasts(),
        Dynamics.accents(sheet, reading),
        Dynamics.noteLength(sheet, reading),
        stages,
        one.displaced(whole),
        reading.chair.awayCount,
        reading.chair.setAside.length,
        reading.shifts.period(),
        reading.chair.part.feelMillis(),
        reading.chair.part.role(),
        reading.chair.part.standIn());
  }

  /** What of a lean is the player's own doing: the rest may be the chair's clock and sound. */
  private static double charged(double lean, double uncertainty) {
    return Round.millis(lean - Math.max(-uncertainty, Math.min(uncertainty, lean)));
  }

  private static PositionReview position(Judged one, Slice.Kind kind) {
    Slice slice = one.whole().only(kind);
    Timed timed = one.timed(slice);
    return new PositionReview(one.written(slice), one.placed(slice), timed.lean(), timed.spread());
  }

  private PlayerStage playerStage(Judged one, int stage, int added) {
    Slice slice = one.stage(stage);
    Timed timed = one.timed(slice);
    return new PlayerStage(
        one.written(slice),
        one.placed(slice),
        one.dropped(slice),
        added,
        Holds.ofStage(one, stage, tolerance),
        timed.lean(),
        timed.spread());
  }

  private StageReview stage(int s) {
    Pool pool = new Pool(tolerance);
    for (Judged one : judged) {
      pool.add(one, one.stage(s));
    }
    return new StageReview(
        sheet.stageFrom[s] / sheet.stepsPerBar,
        sheet.stageFrom[s + 1] / sheet.stepsPerBar,
        sheet.plan.clicksPerBar(s, sheet.take.meter(), sheet.take.stepsPerBeat()),
        sheet.stoppedBeforeHalf(s) ? Figure.unknown(Holds.stopped()) : pool.hold(),
        pool.spread(),
        PulseFigures.drift(understood, s, pool),
        pool.written(),
        pool.placed());
  }

  private EnsembleReview ensemble(List<StageReview> stages) {
    Pool pool = new Pool(tolerance);
    for (Judged one : judged) {
      pool.add(one, one.whole());
    }
    Reason noPulse = alone ? Holds.noPulse() : null;
    Timed offClick = PulseFigures.offClick(understood);
    return new EnsembleReview(
        pool.hold(),
        heldThrough(stages),
        alone ? null : Returns.of(understood),
        noPulse,
        timings.gains(),
        timings.gainsInterval(),
        timings.gainsReason(),
        timings.pairs(),
        noPulse != null ? Figure.unknown(noPulse) : offClick.mean("pulse against click", 2),
        noPulse != null ? Figure.unknown(noPulse) : offClick.spread(),
        pool.spread(),
        ensembleSwing(),
        timings.delay());
  }

  private Figure swing(Judged one) {
    if (!SwingRatio.exists(sheet.grid.stepsPerBeat())) {
      return Figure.unknown(noPairs());
    }
    SwingRatio.Place place = one.swing();
    if (place == null) {
      return Figure.unknown(
          Reason.Code.TOO_FEW,
          "a swing ratio needs " + SwingRatio.LEAST + " attacks on each of the two steps of pairs");
    }
    return ratio(place);
  }

  private Figure ensembleSwing() {
    if (!SwingRatio.exists(sheet.grid.stepsPerBeat())) {
      return Figure.unknown(noPairs());
    }
    List<SwingRatio.Place> places = new ArrayList<>();
    for (Judged one : judged) {
      SwingRatio.Place place = one.swing();
      if (place != null) {
        places.add(place);
      }
    }
    if (places.isEmpty()) {
      return Figure.unknown(
          Reason.Code.TOO_FEW,
          "nobody played " + SwingRatio.LEAST + " attacks on each of the two steps of pairs");
    }
    return ratio(SwingRatio.together(places));
  }

  private Reason noPairs() {
    return new Reason(
        Reason.Code.NO_PAIRS,
        "a beat of " + sheet.grid.stepsPerBeat() + " steps has no pairs to swing");
  }

  private static Figure ratio(SwingRatio.Place place) {
    double ratio = place.ratio();
    double error = 1.96 * place.ratioError();
    return Figure.of(
        Round.fine(ratio),
        new Interval(Round.fine(Math.max(0, ratio - error)), Round.fine(ratio + error)));
  }

  /** The stage with the fewest clicks a bar that was held, among equals the last; -1 for none. */
  static int heldThrough(List<StageReview> stages) {
    int best = -1;
    for (int s = 0; s < stages.size(); s++) {
      if (stages.get(s).held()
          && (best < 0 || stages.get(s).clicksPerBar() <= stages.get(best).clicksPerBar())) {
        best = s;
      }
    }
    return best;
  }
}
