package thinclick.server.scoring.model;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.model.Estimate.Cause;

/** What a fit says of one player alone: noises, the click's gain, a tendency, forecasts. */
final class PlayerTimings {
  /** A click heard fewer times than this while the player plays says nothing of the gain to it. */
  private static final int LEAST_CLICKS = 8;

  private static final double MOST_CLICK_GAIN_WIDTH = 0.8;

  /**
   * By how much the interval of a gain to the click is widened where so many others are followed,
   * three and more the last: they are near the click themselves, so that what a player closes is
   * shared out between it and them, and the likelihood is too sure of it. Found on one set of
   * simulated bands and held on another (DEVELOPERS, Measured).
   */
  private static final double[] WIDER_BY_FOLLOWED = {1, 1, 1.2, 1.5};

  private final Performance take;
  private final Tracks tracks;

  PlayerTimings(Performance take, Tracks tracks) {
    this.take = take;
    this.tracks = tracks;
  }

  PlayerTiming of(int i, @Nullable FittedPlayer player) {
    Voice voice = take.voices().get(i);
    if (player == null) {
      Estimate none = notFitted(i);
      List<Forecast> forecasts = new ArrayList<>();
      for (ThinnerClick plan : voice.ahead()) {
        forecasts.add(new Forecast(plan.plan(), none, none));
      }
      return new PlayerTiming(voice.player(), none, none, none, none, forecasts);
    }
    double[] timekeeper = player.sweep().timekeeperSd(0.5, 0.025, 0.975);
    double[] motor = player.sweep().motorSd(0.5, 0.025, 0.975);
    return new PlayerTiming(
        voice.player(),
        estimate(timekeeper),
        motor(i, player, motor),
        clickGain(player),
        tendency(player),
        forecasts(i, player));
  }

  Estimate notFitted(int i) {
    Screened own = tracks.screened(i);
    return own.kept() >= TimingModel.LEAST_ATTACKS && own.constant()
        ? Estimate.unknown(Cause.CONSTANT, "all attacks lie alike to a tenth of a millisecond")
        : Estimate.unknown(
            Cause.TOO_FEW,
            "timekeeper and motor need "
                + TimingModel.LEAST_ATTACKS
                + " matched attacks, here "
                + own.kept());
  }

  private static Estimate estimate(double[] middleLowHigh) {
    return Estimate.of(middleLowHigh[0], new Interval(middleLowHigh[1], middleLowHigh[2]));
  }

  private Estimate motor(int i, FittedPlayer player, double[] motor) {
    if (player.track().gains == 0) {
      IntervalMoments moments = tracks.screened(i).moments(take);
      if (moments.verdict() == IntervalMoments.Verdict.DRIFTS) {
        return Estimate.unknown(
            Cause.VIOLATED,
            "neighbouring intervals move together (correlation "
                + Math.round(100 * moments.correlation()) / 100.0
                + "), so that the hand cannot be told from the drift");
      }
    }
    if (motor[2] - motor[1] > 2 * motor[0]) {
      return Estimate.unknown(
          Cause.TOO_UNSURE,
          "the motor's part lies anywhere from "
              + Math.round(motor[1])
              + " to "
              + Math.round(motor[2])
              + " ms");
    }
    return estimate(motor);
  }

  private static Estimate clickGain(FittedPlayer player) {
    int gain = player.track().clickGain;
    int clicks = 0;
    for (boolean click : player.track().click) {
      clicks += click ? 1 : 0;
    }
    if (gain < 0 || clicks < LEAST_CLICKS) {
      return Estimate.unknown(
          Cause.NO_CLICK, "a gain to the click needs " + LEAST_CLICKS + " clicks, here " + clicks);
    }
    Interval interval = player.sweep().gain(gain, Normal.Z95);
    if (interval.width() > MOST_CLICK_GAIN_WIDTH) {
      return Estimate.unknown(
          Cause.TOO_UNSURE,
          "the part of the distance to the click that is closed lies anywhere from "
              + percent(interval.low())
              + " to "
              + percent(interval.high())
              + " %");
    }
    double value = player.sweep().gain(gain);
    double wider = WIDER_BY_FOLLOWED[Math.min(player.followed().size(), 3)];
    return Estimate.of(
        value,
        new Interval(
            SweepNodes.clamp(value - wider * (value - interval.low())),
            SweepNodes.clamp(value + wider * (interval.high() - value))));
  }

  private Estimate tendency(FittedPlayer player) {
    player.fit().likelihood.at(player.fit().theta);
    double[] coefficients = player.fit().likelihood.coefficients();
    int last = coefficients.length - 1;
    double error =
        Math.sqrt(player.fit().likelihood.coefficientCovariance(player.fit().scale)[last][last]);
    if (error > 0.8 * Likelihood.TENDENCY_SHARE * take.beatMillis()) {
      return Estimate.unknown(
          Cause.TOO_UNSURE, "where others or the click pull, a tendency looks like a lean");
    }
    double value = coefficients[last];
    return Estimate.of(value, new Interval(value - Normal.Z95 * error, value + Normal.Z95 * error));
  }

  private List<Forecast> forecasts(int i, FittedPlayer player) {
    List<Forecast> forecasts = new ArrayList<>();
    Estimate gain = clickGain(player);
    Forecaster forecaster = new Forecaster(take, player.fit(), player.sweep());
    Estimate elsewhere =
        Estimate.unknown(Cause.VIOLATED, "a plan is foretold by its spread or by its return");
    for (ThinnerClick plan : take.voices().get(i).ahead()) {
      Estimate.Unknown why = null;
      if (!player.followed().isEmpty()) {
        why =
            new Estimate.Unknown(
                Cause.COUPLED, "a forecast is not given for players who hear each other");
      } else if (gain.interval() == null) {
        why = gain.unknown();
      }
      if (why != null) {
        Estimate none = new Estimate(null, null, why);
        forecasts.add(new Forecast(plan.plan(), none, none));
      } else if (plan.silentBeats() > 0) {
        double[] found = forecaster.atReturn(plan.silentBeats(), 0.025, 0.975);
        forecasts.add(new Forecast(plan.plan(), elsewhere, estimate(found)));
      } else if (plan.attackSteps().size() < 4) {
        Estimate few =
            Estimate.unknown(
                Cause.TOO_FEW,
                "a spread to come needs 4 attacks, here " + plan.attackSteps().size());
        forecasts.add(new Forecast(plan.plan(), few, few));
      } else {
        double[] found = forecaster.spread(plan, 0.025, 0.975);
        forecasts.add(new Forecast(plan.plan(), estimate(found), elsewhere));
      }
    }
    return forecasts;
  }

  private static long percent(double share) {
    return Math.round(100 * share);
  }
}
