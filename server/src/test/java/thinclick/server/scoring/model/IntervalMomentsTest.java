package thinclick.server.scoring.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Moments against the certified means, standard deviations and lag-1 autocorrelations of the NIST
 * Statistical Reference Datasets (univariate summary statistics: Lew, Mavro, Michelso, NumAcc1 to
 * NumAcc4). The certified s^2 divides by n - 1, the moments by n.
 */
class IntervalMomentsTest {
  @Test
  void lewIsAValidCase() {
    double[] lew = Fixtures.column("nist_lew.csv", 0);
    IntervalMoments moments = IntervalMoments.of(lew);
    assertThat(moments.verdict()).isEqualTo(IntervalMoments.Verdict.HOLDS);
    assertThat(moments.correlation()).isCloseTo(-0.307304800605679, within(1e-13));
    check(moments, lew.length, 277.332168044316, -0.307304800605679, 1e-8);
    // The same two with autocovariances divided by n.
    assertThat(moments.motor()).isCloseTo(23517.595646, within(1e-5));
    assertThat(moments.timekeeper()).isCloseTo(29493.374483, within(1e-5));
  }

  @Test
  void driftingSeriesAreFlagged() {
    IntervalMoments mavro = IntervalMoments.of(Fixtures.column("nist_mavro.csv", 0));
    assertThat(mavro.correlation()).isCloseTo(0.937989183438248, within(1e-10));
    assertThat(mavro.verdict()).isEqualTo(IntervalMoments.Verdict.DRIFTS);
    assertThat(mavro.motor()).isZero();
    IntervalMoments michelso = IntervalMoments.of(Fixtures.column("nist_michelso.csv", 0));
    assertThat(michelso.correlation()).isCloseTo(0.535199668621283, within(1e-10));
    assertThat(michelso.verdict()).isEqualTo(IntervalMoments.Verdict.DRIFTS);
  }

  @Test
  void correlationOfExactlyMinusHalfLeavesNoTimekeeper() {
    IntervalMoments moments = IntervalMoments.of(new double[] {10000001, 10000003, 10000002});
    assertThat(moments.correlation()).isEqualTo(-.5);
    assertThat(moments.motor() * 3 / 2).isEqualTo(.5);
    assertThat(moments.timekeeper()).isZero();
    assertThat(moments.verdict()).isEqualTo(IntervalMoments.Verdict.HOLDS);
  }

  @Test
  void correlationBelowMinusHalfIsClampedWhateverTheMean() {
    for (double base : new double[] {1, 1_000_000, 10_000_000}) {
      double[] series = new double[1001];
      series[0] = base + .2;
      for (int i = 1; i < series.length; i++) {
        series[i] = base + (i % 2 == 1 ? .1 : .3);
      }
      IntervalMoments moments = IntervalMoments.of(series);
      assertThat(moments.correlation()).as("base %s", base).isCloseTo(-.999, within(1e-7));
      assertThat(moments.verdict()).isEqualTo(IntervalMoments.Verdict.ALTERNATES);
      assertThat(moments.timekeeper()).isZero();
      assertThat(moments.motor() * 1001 / 1000).isCloseTo(.00999, within(1e-9));
    }
  }

  @Test
  void fewOrEqualIntervalsSayNothing() {
    assertThat(IntervalMoments.of(new double[] {500, 501}).verdict())
        .isEqualTo(IntervalMoments.Verdict.UNKNOWN);
    assertThat(IntervalMoments.of(new double[] {500, 500, 500, 500}).verdict())
        .isEqualTo(IntervalMoments.Verdict.UNKNOWN);
  }

  @Test
  void unequalWrittenGapsGiveBothVariancesWithTheirKnownSmallBias() {
    // Vc 225, Vm 36, 160 intervals in threes with a tail, 20,000 runs: removing the mean biases the
    // covariance by about -Vc D / n, so Vm reads 38.5 +-1.5 and Vc 220 +-2.
    Random random = new Random(41);
    double[] gaps = {1.5, 1.5, 1.5, 1.5, 1.5, .5};
    double motor = 0;
    double timekeeper = 0;
    double dividedMotor = 0;
    double[] beats = new double[160];
    double[] intervals = new double[160];
    double[] divided = new double[160];
    int runs = 20_000;
    for (int run = 0; run < runs; run++) {
      double before = 6 * random.nextGaussian();
      for (int i = 0; i < beats.length; i++) {
        beats[i] = gaps[i % gaps.length];
        double after = 6 * random.nextGaussian();
        intervals[i] =
            500 * beats[i] + 15 * Math.sqrt(beats[i]) * random.nextGaussian() + after - before;
        divided[i] = intervals[i] / beats[i];
        before = after;
      }
      IntervalMoments moments = IntervalMoments.of(intervals, beats);
      motor += moments.motor() / runs;
      timekeeper += moments.timekeeper() / runs;
      dividedMotor += IntervalMoments.of(divided).motor() / runs;
    }
    assertThat(motor).isCloseTo(38.5, within(1.5));
    assertThat(timekeeper).isCloseTo(220, within(2.0));
    // The trap: intervals divided by their written length.
    assertThat(Math.abs(dividedMotor - 36)).isGreaterThan(5);
    assertThat(Arrays.stream(gaps).distinct().count()).isEqualTo(2);
  }

  private static void check(
      IntervalMoments moments, int n, double sd, double correlation, double exact) {
    double share = (double) n / (n - 1);
    double variance = sd * sd;
    assertThat(moments.motor() * share)
        .isCloseTo(-correlation * variance, within(exact * variance));
    assertThat(moments.timekeeper() * share)
        .isCloseTo((1 + 2 * correlation) * variance, within(exact * variance));
  }
}
