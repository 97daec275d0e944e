package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.music.Stage;
import thinclick.server.scoring.model.DelayAccount;
import thinclick.server.scoring.model.Estimate;
import thinclick.server.scoring.model.Forecast;
import thinclick.server.scoring.model.GridAttack;
import thinclick.server.scoring.model.Performance;
import thinclick.server.scoring.model.PlayerTiming;
import thinclick.server.scoring.model.ThinnerClick;
import thinclick.server.scoring.model.TimingFindings;
import thinclick.server.scoring.model.TimingModel;
import thinclick.server.scoring.model.Voice;

/** Hands a decoded take to the timing model and writes what it finds into the review. */
final class Timings {
  /** A click is left out where the followed tempo has carried the band so far from it, ms. */
  private static final double CARRIED_OFF = 1;

  private static final int[] THINNER_EVERY_BARS = {1, 2, 4};
  private static final int SILENT_BARS = 8;

  private final Understanding understood;
  private final Sheet sheet;

  private Timings(Understanding understood) {
    this.understood = understood;
    sheet = understood.sheet();
  }

  /** The analysis with the model's figures. */
  static Analysis added(Analysis analysis, Understanding understood) {
    Timings timings = new Timings(understood);
    TimingFindings found = TimingModel.fit(timings.performance());
    Review review = analysis.review();
    List<PlayerReview> players = new ArrayList<>();
    List<Stage> ahead = timings.thinner();
    for (int i = 0; i < review.players().size(); i++) {
      PlayerTiming timing = found.players().get(i);
      players.add(
          review
              .players()
              .get(i)
              .withTiming(
                  millis(timing.timekeeperMillis()),
                  millis(timing.motorMillis()),
                  share(timing.clickGain()),
                  forecasts(ahead, timing.forecasts())));
    }
    return new Analysis(
        analysis.take(),
        review.withModel(players, timings.coupled(review.ensemble(), found)),
        analysis.players(),
        analysis.pulseMillis());
  }

  private Performance performance() {
    List<Voice> voices = new ArrayList<>();
    for (Reading reading : understood.readings()) {
      voices.add(voice(reading));
    }
    List<Integer> clicks = new ArrayList<>();
    for (int step : sheet.clickSteps) {
      if (Math.abs(understood.places().bendAt(step)) <= CARRIED_OFF) {
        clicks.add(step);
      }
    }
    return new Performance(
        sheet.beatMillis(),
        sheet.grid.stepsPerBeat(),
        Math.max(1, understood.swing()),
        clicks,
        voices);
  }

  private Voice voice(Reading reading) {
    List<GridAttack> attacks = new ArrayList<>();
    for (int k = 0; k < reading.size(); k++) {
      if (reading.partner[k] != Matcher.NONE && reading.shift[k] == 0) {
        int step = reading.chair.steps[k];
        double played = reading.chair.attacks[reading.partner[k]] - reading.feel(sheet, k);
        attacks.add(new GridAttack(step, played - understood.places().at(step)));
      }
    }
    Hearing hearing = reading.chair.part.hearing();
    boolean hears = hearing == null || hearing.mode() == Hearing.Mode.AS_IT_ARRIVES;
    return new Voice(
        reading.chair.part.player(),
        reading.size(),
        attacks,
        hears,
        hearing == null ? 0 : hearing.delayMillis(),
        understood.readings().length == 1 || !hears ? ahead(reading) : List.of());
  }

  /** Stages thinner than any that was played, each as long as the last; silence of its own. */
  private List<Stage> thinner() {
    List<Stage> stages = sheet.take.stages();
    double thinnest = Double.POSITIVE_INFINITY;
    boolean silence = false;
    for (int s = 0; s < stages.size(); s++) {
      double clicks = sheet.plan.clicksPerBar(s, sheet.take.meter(), sheet.take.stepsPerBeat());
      silence |= clicks == 0;
      thinnest = clicks > 0 ? Math.min(thinnest, clicks) : thinnest;
    }
    int bars = stages.get(stages.size() - 1).bars();
    List<Stage> thinner = new ArrayList<>();
    for (int every : THINNER_EVERY_BARS) {
      if (1.0 / every < thinnest && bars >= 2 * every) {
        thinner.add(Stage.ofBeats(bars, every, 1));
      }
    }
    if (!silence) {
      thinner.add(Stage.ofBeats(SILENT_BARS, 1));
    }
    return thinner;
  }

  /** The same as the model takes them, with what the player has written in the last stage. */
  private List<ThinnerClick> ahead(Reading reading) {
    int from = sheet.stageFrom[sheet.take.stages().size() - 1];
    List<Integer> attacks =
        reading.chair.part.attackSteps().stream()
            .filter(step -> step >= from)
            .map(step -> step - from)
            .toList();
    List<ThinnerClick> plans = new ArrayList<>();
    for (Stage stage : thinner()) {
      List<Integer> clicks =
          stage.clickedSteps(sheet.take.meter(), sheet.take.stepsPerBeat()).stream()
              .map(Long::intValue)
              .toList();
      plans.add(
          clicks.isEmpty()
              ? ThinnerClick.silent(
                  "silence", (double) stage.bars() * sheet.stepsPerBar / sheet.grid.stepsPerBeat())
              : ThinnerClick.clicking("every " + stage.everyBars() + " bars", attacks, clicks));
    }
    return plans;
  }

  /** The model answers in the order of the stages; none where it foretells nothing. */
  private static List<ForecastReview> forecasts(List<Stage> ahead, List<Forecast> forecasts) {
    List<ForecastReview> reviews = new ArrayList<>();
    for (int i = 0; i < forecasts.size(); i++) {
      Forecast forecast = forecasts.get(i);
      reviews.add(
          new ForecastReview(
              ahead.get(i), millis(forecast.spreadMillis()), millis(forecast.returnMillis())));
    }
    return reviews;
  }

  private EnsembleReview coupled(EnsembleReview ensemble, TimingFindings found) {
    List<List<@Nullable Double>> gains = new ArrayList<>();
    List<List<@Nullable Interval>> intervals = new ArrayList<>();
    boolean any = false;
    Reason why =
        new Reason(Reason.Code.NO_PULSE, "one player alone has nobody to follow or to lead");
    for (List<@Nullable Estimate> row : found.coupling().gains()) {
      List<@Nullable Double> values = new ArrayList<>();
      List<@Nullable Interval> ranges = new ArrayList<>();
      for (Estimate gain : row) {
        Figure figure = gain == null ? null : share(gain);
        values.add(figure == null ? null : figure.value());
        ranges.add(figure == null ? null : figure.interval());
        if (figure != null) {
          any |= figure.known();
          why = figure.reason() == null ? why : figure.reason();
        }
      }
      gains.add(values);
      intervals.add(ranges);
    }
    DelayAccount delay = found.delay();
    DelayReview delayed = delay == null ? null : delayed(delay);
    return any
        ? ensemble.withModel(gains, intervals, null, delayed)
        : ensemble.withModel(null, null, why, delayed);
  }

  /** The model saw the attacks less the followed tempo, which here is the band's own again. */
  private DelayReview delayed(DelayAccount delay) {
    double followed = followedMillis(delay.fromStep(), delay.toStep());
    Figure players = millis(delay.remainder());
    Interval interval = players.interval();
    return new DelayReview(
        delay.fromStep(),
        delay.toStep(),
        Round.millis(delay.measured() + followed),
        millis(delay.network()),
        interval == null
            ? players
            : Figure.of(
                Round.millis(players.get() + followed),
                new Interval(
                    Round.millis(interval.low() + followed),
                    Round.millis(interval.high() + followed))),
        delay.toldApart());
  }

  /** Slope of the followed tempo over a stretch, ms a beat, positive slowing. */
  private double followedMillis(int from, int to) {
    double middle = (from + to - 1) / 2.0;
    double products = 0;
    double squares = 0;
    for (int step = from; step < to; step++) {
      products += (step - middle) * understood.places().bendAt(step);
      squares += (step - middle) * (step - middle);
    }
    return squares == 0 ? 0 : sheet.grid.stepsPerBeat() * products / squares;
  }

  private static Figure millis(Estimate estimate) {
    return figure(estimate, 1e3);
  }

  private static Figure share(Estimate estimate) {
    return figure(estimate, 1e4);
  }

  private static Figure figure(Estimate estimate, double grain) {
    Double value = estimate.value();
    thinclick.server.scoring.model.Interval interval = estimate.interval();
    Estimate.Unknown unknown = estimate.unknown();
    if (value == null || interval == null) {
      return Figure.unknown(
          unknown == null
              ? new Reason(Reason.Code.UNSTABLE, "the model gave no interval")
              : new Reason(code(unknown.cause()), unknown.says()));
    }
    return Figure.of(
        Math.rint(value * grain) / grain,
        new Interval(
            Math.rint(interval.low() * grain) / grain, Math.rint(interval.high() * grain) / grain));
  }

  private static Reason.Code code(Estimate.Cause cause) {
    return switch (cause) {
      case TOO_FEW -> Reason.Code.TOO_FEW;
      case TOO_UNSURE, TOO_MANY_PLAYERS, COUPLED -> Reason.Code.TOO_UNSURE;
      case CONSTANT -> Reason.Code.CONSTANT;
      case NO_CLICK -> Reason.Code.TOO_FEW;
      case NOT_HEARD -> Reason.Code.NOT_RECORDED;
      case PLAYER_MISSING -> Reason.Code.PLAYER_MISSING;
      case UNSTABLE, VIOLATED -> Reason.Code.UNSTABLE;
    };
  }
}
