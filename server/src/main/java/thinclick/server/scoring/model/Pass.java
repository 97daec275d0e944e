package thinclick.server.scoring.model;

import java.util.Arrays;

/**
 * One run of the Kalman filter over a track and its exact reverse, for any number of means.
 *
 * <p>The same filter runs over every column at once: an indicator of each positional mean, the
 * tendency's straight line, the attacks themselves. Forwards it sums the whitened cross-products of
 * the innovations; backwards it turns a derivative with respect to those sums into one with respect
 * to the parameters. Noises are in units of the scale.
 */
final class Pass {
  /** Variance of an unknown start, in units of the whole noise of a beat. */
  private static final double UNKNOWN_START = 50;

  private final Track track;
  private final boolean tendency;
  private final int events;

  /** Position variance before each event's observation. */
  private final double[] variance;

  /** The sum of the gains that act at each event. */
  private final double[] closing;

  /** What those gains pull towards, weighted by them. */
  private final double[] pull;

  /** The variance's adjoint after the way back; the motor's and the timekeeper's share of it. */
  private double backVariance;

  private double backMotor;
  private double backTimekeeper;

  private final int columns;
  private final int data;

  /** For each event and column the innovation (own attack) or the position (none). */
  private final double[] kept;

  private final double[] position;
  private final double[] adjoint;
  private final double[] own;

  Pass(Track track, boolean tendency) {
    this.track = track;
    this.tendency = tendency;
    events = track.events();
    columns = track.positions + (tendency ? 2 : 1);
    data = columns - 1;
    variance = new double[events];
    closing = new double[events];
    pull = new double[events];
    kept = new double[events * columns];
    position = new double[columns];
    adjoint = new double[columns];
    own = new double[columns];
  }

  /** Sums up, event by event, the gains that act and what they pull towards. */
  private void weighGains(double[] theta) {
    double click = track.clickGain >= 0 ? theta[track.clickGain] : 0;
    for (int k = 0; k < events; k++) {
      double g = track.click[k] ? click : 0;
      double input = 0;
      for (int h = track.heardFrom[k]; h < track.heardFrom[k + 1]; h++) {
        double gain = theta[track.heardGain[h]];
        g += gain;
        input += gain * track.heardMillis[h];
      }
      closing[k] = g;
      pull[k] = input;
    }
  }

  /** Variance of the hidden position before the first event. */
  private double startVariance(double[] theta, double motor, double timekeeper) {
    if (track.before == Track.Before.UNKNOWN || track.clickGain < 0) {
      return UNKNOWN_START;
    }
    double g = theta[track.clickGain];
    double held = Math.max(g * (2 - g), 1 / UNKNOWN_START);
    return (timekeeper + (track.before == Track.Before.TAPPED ? g * g * motor : 0)) / held;
  }

  /**
   * Runs forwards.
   *
   * @param moments receives the lower half of the whitened cross-products: means, tendency, data
   * @return the sum of the logarithms of the innovations' variances
   */
  double forward(double[] theta, double motor, double timekeeper, double[] moments) {
    weighGains(theta);
    double[] m = position;
    Arrays.fill(m, 0);
    Arrays.fill(moments, 0);
    double p = startVariance(theta, motor, timekeeper);
    double logs = 0;
    double product = 1;
    for (int k = 0; k < events; k++) {
      int base = k * columns;
      int at = track.position[k];
      double g = closing[k];
      variance[k] = p;
      if (at >= 0) {
        double total = p + motor;
        double inverse = 1 / total;
        double kalman = p * inverse;
        product *= total;
        if (product > 1e100 || product < 1e-100) {
          logs += Math.log(product);
          product = 1;
        }
        for (int c = 0; c < columns; c++) {
          kept[base + c] = -m[c];
        }
        kept[base + at] += 1;
        kept[base + data] += track.ownMillis[k];
        for (int c = 0; c < columns; c++) {
          double e = kept[base + c];
          double weighted = e * inverse;
          for (int d = 0; d <= c; d++) {
            moments[c * columns + d] += weighted * kept[base + d];
          }
          m[c] += kalman * e;
        }
        m[at] -= g;
        m[data] += pull[k] - g * track.ownMillis[k];
        p *= motor * inverse;
      } else {
        double stays = 1 - g;
        for (int c = 0; c < columns; c++) {
          kept[base + c] = m[c];
          m[c] *= stays;
        }
        m[data] += pull[k];
        p *= stays * stays;
      }
      double gap = track.gapBeats[k];
      p += timekeeper * gap;
      if (tendency) {
        m[data - 1] -= gap;
      }
    }
    return logs + Math.log(product);
  }

  /**
   * Runs backwards from the last {@link #forward}.
   *
   * @param adjoints the derivative of f with respect to the cross-products, symmetric
   * @param gradient receives that of f (its sum of logarithms included): the gains, then the
   *     derivative along motor rising and timekeeper falling by as much
   */
  void backward(
      double[] theta, double motor, double timekeeper, double[] adjoints, double[] gradient) {
    double[] back = adjoint;
    Arrays.fill(back, 0);
    Arrays.fill(gradient, 0);
    backVariance = 0;
    backMotor = 0;
    backTimekeeper = 0;
    for (int k = events - 1; k >= 0; k--) {
      int base = k * columns;
      int at = track.position[k];
      double p = variance[k];
      backTimekeeper += backVariance * track.gapBeats[k];
      double backData = back[data];
      double backClosing;
      if (at >= 0) {
        backClosing = -back[at] - back[data] * track.ownMillis[k];
        double inverse = 1 / (p + motor);
        double backKalman = 0;
        double quadratic = 0;
        for (int c = 0; c < columns; c++) {
          double e = kept[base + c];
          double pulled = 0;
          for (int d = 0; d < columns; d++) {
            pulled += adjoints[c * columns + d] * kept[base + d];
          }
          quadratic += pulled * e;
          backKalman += back[c] * e;
          own[c] = p * inverse * back[c] + 2 * pulled * inverse;
        }
        for (int c = 0; c < columns; c++) {
          back[c] -= own[c];
        }
        observe(p, motor, inverse, quadratic, backKalman);
      } else {
        double stays = 1 - closing[k];
        backClosing = -2 * stays * p * backVariance;
        for (int c = 0; c < columns; c++) {
          backClosing -= back[c] * kept[base + c];
          back[c] *= stays;
        }
        backVariance *= stays * stays;
      }
      spread(k, backClosing, backData, gradient);
    }
    start(theta, motor, timekeeper, gradient);
  }

  /** The way back through an observation's variances. */
  private void observe(
      double p, double motor, double inverse, double quadratic, double backKalman) {
    double backTotal =
        inverse * (1 - inverse * (quadratic + backVariance * p * motor + backKalman * p));
    backMotor += backVariance * p * inverse + backTotal;
    backVariance = backVariance * motor * inverse + backKalman * inverse + backTotal;
  }

  /** Gives an event's adjoint to the gains that acted in it. */
  private void spread(int k, double backClosing, double backData, double[] gradient) {
    if (track.click[k] && track.clickGain >= 0) {
      gradient[track.clickGain] += backClosing;
    }
    for (int h = track.heardFrom[k]; h < track.heardFrom[k + 1]; h++) {
      gradient[track.heardGain[h]] += backClosing + backData * track.heardMillis[h];
    }
  }

  /** The way back through the start, and the last entry of the gradient. */
  private void start(double[] theta, double motor, double timekeeper, double[] gradient) {
    if (track.before != Track.Before.UNKNOWN && track.clickGain >= 0) {
      double click = theta[track.clickGain];
      double tapped = track.before == Track.Before.TAPPED ? 1 : 0;
      double held = click * (2 - click);
      double rise = 2 * tapped * click * motor;
      if (held > 1 / UNKNOWN_START) {
        rise -= startVariance(theta, motor, timekeeper) * (2 - 2 * click);
      } else {
        held = 1 / UNKNOWN_START;
      }
      gradient[track.clickGain] += backVariance * rise / held;
      backTimekeeper += backVariance / held;
      backMotor += backVariance * tapped * click * click / held;
    }
    gradient[gradient.length - 1] = backMotor - backTimekeeper;
  }
}
