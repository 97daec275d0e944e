package thinclick.server.scoring.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class LikelihoodTest {
  @Test
  void plainLikelihoodOfOneTapABeatIsThatOfATextbookTimeSeriesFit() {
    // R 4.2, arima(x, order = c(1, 0, 1), method = "ML"): phi .597217, theta -.208814,
    // sigma2 187.177239 for 60 taps; phi .642173, theta -.129668, sigma2 178.68921 for 2,000.
    checkSeries("iso_asynch_ms.csv", .597217, -.208814, 187.177239);
    checkSeries("iso2000_ms.csv", .642173, -.129668, 178.68921);
    checkParameters("iso_asynch_ms.csv", .40278, 10.8244, 6.2518);
    checkParameters("iso2000_ms.csv", .35783, 11.6341, 4.8136);
  }

  /** A(k+1) = (1-a) A(k) + C + M(k+1) - M(k): the noise has variance Vc + 2 Vm and lag 1 -Vm. */
  private static void checkSeries(String file, double phi, double theta, double sigma2) {
    double motor = -theta * sigma2;
    double timekeeper = sigma2 * (1 + theta * theta) - 2 * motor;
    checkParameters(file, 1 - phi, Math.sqrt(timekeeper), Math.sqrt(motor));
  }

  private static void checkParameters(String file, double gain, double timekeeper, double motor) {
    Likelihood likelihood =
        new Likelihood(tapped(Fixtures.column(file, 0)), Likelihood.Kind.PLAIN_WITHOUT_TENDENCY);
    Fit fit = Fit.of(likelihood);
    assertThat(fit.theta[0]).as(file).isCloseTo(gain, within(.001));
    assertThat(fit.timekeeperSd()).as(file).isCloseTo(timekeeper, within(.001));
    assertThat(fit.motorSd()).as(file).isCloseTo(motor, within(.001));
  }

  private static Track tapped(double[] taps) {
    Track.Builder builder = new Track.Builder(500, 1, 0, Track.Before.TAPPED);
    for (int k = 0; k < taps.length; k++) {
      builder.event(k);
      builder.own(taps[k], 0);
      builder.click();
    }
    return builder.build();
  }

  @Test
  void gradientIsThatOfTheValue() {
    for (long seed = 1; seed <= 40; seed++) {
      Random random = new Random(seed);
      Track track = anyTrack(random, 60, 1 + random.nextInt(3));
      for (Likelihood.Kind kind : Likelihood.Kind.values()) {
        Likelihood likelihood = new Likelihood(track, kind);
        double[] theta = anyTheta(random, track);
        double[] gradient = new double[theta.length];
        likelihood.at(theta, gradient);
        for (int i = 0; i < theta.length; i++) {
          double[] shifted = theta.clone();
          shifted[i] += 1e-5;
          double up = likelihood.at(shifted);
          shifted[i] -= 2e-5;
          double down = likelihood.at(shifted);
          assertThat(gradient[i])
              .as("seed %d, %s, parameter %d", seed, kind, i)
              .isCloseTo((up - down) / 2e-5, within(1e-3 + 1e-4 * Math.abs(gradient[i])));
        }
      }
    }
  }

  @Test
  void restrictedLikelihoodIsThatOfTheWholeCovarianceMatrix() {
    for (long seed = 1; seed <= 20; seed++) {
      Random random = new Random(seed);
      Track track = anyTrack(random, 30, 1 + random.nextInt(3));
      Likelihood likelihood = new Likelihood(track, Likelihood.Kind.RESTRICTED);
      double[] theta = anyTheta(random, track);
      double[] other = anyTheta(random, track);
      double filtered = likelihood.at(theta);
      double scale = likelihood.scale();
      double otherFiltered = likelihood.at(other);
      double otherScale = likelihood.scale();
      DenseModel dense = new DenseModel(track, theta, start(track, theta));
      DenseModel otherDense = new DenseModel(track, other, start(track, other));
      assertThat(filtered - otherFiltered)
          .as("seed %d", seed)
          .isCloseTo(dense.restricted(scale) - otherDense.restricted(otherScale), within(1e-6));
      // The scale that was concentrated out is the best one.
      assertThat(dense.restricted(scale * 1.01)).isGreaterThan(dense.restricted(scale));
      assertThat(dense.restricted(scale / 1.01)).isGreaterThan(dense.restricted(scale));
    }
  }

  @Test
  void plainLikelihoodIsThatOfTheWholeCovarianceMatrix() {
    for (long seed = 1; seed <= 10; seed++) {
      Random random = new Random(seed);
      Track track = anyTrack(random, 30, 2);
      Likelihood likelihood = new Likelihood(track, Likelihood.Kind.PLAIN_WITHOUT_TENDENCY);
      double[] theta = anyTheta(random, track);
      double[] other = anyTheta(random, track);
      double expected =
          new DenseModel(track, theta, start(track, theta)).plain()
              - new DenseModel(track, other, start(track, other)).plain();
      assertThat(likelihood.at(theta) - likelihood.at(other))
          .as("seed %d", seed)
          .isCloseTo(expected, within(1e-6));
    }
  }

  /** Variance before the first event: settled under the click, or unknown (50). */
  private static double start(Track track, double[] theta) {
    if (track.clickGain < 0 || track.before == Track.Before.UNKNOWN) {
      return 50;
    }
    double g = theta[track.clickGain];
    double phi = theta[theta.length - 1];
    double timekeeper = Math.cos(phi) * Math.cos(phi);
    double motor = Math.sin(phi) * Math.sin(phi);
    // P = (1-g)^2 P + Vc, with own taps + g^2 Vm.
    double added = track.before == Track.Before.TAPPED ? g * g * motor : 0;
    return (timekeeper + added) / (1 - (1 - g) * (1 - g));
  }

  static double[] anyTheta(Random random, Track track) {
    double[] theta = new double[track.gains + 1];
    for (int i = 0; i < track.gains; i++) {
      theta[i] = .05 + .4 * random.nextDouble();
    }
    theta[track.gains] = .1 + 1.3 * random.nextDouble();
    return theta;
  }

  static Track anyTrack(Random random, int events, int places) {
    boolean clicks = random.nextInt(4) > 0;
    int others = random.nextInt(3);
    Track.Before[] befores = Track.Before.values();
    Track.Builder builder =
        new Track.Builder(
            500,
            others + (clicks ? 1 : 0),
            clicks ? 0 : -1,
            befores[random.nextInt(befores.length)]);
    double beat = 0;
    int placed = 0;
    for (int k = 0; k < events; k++) {
      beat += .5 * (1 + random.nextInt(3));
      builder.event(beat);
      if (random.nextInt(3) > 0) {
        builder.own(
            20 * random.nextGaussian() + beat, placed < places ? placed : random.nextInt(places));
        placed++;
      }
      if (clicks && random.nextBoolean()) {
        builder.click();
      }
      for (int j = 0; j < others; j++) {
        if (random.nextBoolean()) {
          builder.heard(j + (clicks ? 1 : 0), 20 * random.nextGaussian());
        }
      }
    }
    return builder.build();
  }
}
