package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Stage;
import thinclick.server.scoring.model.Coupling;
import thinclick.server.scoring.model.DelayAccount;
import thinclick.server.scoring.model.Estimate;
import thinclick.server.scoring.model.Forecast;
import thinclick.server.scoring.model.PlayerTiming;
import thinclick.server.scoring.model.TimingFindings;

/** What the timing model found, as figures of a review. */
final class ModelFigures {
  private final Understanding understood;
  private final TimingFindings found;
  private final List<Stage> ahead;

  /**
   * Of one take.
   *
   * @param ahead the stages that were asked about, in the order of the forecasts
   */
  ModelFigures(Understanding understood, TimingFindings found, List<Stage> ahead) {
    this.understood = understood;
    this.found = found;
    this.ahead = ahead;
  }

  /** One player's figures. */
  record Player(
      Figure timekeeperMillis,
      Figure motorMillis,
      Figure clickGain,
      Figure tendencyMillis,
      List<ForecastReview> forecasts) {}

  Player player(int i) {
    PlayerTiming timing = found.players().get(i);
    return new Player(
        millis(timing.timekeeperMillis()),
        millis(timing.motorMillis()),
        share(timing.clickGain()),
        millis(timing.tendencyMillis()),
        forecasts(timing.forecasts()));
  }

  /** The model answers in the order of the stages; none where it foretells nothing. */
  private List<ForecastReview> forecasts(List<Forecast> forecasts) {
    List<ForecastReview> reviews = new ArrayList<>();
    for (int i = 0; i < forecasts.size(); i++) {
      Forecast forecast = forecasts.get(i);
      reviews.add(
          new ForecastReview(
              ahead.get(i), millis(forecast.spreadMillis()), millis(forecast.returnMillis())));
    }
    return reviews;
  }

  /** A row a player; null where no gain at all is known. */
  @Nullable List<List<@Nullable Double>> gains() {
    if (gainsReason() != null) {
      return null;
    }
    List<List<@Nullable Double>> rows = new ArrayList<>();
    for (List<@Nullable Estimate> row : found.coupling().gains()) {
      List<@Nullable Double> values = new ArrayList<>();
      for (Estimate gain : row) {
        values.add(gain == null ? null : share(gain).value());
      }
      rows.add(values);
    }
    return rows;
  }

  @Nullable List<List<@Nullable Interval>> gainsInterval() {
    if (gainsReason() != null) {
      return null;
    }
    List<List<@Nullable Interval>> rows = new ArrayList<>();
    for (List<@Nullable Estimate> row : found.coupling().gains()) {
      List<@Nullable Interval> intervals = new ArrayList<>();
      for (Estimate gain : row) {
        intervals.add(gain == null ? null : share(gain).interval());
      }
      rows.add(intervals);
    }
    return rows;
  }

  /** Why no gain at all is known; null where one is. */
  @Nullable Reason gainsReason() {
    Reason why =
        new Reason(Reason.Code.NO_PULSE, "one player alone has nobody to follow or to lead");
    for (List<@Nullable Estimate> row : found.coupling().gains()) {
      for (Estimate gain : row) {
        if (gain != null) {
          Figure figure = share(gain);
          if (figure.known()) {
            return null;
          }
          why = figure.reason() == null ? why : figure.reason();
        }
      }
    }
    return why;
  }

  /** Who of each two players leads; empty where no gain is known. */
  List<PairReview> pairs() {
    if (gainsReason() != null) {
      return List.of();
    }
    List<PairReview> pairs = new ArrayList<>();
    for (Coupling.Pair pair : found.coupling().pairs()) {
      Integer leader = pair.leader();
      pairs.add(
          new PairReview(
              name(pair.first()),
              name(pair.second()),
              share(pair.difference()),
              leader == null ? null : name(leader)));
    }
    return pairs;
  }

  private String name(int player) {
    return found.players().get(player).player();
  }

  /** What a line cost; the model saw attacks less the followed tempo, here the band's own again. */
  @Nullable DelayReview delay() {
    DelayAccount delay = found.delay();
    if (delay == null) {
      return null;
    }
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
    return squares == 0 ? 0 : understood.sheet().grid.stepsPerBeat() * products / squares;
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
