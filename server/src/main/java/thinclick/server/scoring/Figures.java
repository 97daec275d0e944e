package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Take;

/** From an understanding to the figures of a review. */
final class Figures {
  private final Understanding understood;
  private final Sheet sheet;
  private final Tolerance tolerance;
  private final Judged[] judged;
  private final boolean alone;

  Figures(Understanding understood) {
    this.understood = understood;
    sheet = understood.sheet();
    tolerance = Tolerance.of(sheet, understood.swing());
    alone = understood.pulse() == null;
    judged = new Judged[sheet.chairs.size()];
    for (int i = 0; i < judged.length; i++) {
      judged[i] = new Judged(understood, i, tolerance);
    }
  }

  Analysis analysis() {
    Take take = sheet.take;
    List<PlayerReview> players = new ArrayList<>();
    for (Judged one : judged) {
      players.add(player(one));
    }
    List<StageReview> stages = new ArrayList<>();
    for (int s = 0; s < take.stages().size(); s++) {
      stages.add(stage(s));
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
            tolerance.smallestGapMillis());
    List<Analysis.PlayerAnalysis> analyses = new ArrayList<>();
    for (Judged one : judged) {
      analyses.add(one.analysis());
    }
    List<@Nullable Double> pulse = new ArrayList<>();
    for (int step = 0; step < sheet.steps; step++) {
      boolean known = !alone || sheet.stageClicks[sheet.stageOf(step)];
      pulse.add(known ? (Double) understood.pulseMillis(step) : null);
    }
    return new Analysis(take, review, analyses, pulse);
  }

  private PlayerReview player(Judged one) {
    Reading reading = one.reading;
    Sample all = one.sample(k -> true);
    Reason later = new Reason(Reason.Code.TOO_FEW, "the timing model has not been fitted");
    List<PlayerStage> stages = new ArrayList<>();
    for (int s = 0; s < sheet.stageClicks.length; s++) {
      stages.add(playerStage(one, s));
    }
    Figure lean = lean(all);
    double uncertainty = reading.chair.part.uncertaintyMillis();
    return new PlayerReview(
        reading.chair.part.player(),
        reading.size(),
        one.placed(k -> true),
        one.dropped(k -> true),
        one.addedCount(),
        lean,
        spread(all),
        position(one, true),
        position(one, false),
        Episodes.displacements(sheet, reading),
        hold(one, k -> true),
        lean.known() ? (Double) charged(lean.get(), uncertainty) : null,
        uncertainty,
        Figure.unknown(later),
        Figure.unknown(later),
        Figure.unknown(later),
        Figure.unknown(later),
        Figure.unknown(later),
        stages,
        one.displaced(),
        reading.chair.awayCount,
        reading.chair.setAside.length,
        reading.shifts.period(),
        reading.chair.part.feelMillis(),
        reading.chair.part.role(),
        reading.chair.part.standIn());
  }

  private static double charged(double lean, double uncertainty) {
    return Round.millis(lean - Math.max(-uncertainty, Math.min(uncertainty, lean)));
  }

  private PositionReview position(Judged one, boolean onbeat) {
    Judged.Where where = k -> sheet.grid.onbeat(one.reading.chair.steps[k]) == onbeat;
    Sample sample = one.sample(where);
    return new PositionReview(one.written(where), one.placed(where), lean(sample), spread(sample));
  }

  private PlayerStage playerStage(Judged one, int stage) {
    Judged.Where where = inStage(one, stage);
    Sample sample = one.sample(where);
    return new PlayerStage(
        one.written(where),
        one.placed(where),
        one.dropped(where),
        one.addedIn(stage),
        hold(one, where),
        lean(sample),
        spread(sample));
  }

  private Judged.Where inStage(Judged one, int stage) {
    return k -> sheet.stageOf(one.reading.chair.steps[k]) == stage;
  }

  private Figure lean(Sample sample) {
    if (sample.size() < 4) {
      return Figure.unknown(Reason.tooFew("a lean", 4, sample.size()));
    }
    return Figure.exact(Round.millis(sample.mean()));
  }

  private Figure spread(Sample sample) {
    if (sample.size() < 2) {
      return Figure.unknown(Reason.tooFew("a spread", 2, sample.size()));
    }
    return Figure.exact(Round.millis(sample.spread()));
  }

  private Figure hold(Judged one, Judged.Where where) {
    int written = one.judgeable(where);
    if (one.written(where) == 0) {
      return Figure.unknown(Reason.Code.NOTHING_WRITTEN, "nothing is written here");
    }
    if (one.chance) {
      return Figure.unknown(chance());
    }
    if (written == 0) {
      return Figure.unknown(noPulse());
    }
    return Figure.exact(Round.percent(100.0 * one.placed(where) / written));
  }

  private Reason chance() {
    return new Reason(
        Reason.Code.CHANCE_WOULD_PLACE,
        "a tolerance of "
            + Math.round(tolerance.millis())
            + " ms is over 35 % of the smallest written gap");
  }

  private static Reason noPulse() {
    return new Reason(Reason.Code.NO_PULSE, "one player in silence has nobody to be together with");
  }

  private StageReview stage(int s) {
    int written = 0;
    int placed = 0;
    int judgeable = 0;
    boolean chance = false;
    Pooled pooled = new Pooled();
    for (Judged one : judged) {
      Judged.Where where = inStage(one, s);
      written += one.written(where);
      judgeable += one.judgeable(where);
      placed += one.placed(where);
      chance |= one.chance && one.written(where) > 0;
      pooled.add(one.sample(where));
    }
    return new StageReview(
        sheet.stageFrom[s] / sheet.stepsPerBar,
        sheet.stageFrom[s + 1] / sheet.stepsPerBar,
        sheet.plan.clicksPerBar(s, sheet.take.meter(), sheet.take.stepsPerBeat()),
        ensembleHold(written, judgeable, placed, chance),
        pooled.figure(),
        drift(s),
        written,
        placed,
        PlanWords.of(sheet.take.stages().get(s), sheet.take.meter(), sheet.take.stepsPerBeat()));
  }

  private Figure ensembleHold(int written, int judgeable, int placed, boolean chance) {
    if (written == 0) {
      return Figure.unknown(Reason.Code.NOTHING_WRITTEN, "nothing is written here");
    }
    if (chance) {
      return Figure.unknown(chance());
    }
    if (judgeable == 0) {
      return Figure.unknown(noPulse());
    }
    return Figure.exact(Round.percent(100.0 * placed / judgeable));
  }

  private Figure drift(int s) {
    int from = sheet.stageFrom[s];
    int to = Math.min(sheet.stageFrom[s + 1], sheet.lastCountedStep() + 1);
    if (alone) {
      return Figure.unknown(noPulse());
    }
    int steps = to - from;
    if (steps < 4 * sheet.grid.stepsPerBeat()) {
      return Figure.unknown(Reason.Code.TOO_SHORT, "a drift needs 4 beats, this stage was shorter");
    }
    double meanX = (steps - 1) / 2.0;
    double sxy = 0;
    double sxx = 0;
    for (int i = 0; i < steps; i++) {
      double off = understood.pulseMillis(from + i) - sheet.nominalMillis(from + i);
      sxy += (i - meanX) * off;
      sxx += (i - meanX) * (i - meanX);
    }
    return Figure.exact(Round.fine(100 * sxy / sxx / sheet.stepMillis));
  }

  private EnsembleReview ensemble(List<StageReview> stages) {
    int written = 0;
    int placed = 0;
    int judgeable = 0;
    boolean chance = false;
    Pooled pooled = new Pooled();
    for (Judged one : judged) {
      written += one.written(k -> true);
      placed += one.placed(k -> true);
      judgeable += one.judgeable(k -> true);
      chance |= one.chance && one.reading.size() > 0;
      for (int s = 0; s < stages.size(); s++) {
        pooled.add(one.sample(inStage(one, s)));
      }
    }
    Reason later = new Reason(Reason.Code.TOO_FEW, "the timing model has not been fitted");
    return new EnsembleReview(
        ensembleHold(written, judgeable, placed, chance),
        heldThrough(stages),
        List.of(),
        null,
        null,
        later,
        Figure.unknown(later),
        Figure.unknown(later),
        pooled.figure(),
        Figure.unknown(later),
        later);
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

  /** Deviations about each player's own mean, put together. */
  private static final class Pooled {
    private double squares;
    private double freedom;
    private int count;

    void add(Sample sample) {
      if (sample.size() >= 2) {
        squares += sample.squares();
        freedom += sample.freedom();
        count += sample.size();
      }
    }

    Figure figure() {
      if (count < 2 || freedom <= 0) {
        return Figure.unknown(Reason.tooFew("a spread", 2, count));
      }
      return Figure.exact(Round.millis(Math.sqrt(squares / freedom)));
    }
  }
}
