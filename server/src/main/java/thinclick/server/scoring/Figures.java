package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Take;

/** From an understanding to the figures of a review. */
final class Figures {
  private static final int LEAST_FOR_LEAN = 4;
  private static final int LEAST_FOR_SPREAD = 2;
  private static final int LEAST_FOR_SPREAD_INTERVAL = 8;
  private static final int LEAST_BEATS_FOR_DRIFT = 4;

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
    List<@Nullable Double> pulse = new ArrayList<>(sheet.steps);
    for (int step = 0; step < sheet.steps; step++) {
      boolean known = !alone || sheet.stageClicks[sheet.stageOf(step)];
      pulse.add(known ? (Double) understood.pulseMillis(step) : null);
    }
    return new Analysis(take, review, analyses, pulse);
  }

  private PlayerReview player(Judged one) {
    Reading reading = one.reading;
    Slice whole = one.whole();
    Timing all = timing(one.sample(whole));
    int[] added = one.addedByStage();
    List<PlayerStage> stages = new ArrayList<>();
    for (int s = 0; s < sheet.stageClicks.length; s++) {
      stages.add(playerStage(one, s, added[s]));
    }
    double uncertainty = reading.chair.part.uncertaintyMillis();
    Reason later = new Reason(Reason.Code.TOO_FEW, "the timing model has not been fitted");
    return new PlayerReview(
        reading.chair.part.player(),
        reading.size(),
        one.placed(whole),
        one.dropped(whole),
        one.addedCount(),
        all.lean,
        all.spread,
        position(one, Slice.Kind.ONBEAT),
        position(one, Slice.Kind.OFFBEAT),
        Episodes.displacements(sheet, reading),
        hold(one, whole, all.freedom),
        all.lean.known() ? (Double) charged(all.lean.get(), uncertainty) : null,
        uncertainty,
        swing(one),
        Figure.unknown(later),
        Figure.unknown(later),
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

  private PositionReview position(Judged one, Slice.Kind kind) {
    Slice slice = one.whole().only(kind);
    Timing timing = timing(one.sample(slice));
    return new PositionReview(one.written(slice), one.placed(slice), timing.lean, timing.spread);
  }

  private PlayerStage playerStage(Judged one, int stage, int added) {
    Slice slice = one.stage(stage);
    Timing timing = timing(one.sample(slice));
    return new PlayerStage(
        one.written(slice),
        one.placed(slice),
        one.dropped(slice),
        added,
        hold(one, slice, timing.freedom),
        timing.lean,
        timing.spread);
  }

  /** Lean and spread of a sample, and what its asynchronies are worth. */
  private record Timing(Figure lean, Figure spread, double freedom) {}

  private Timing timing(Sample sample) {
    int n = sample.size();
    if (n < LEAST_FOR_SPREAD) {
      return new Timing(
          Figure.unknown(Reason.tooFew("a lean", LEAST_FOR_LEAN, n)),
          Figure.unknown(Reason.tooFew("a spread", LEAST_FOR_SPREAD, n)),
          n);
    }
    AsynchronyFit fit = AsynchronyFit.of(sample, sheet.grid.stepsPerBeat());
    Figure lean =
        n < LEAST_FOR_LEAN
            ? Figure.unknown(Reason.tooFew("a lean", LEAST_FOR_LEAN, n))
            : Figure.of(
                Round.millis(sample.mean()),
                Intervals.mean(sample.mean(), fit.meanError(), fit.freedom()));
    double sd = Round.millis(sample.spread());
    Figure spread =
        n < LEAST_FOR_SPREAD_INTERVAL
            ? Figure.of(sd, Reason.tooFew("a spread's interval", LEAST_FOR_SPREAD_INTERVAL, n))
            : Figure.of(sd, Intervals.spread(sample.spread(), fit.freedom()));
    return new Timing(lean, spread, fit.freedom());
  }

  private Figure hold(Judged one, Slice slice, double freedom) {
    int judgeable = one.judgeable(slice);
    if (one.written(slice) == 0) {
      return Figure.unknown(Reason.Code.NOTHING_WRITTEN, "nothing is written here");
    }
    if (one.chance) {
      return Figure.unknown(chance());
    }
    if (judgeable == 0) {
      return Figure.unknown(noPulse());
    }
    return share(one.placed(slice), judgeable, freedom);
  }

  private static Figure share(int placed, int written, double freedom) {
    return Figure.of(
        Round.percent(100.0 * placed / written), Intervals.share(placed, written, freedom));
  }

  private Reason chance() {
    return new Reason(
        Reason.Code.CHANCE_WOULD_PLACE,
        "a tolerance of "
            + Math.round(tolerance.millis())
            + " ms is over 35 % of the smallest written gap, luck alone would place attacks");
  }

  private static Reason noPulse() {
    return new Reason(Reason.Code.NO_PULSE, "one player in silence has nobody to be together with");
  }

  private Figure swing(Judged one) {
    if (sheet.grid.stepsPerBeat() % 2 != 0 || sheet.grid.stepsPerBeat() == 6) {
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

  private StageReview stage(int s) {
    Pool pool = new Pool();
    for (Judged one : judged) {
      pool.add(one, one.stage(s));
    }
    return new StageReview(
        sheet.stageFrom[s] / sheet.stepsPerBar,
        sheet.stageFrom[s + 1] / sheet.stepsPerBar,
        sheet.plan.clicksPerBar(s, sheet.take.meter(), sheet.take.stepsPerBeat()),
        pool.hold(),
        pool.spread(),
        drift(s, pool),
        pool.written,
        pool.placed);
  }

  /** Slope of the pulse against the written grid over the stage's steps, percent of a step. */
  private Figure drift(int s, Pool pool) {
    int from = sheet.stageFrom[s];
    int to = Math.min(sheet.stageFrom[s + 1], sheet.lastCountedStep() + 1);
    if (alone) {
      return Figure.unknown(noPulse());
    }
    int steps = to - from;
    if (steps < LEAST_BEATS_FOR_DRIFT * sheet.grid.stepsPerBeat()) {
      return Figure.unknown(
          Reason.Code.TOO_SHORT,
          "a drift needs " + LEAST_BEATS_FOR_DRIFT + " beats, this stage was shorter");
    }
    if (pool.matched < 2) {
      return Figure.unknown(Reason.tooFew("a drift", 2, pool.matched));
    }
    double middle = (steps - 1) / 2.0;
    double sxy = 0;
    for (int i = 0; i < steps; i++) {
      double off = understood.pulseMillis(from + i) - sheet.nominalMillis(from + i);
      sxy += (i - middle) * off;
    }
    double sxx = steps * ((double) steps * steps - 1) / 12;
    double percent = 100 * sxy / sxx / sheet.stepMillis;
    if (pool.slopeWeight <= 0) {
      return Figure.of(
          Round.fine(percent), Reason.tooFew("a drift's interval: attacks", 3, pool.matched));
    }
    double error = 1.96 * 100 / Math.sqrt(pool.slopeWeight) / sheet.stepMillis;
    return Figure.of(
        Round.fine(percent),
        new Interval(Round.fine(percent - error), Round.fine(percent + error)));
  }

  private EnsembleReview ensemble(List<StageReview> stages) {
    Pool pool = new Pool();
    for (Judged one : judged) {
      pool.add(one, one.whole());
    }
    Reason later = new Reason(Reason.Code.TOO_FEW, "the timing model has not been fitted");
    Figure[] offClick = offClick();
    return new EnsembleReview(
        pool.hold(),
        heldThrough(stages),
        alone ? null : Returns.of(understood),
        null,
        null,
        later,
        offClick[0],
        offClick[1],
        pool.spread(),
        ensembleSwing(),
        alone ? noPulse() : null);
  }

  private Figure ensembleSwing() {
    if (sheet.grid.stepsPerBeat() % 2 != 0 || sheet.grid.stepsPerBeat() == 6) {
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

  /** Mean and standard deviation of pulse minus click, from the first attack to the last. */
  private Figure[] offClick() {
    if (alone) {
      return new Figure[] {Figure.unknown(noPulse()), Figure.unknown(noPulse())};
    }
    double first = Double.POSITIVE_INFINITY;
    double last = Double.NEGATIVE_INFINITY;
    for (Judged one : judged) {
      double[] attacks = one.reading.chair.attacks;
      for (int partner : one.reading.partner) {
        if (partner != Matcher.NONE) {
          first = Math.min(first, attacks[partner]);
          last = Math.max(last, attacks[partner]);
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
    Sample sample =
        new Sample(Arrays.copyOf(at, count), Arrays.copyOf(off, count), new double[count]);
    Reason few = Reason.tooFew("pulse against click: clicks", 2, count);
    if (count < 2) {
      return new Figure[] {
        count == 1 ? Figure.of(Round.millis(sample.mean()), few) : Figure.unknown(few),
        Figure.unknown(few)
      };
    }
    AsynchronyFit fit = AsynchronyFit.of(sample, sheet.grid.stepsPerBeat());
    double sd = sample.spread();
    return new Figure[] {
      Figure.of(
          Round.millis(sample.mean()),
          Intervals.mean(sample.mean(), fit.meanError(), fit.freedom())),
      count < LEAST_FOR_SPREAD_INTERVAL
          ? Figure.of(
              Round.millis(sd),
              Reason.tooFew("a spread's interval", LEAST_FOR_SPREAD_INTERVAL, count))
          : Figure.of(Round.millis(sd), Intervals.spread(sd, fit.freedom()))
    };
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

  /** Several players put together: sums of counts, deviations about each player's own mean. */
  private final class Pool {
    int written;
    int placed;
    int judgeable;
    int matched;

    /** Inverse variance of a slope fitted through all these attacks, (ms a step)^-2. */
    double slopeWeight;

    private boolean chance;
    private double worth;
    private double squares;
    private double freedom;
    private double fitted;

    void add(Judged one, Slice slice) {
      written += one.written(slice);
      placed += one.placed(slice);
      judgeable += one.judgeable(slice);
      chance |= one.chance && one.written(slice) > 0;
      Sample sample = one.sample(slice);
      matched += sample.size();
      if (sample.size() < LEAST_FOR_SPREAD) {
        worth += sample.size();
        return;
      }
      AsynchronyFit fit = AsynchronyFit.of(sample, sheet.grid.stepsPerBeat());
      worth += fit.freedom();
      fitted += fit.freedom();
      squares += sample.squares();
      freedom += sample.freedom();
      if (sample.size() > 2 && sample.squares() > 0) {
        double inflation = sample.size() / Math.max(1, fit.freedom());
        slopeWeight +=
            sample.squaresOfSteps()
                / (Math.max(1e-6, sample.spread() * sample.spread()) * Math.max(1, inflation));
      }
    }

    Figure hold() {
      if (written == 0) {
        return Figure.unknown(Reason.Code.NOTHING_WRITTEN, "nothing is written here");
      }
      if (chance) {
        return Figure.unknown(Figures.this.chance());
      }
      if (judgeable == 0) {
        return Figure.unknown(noPulse());
      }
      return share(placed, judgeable, worth);
    }

    Figure spread() {
      if (freedom <= 0) {
        return Figure.unknown(Reason.tooFew("a spread", LEAST_FOR_SPREAD, matched));
      }
      double sd = Math.sqrt(squares / freedom);
      return matched < LEAST_FOR_SPREAD_INTERVAL
          ? Figure.of(
              Round.millis(sd),
              Reason.tooFew("a spread's interval", LEAST_FOR_SPREAD_INTERVAL, matched))
          : Figure.of(Round.millis(sd), Intervals.spread(sd, fitted));
    }
  }
}
