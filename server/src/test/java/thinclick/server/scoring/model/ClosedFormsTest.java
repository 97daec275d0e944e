package thinclick.server.scoring.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;

/**
 * Closed forms of linear phase correction (Wing and Kristofferson 1973; Vorberg and Wing 1996;
 * Vorberg and Schulze 2002; Repp 2005; Wing, Endo, Bradbury and Vorberg 2014), each derived again
 * beside its check. Unless said otherwise Vc is 100, Vm 25, the gain .5 and a beat has two steps.
 */
class ClosedFormsTest {
  private static final double VC = 100;
  private static final double VM = 25;
  private static final double A = .5;

  @Test
  void offbeatsUnderAFullClick() {
    // Before a click P = (1-a)^2 P + Vc, so P = 133.333; half a beat later (1-a)^2 P + Vc/2 + Vm.
    assertThat(settled(2, s -> s == 1, s -> s == 0))
        .containsExactly(new double[] {108.333}, near());
  }

  @Test
  void offbeatsUnderOneClickABar() {
    // P = (1-a)^2 P + 4 Vc = 533.333; then (1-a)^2 P + (j + 1/2) Vc + Vm.
    assertThat(settled(8, s -> s % 2 == 1, s -> s == 0))
        .containsExactly(new double[] {208.333, 308.333, 408.333, 508.333}, near());
  }

  @Test
  void threesWithAClickOnOne() {
    IntPredicate threes = s -> s % 3 == 0;
    IntPredicate one = s -> s % 8 == 0;
    double[] pinned = {558.730, 314.683, 464.683, 209.921, 359.921, 509.921, 258.730, 408.730};
    assertThat(settled(24, threes, one)).containsExactly(pinned, near());
    assertThat(byNoises(24, threes, one)).containsExactly(pinned, near());
  }

  @Test
  void cellWithClicksOnOneAndThree() {
    IntPredicate cell = s -> s > 0 && s % 3 == 0;
    IntPredicate oneAndThree = s -> s % 4 == 0;
    double[] pinned = {243.235, 192.059, 141.765, 291.765, 247.941};
    assertThat(settled(16, cell, oneAndThree)).containsExactly(pinned, near());
    assertThat(byNoises(16, cell, oneAndThree)).containsExactly(pinned, near());
  }

  @Test
  void positionAfterSixteenSilentBeats() {
    // After the last click (1-a)^2 133.333 = 33.333, then 16 Vc: SD 40.415.
    int last = 400;
    Track track = track(2, last + 33, s -> s == last + 32, s -> s <= last && s % 2 == 0);
    AttackCovariance attacks =
        new AttackCovariance(track, A, VC, VM, AttackCovariance.listened(A, VC));
    assertThat(Math.sqrt(attacks.variance[0] - VM)).isCloseTo(40.415, within(.0005));
  }

  @Test
  void freeTappingDriftsByTheTimekeeperAlone() {
    // n Vc + 2 Vm over n intervals; n = 16: 1650 ms2, SD 40.62 ms.
    Track track = track(1, 17, s -> true, s -> false);
    AttackCovariance attacks = new AttackCovariance(track, 0, VC, VM, 0);
    double drift = attacks.variance[16] + attacks.variance[0] - 2 * attacks.covariance(0, 16);
    assertThat(drift).isCloseTo(1650, within(1e-9));
    assertThat(Math.sqrt(drift)).isCloseTo(40.62, within(.005));
  }

  @Test
  void asynchroniesUnderAFullClickHaveTheirPublishedCovariances() {
    // gain, Vc, Vm, variance, lag 1, lag 2, variance of intervals, their lag 1
    double[][] table = {
      {.5, 100, 25, 166.6667, 58.3333, 29.1667, 216.6667, -79.1667},
      {.25, 100, 25, 257.1429, 167.8571, 125.8929, 178.5714, -47.3214},
      {1.0, 100, 25, 150.0000, -25, 0, 350, -200},
      {1.5, 100, 25, 233.3333, -141.6667, 70.8333, 750, -587.5},
      {.3, 400, 36, 826.6667, 542.6667, 379.8667, 568, -121.2},
      {.1, 64, 16, 353.6842, 302.3158, 272.0842, 102.7368, -21.1368},
    };
    for (double[] row : table) {
      Track track = track(1, 400, s -> true, s -> true);
      AttackCovariance attacks =
          new AttackCovariance(
              track, row[0], row[1], row[2], AttackCovariance.listened(row[0], row[1]));
      int k = 300;
      double g0 = attacks.variance[k];
      double g1 = attacks.covariance(k, 1);
      double g2 = attacks.covariance(k, 2);
      assertThat(g0).as("gain %s", row[0]).isCloseTo(row[3], within(1e-4));
      assertThat(g1).as("gain %s", row[0]).isCloseTo(row[4], within(1e-4));
      assertThat(g2).as("gain %s", row[0]).isCloseTo(row[5], within(1e-4));
      double g3 = attacks.covariance(k, 3);
      assertThat(g3).as("gain %s", row[0]).isCloseTo((1 - row[0]) * g2, within(1e-4));
      // I = A(k+1) - A(k): variance 2 (g0 - g1), lag 1 is 2 g1 - g0 - g2.
      assertThat(2 * (g0 - g1)).isCloseTo(row[6], within(2e-4));
      assertThat(2 * g1 - g0 - g2).isCloseTo(row[7], within(2e-4));
      assertThat(ThinnedClick.variance(row[0], row[1], row[2], 1, 1)).isCloseTo(g0, within(1e-6));
    }
  }

  @Test
  void thinnedClickHasItsClosedForm() {
    checkThinned(.5, 100, 25, 4, 266.667, 366.667, 466.667, 566.667);
    checkThinned(.5, 100, 25, 8, 400, 500, 600, 700, 800, 900, 1000, 1100);
    checkThinned(1.0, 64, 16, 4, 96, 160, 224, 288);
    assertThat(ThinnedClick.variance(.7, 100, 25, 16, 1)).isCloseTo(296.703, within(.001));
    assertThat(ThinnedClick.variance(.7, 100, 25, 16, 16)).isCloseTo(1796.703, within(.001));
  }

  private static void checkThinned(double a, double vc, double vm, int every, double... expected) {
    Track track = track(1, 50 * every + 1, s -> true, s -> s % every == 0);
    AttackCovariance attacks =
        new AttackCovariance(track, a, vc, vm, AttackCovariance.listened(a, vc));
    for (int j = 1; j <= every; j++) {
      assertThat(ThinnedClick.variance(a, vc, vm, every, j))
          .isCloseTo(expected[j - 1], within(.001));
      assertThat(attacks.variance[49 * every + j]).isCloseTo(expected[j - 1], within(.001));
    }
  }

  @Test
  void bestGainLeavesNeighboursUncorrelated() {
    // Vc 100, Vm 25: 2 (sqrt 2 - 1); Vc = Vm: the golden section.
    assertThat(ThinnedClick.bestGain(100, 25, 1)).isCloseTo(2 * (Math.sqrt(2) - 1), within(1e-12));
    assertThat(ThinnedClick.bestGain(100, 100, 1)).isCloseTo((Math.sqrt(5) - 1) / 2, within(1e-12));
    assertThat(ThinnedClick.bestGain(100, 25, 4)).isCloseTo(.944272, within(1e-6));
    assertThat(ThinnedClick.bestGain(100, 25, 8)).isCloseTo(.970563, within(1e-6));
    assertThat(ThinnedClick.bestGain(100, 25, 16)).isCloseTo(.984845, within(1e-6));
    assertThat(ThinnedClick.variance(ThinnedClick.bestGain(100, 25, 1), 100, 25, 1, 1))
        .isCloseTo(145.7107, within(1e-4));
    assertThat(ThinnedClick.variance(ThinnedClick.bestGain(100, 100, 1), 100, 100, 1, 1))
        .isCloseTo(261.8034, within(1e-4));
    double a = ThinnedClick.bestGain(100, 25, 1);
    AttackCovariance attacks =
        new AttackCovariance(
            track(1, 100, s -> true, s -> true), a, 100, 25, AttackCovariance.listened(a, 100));
    assertThat(attacks.covariance(90, 1)).isCloseTo(0, within(1e-9));
  }

  @Test
  void sumsOverPairsAreThoseOfTheWholeMatrix() {
    for (long seed = 1; seed <= 20; seed++) {
      Random random = new Random(seed);
      int share = 2 + random.nextInt(4);
      Track track = track(2, 60, s -> random.nextInt(share) > 0, s -> random.nextInt(share) == 0);
      double[] theta = {.1 + .8 * random.nextDouble(), .2 + random.nextDouble()};
      double motor = Math.sin(theta[1]) * Math.sin(theta[1]);
      AttackCovariance attacks = new AttackCovariance(track, theta[0], 1 - motor, motor, 2.5);
      DenseModel dense = new DenseModel(track, theta, 2.5);
      for (int i = 0; i < track.observed; i++) {
        for (int j = i; j < track.observed; j++) {
          assertThat(attacks.covariance(i, j - i))
              .as("seed %d", seed)
              .isCloseTo(dense.covariance.getEntry(i, j), within(1e-9));
        }
      }
      double[] spread = dense.spread();
      assertThat(attacks.expectedVariance()).as("seed %d", seed).isCloseTo(spread[0], within(1e-9));
      assertThat(attacks.freedom()).as("seed %d", seed).isCloseTo(spread[1], within(1e-8));
    }
  }

  @Test
  void exchangeOfLateAttacksDragsByItsClosedForm() {
    // Alternating: a b D / (a + b - a b) an exchange; a .3, b .1, D 80 (40 each way).
    assertThat(drag(new int[] {0, 1}, new double[][] {{0, .3}, {.1, 0}}, 40))
        .isCloseTo(6.486486, within(1e-6));
    // Together: a b D / (a + b) a beat.
    assertThat(drag(new int[] {0, 0}, new double[][] {{0, .3}, {.1, 0}}, 40))
        .isCloseTo(6, within(1e-6));
  }

  @Test
  void bandHeardLateSlowsByItsClosedForm() {
    // P + a (N-1) d for equal gains, all together on the beat.
    assertThat(500 + drag(new int[] {0, 0}, equal(2, .25), 40)).isCloseTo(510.000, within(1e-6));
    assertThat(500 + drag(new int[] {0, 0}, equal(2, .25), 11.5)).isCloseTo(502.875, within(1e-6));
    assertThat(500 + drag(new int[] {0, 0, 0}, equal(3, .2), 30)).isCloseTo(512.000, within(1e-6));
    assertThat(60_000 / 510.0).isCloseTo(117.647, within(.0005));
  }

  @Test
  void playersStayTogetherOnlyWithinTheStableGains() {
    // Equal gains: the eigenvalues of I - L are 1 and 1 - N a.
    for (double a : new double[] {.1, .25, .45}) {
      assertThat(Gains.growth(equal(4, a))).isCloseTo(1, within(1e-9));
    }
    assertThat(Gains.growth(equal(4, .55))).isCloseTo(1.2, within(1e-9));
    assertThat(Gains.growth(new double[][] {{0, .9}, {1.3, 0}})).isCloseTo(1.2, within(1e-9));
    assertThat(Gains.growth(new double[][] {{0, .9}, {.9, 0}})).isCloseTo(1, within(1e-9));
  }

  @Test
  void simulatedBandHasThePublishedPairVariances() {
    checkPair(equal(2, .25), 333.333);
    checkPair(equal(3, 1 / 3.0), 300);
    checkPair(equal(4, .25), 300);
    checkPair(equal(4, .1), 375);
    // Duo with gains .2 and .5: (Vc1 + Vc2 + 2 s (Vm1 + Vm2)) / (s (2 - s)), s = .7.
    checkPair(new double[][] {{0, .2}, {.5, 0}}, 296.7033);
  }

  private static void checkPair(double[][] gains, double expected) {
    CoupledPlayers band = new CoupledPlayers(500, 1);
    for (double[] row : gains) {
      band.with(new CoupledPlayers.Member(s -> true).noise(10, 5).follows(row));
    }
    Performance take = band.play(100_000, new Random(12));
    List<GridAttack> first = take.voices().get(0).attacks();
    List<GridAttack> second = take.voices().get(1).attacks();
    double squares = 0;
    for (int k = 0; k < first.size(); k++) {
      double apart = first.get(k).millis() - second.get(k).millis();
      squares += apart * apart;
    }
    assertThat(squares / first.size()).isCloseTo(expected, within(.025 * expected));
  }

  private static double[][] equal(int n, double a) {
    double[][] gains = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        gains[i][j] = i == j ? 0 : a;
      }
    }
    return gains;
  }

  /** What the delays alone make of these gains, ms a beat, everybody once a beat. */
  private static double drag(int[] entries, double[][] gains, double late) {
    List<Voice> voices = new ArrayList<>();
    for (int entry : entries) {
      List<GridAttack> attacks = new ArrayList<>();
      for (int beat = 0; beat < 200; beat++) {
        attacks.add(new GridAttack(2 * beat + entry, 0));
      }
      voices.add(new Voice("P" + voices.size(), 200, attacks, true, late, List.of()));
    }
    Performance take = new Performance(500, 2, 1, List.of(), voices);
    return DelayAccounting.of(take, new Tracks(take), new Known(gains)).network().value();
  }

  /** Players whose gains are known exactly. */
  private record Known(double[][] gains) implements DelayAccounting.Players {
    @Override
    public double gain(int i, int j) {
      return gains[i][j];
    }

    @Override
    public double covariance(int i, int j, int k) {
      return 0;
    }

    @Override
    public boolean hears(int i, int j) {
      return i != j;
    }

    @Override
    public double timekeeper(int i) {
      return VC;
    }

    @Override
    public double motor(int i) {
      return VM;
    }
  }

  /** Variances of a cycle's attacks once the cycle has gone round many times. */
  private static double[] settled(int cycle, IntPredicate part, IntPredicate click) {
    int rounds = 40;
    Track track = track(2, cycle * rounds, s -> part.test(s % cycle), s -> click.test(s % cycle));
    AttackCovariance attacks =
        new AttackCovariance(track, A, VC, VM, AttackCovariance.listened(A, VC));
    int count = track.observed / rounds;
    double[] last = new double[count];
    System.arraycopy(attacks.variance, track.observed - count, last, 0, count);
    return last;
  }

  /** The same from every noise followed by itself. */
  private static double[] byNoises(int cycle, IntPredicate part, IntPredicate click) {
    int rounds = 5;
    Track track = track(2, cycle * rounds, s -> part.test(s % cycle), s -> click.test(s % cycle));
    double phi = Math.atan2(Math.sqrt(VM), Math.sqrt(VC));
    DenseModel dense = new DenseModel(track, new double[] {A, phi}, 1);
    int count = track.observed / rounds;
    double[] last = new double[count];
    for (int i = 0; i < count; i++) {
      int at = track.observed - count + i;
      last[i] = (VC + VM) * dense.covariance.getEntry(at, at);
    }
    return last;
  }

  private static Track track(int stepsPerBeat, int steps, IntPredicate part, IntPredicate click) {
    Track.Builder track = new Track.Builder(500, 1, 0, Track.Before.LISTENED);
    for (int step = 0; step < steps; step++) {
      boolean plays = part.test(step);
      boolean clicks = click.test(step);
      if (plays || clicks) {
        track.event((double) step / stepsPerBeat);
        if (plays) {
          track.own(0, 0);
        }
        if (clicks) {
          track.click();
        }
      }
    }
    return track.build();
  }

  private static org.assertj.core.data.Offset<Double> near() {
    return within(.0006);
  }
}
