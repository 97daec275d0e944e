package thinclick.server.scoring.model;

/** Forecasts for one player against a click, from the fitted model. */
final class Forecaster {
  private final Performance take;
  private final Fit fit;
  private final Sweep sweep;

  Forecaster(Performance take, Fit fit, Sweep sweep) {
    this.take = take;
    this.fit = fit;
    this.sweep = sweep;
  }

  /** The spread of a stage that goes on clicking; its first and last quantile make the interval. */
  double[] spread(ThinnerClick plan, double... probabilities) {
    Track stage = stage(take, plan);
    return sweep.foretell(
        fit.likelihood.track().clickGain,
        (gain, timekeeper, motor, answer) -> {
          AttackCovariance attacks =
              new AttackCovariance(
                  stage, gain, timekeeper, motor, AttackCovariance.listened(gain, timekeeper));
          answer[0] = attacks.expectedVariance();
          answer[1] = attacks.freedom();
        },
        probabilities);
  }

  /** How far off the hidden position is when the click returns after silence, root mean square. */
  double[] atReturn(double silentBeats, double... probabilities) {
    double[] found =
        sweep.foretell(
            fit.likelihood.track().clickGain,
            (gain, timekeeper, motor, answer) -> {
              double before = AttackCovariance.listened(gain, timekeeper);
              answer[0] =
                  (1 - gain) * (1 - gain) * before + gain * gain * motor + silentBeats * timekeeper;
              answer[1] = Double.POSITIVE_INFINITY;
            },
            probabilities);
    // The player's own tendency carries on through the silence.
    fit.likelihood.at(fit.theta);
    double[] coefficients = fit.likelihood.coefficients();
    int last = coefficients.length - 1;
    double uncertain = fit.likelihood.coefficientCovariance(fit.scale)[last][last];
    double carried =
        silentBeats * silentBeats * (coefficients[last] * coefficients[last] + uncertain);
    for (int i = 0; i < found.length; i++) {
      found[i] = Math.sqrt(found[i] * found[i] + carried);
    }
    return found;
  }

  /** The plan laid out as a track; own attacks carry no time, only their place. */
  static Track stage(Performance take, ThinnerClick plan) {
    Track.Builder track = new Track.Builder(take.beatMillis(), 1, 0, Track.Before.LISTENED);
    int attack = 0;
    int click = 0;
    while (attack < plan.attackSteps().size()) {
      int step = plan.attackSteps().get(attack);
      if (click < plan.clickSteps().size()) {
        step = Math.min(step, plan.clickSteps().get(click));
      }
      track.event(take.beatAt(step));
      if (plan.attackSteps().get(attack) == step) {
        track.own(0, 0);
        attack++;
      }
      if (click < plan.clickSteps().size() && plan.clickSteps().get(click) == step) {
        track.click();
        click++;
      }
    }
    return track.build();
  }
}
