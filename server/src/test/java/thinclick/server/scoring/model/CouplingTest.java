package thinclick.server.scoring.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

class CouplingTest {
  /** Four simulated players, 120 beats of 500 ms: who follows whom in truth. */
  private static final double[][] TRUE = {
    {0, .3, .1, 0}, {.3, 0, .1, 0}, {.3, .1, 0, .2}, {.1, .1, .4, 0}
  };

  /** Bounded GLS of the same onsets, computed twice independently elsewhere. */
  private static final double[][] BOUNDED = {
    {0, .2663842, .0743413, -.0166748},
    {.2825557, 0, .1555083, .0746995},
    {.2966482, .0402078, 0, .3333141},
    {-.0738804, .3183444, .4236650, 0}
  };

  @Test
  void gainsAgreeWithBoundedLeastSquaresOnTheSameOnsets() {
    double[][] onsets = new double[4][];
    for (int i = 0; i < 4; i++) {
      onsets[i] = Fixtures.column("ensemble_onsets_ms.csv", i);
    }
    Tracks tracks = new Tracks(performance(onsets));
    for (int i = 0; i < 4; i++) {
      double[] bounded = boundedLeastSquares(onsets, i);
      int[] others = new int[3];
      for (int j = 0, k = 0; j < 4; j++) {
        if (j != i) {
          others[k++] = j;
        }
      }
      Track track = tracks.of(i, others, Track.Before.UNKNOWN);
      Sweep sweep = Sweep.of(Fit.of(new Likelihood(track, Likelihood.Kind.RESTRICTED)));
      for (int k = 0; k < 3; k++) {
        int j = others[k];
        // Divisors of the autocovariances are free in the paper and move the third digit.
        assertThat(bounded[k]).as("%d to %d", i, j).isCloseTo(BOUNDED[i][j], within(.004));
        assertThat(sweep.gain(k))
            .as("%d to %d", i, j)
            .isCloseTo(bounded[k], within(sweep.standardError(k)));
        assertThat(sweep.gain(k, 2.576).contains(TRUE[i][j])).as("%d to %d", i, j).isTrue();
      }
    }
  }

  private static Performance performance(double[][] onsets) {
    List<Voice> voices = new ArrayList<>();
    for (double[] row : onsets) {
      List<GridAttack> attacks = new ArrayList<>();
      for (int k = 0; k < row.length; k++) {
        attacks.add(new GridAttack(k, row[k] - 500 * k));
      }
      voices.add(Voice.inTheRoom("P" + voices.size(), attacks));
    }
    return new Performance(500, 1, 1, List.of(), voices);
  }

  /**
   * Jacoby, Tishby, Repp, Ahissar and Keller 2015 (Timing and Time Perception 3:52-87), from memory
   * of its method: intervals regressed on asynchronies with the noise's tridiagonal covariance (Vc
   * + 2 Vm, -Vm), which the residuals' autocovariances renew, Vm between 0 and Vc.
   */
  private static double[] boundedLeastSquares(double[][] onsets, int player) {
    int n = onsets[player].length - 1;
    double[][] x = new double[n][onsets.length - 1];
    double[][] y = new double[n][1];
    for (int k = 0; k < n; k++) {
      y[k][0] = onsets[player][k + 1] - onsets[player][k];
      for (int j = 0, c = 0; j < onsets.length; j++) {
        if (j != player) {
          x[k][c++] = onsets[player][k] - onsets[j][k];
        }
      }
    }
    centre(x);
    centre(y);
    RealMatrix design = new Array2DRowRealMatrix(x);
    RealMatrix data = new Array2DRowRealMatrix(y);
    RealMatrix covariance = tridiagonal(n, 1, 0);
    RealMatrix gains = design;
    for (int i = 0; i < 30; i++) {
      RealMatrix inverse = new LUDecomposition(covariance).getSolver().getInverse();
      RealMatrix weighted = design.transpose().multiply(inverse);
      gains =
          new LUDecomposition(weighted.multiply(design)).getSolver().solve(weighted.multiply(data));
      double[] rest = data.subtract(design.multiply(gains)).getColumn(0);
      double variance = 0;
      double lag = 0;
      for (int k = 0; k < n; k++) {
        variance += rest[k] * rest[k] / n;
        lag += k > 0 ? rest[k] * rest[k - 1] / n : 0;
      }
      double motor = Math.min(Math.max(0, -lag), variance / 3);
      covariance = tridiagonal(n, variance, -motor);
    }
    double[] negative = gains.getColumn(0);
    for (int c = 0; c < negative.length; c++) {
      negative[c] = -negative[c];
    }
    return negative;
  }

  private static void centre(double[][] rows) {
    for (int c = 0; c < rows[0].length; c++) {
      double mean = 0;
      for (double[] row : rows) {
        mean += row[c] / rows.length;
      }
      for (double[] row : rows) {
        row[c] -= mean;
      }
    }
  }

  private static RealMatrix tridiagonal(int n, double diagonal, double beside) {
    RealMatrix matrix = new Array2DRowRealMatrix(n, n);
    for (int k = 0; k < n; k++) {
      matrix.setEntry(k, k, diagonal);
      if (k > 0) {
        matrix.setEntry(k, k - 1, beside);
        matrix.setEntry(k - 1, k, beside);
      }
    }
    return matrix;
  }

  @Test
  void oneWhoFollowsMuchMoreHasALeader() {
    Coupling coupling = fit(duo(.5, 0, 512)).coupling();
    Coupling.Pair pair = coupling.pairs().get(0);
    assertThat(pair.difference().interval().contains(.5)).isTrue();
    assertThat(pair.leader()).isEqualTo(1);
  }

  @Test
  void equalFollowersHaveNone() {
    assertThat(fit(duo(.25, .25, 512)).coupling().pairs().get(0).leader()).isNull();
  }

  @Test
  void sixtyAttacksOnEitherSideAreNeeded() {
    Estimate gain = fit(duo(.3, .1, 118)).coupling().gains().get(0).get(1);
    assertThat(gain.known()).isFalse();
    assertThat(gain.unknown().cause()).isEqualTo(Estimate.Cause.TOO_FEW);
    assertThat(gain.unknown().says()).contains("60").contains("59");
  }

  @Test
  void missingPlayerMakesAllGainsUnknown() {
    Performance take = duo(.3, .1, 512);
    List<Voice> voices = new ArrayList<>(take.voices());
    voices.add(new Voice("Lead", 200, List.of(new GridAttack(0, 3)), true, 0, List.of()));
    Coupling coupling = fit(new Performance(500, 2, 1, take.clickSteps(), voices)).coupling();
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        if (i != j) {
          assertThat(coupling.gains().get(i).get(j).unknown().cause())
              .isEqualTo(Estimate.Cause.PLAYER_MISSING);
        }
      }
    }
    assertThat(coupling.pairs()).allMatch(pair -> pair.leader() == null);
  }

  @Test
  void moreThanEightPlayersShareOneGain() {
    CoupledPlayers band = new CoupledPlayers(500, 2).click(s -> s % 8 == 0);
    for (int i = 0; i < 9; i++) {
      band.with(new CoupledPlayers.Member(s -> s % 2 == 0).followsClick(.4));
    }
    TimingFindings found = fit(band.play(256, new Random(1)));
    assertThat(found.coupling().gains().get(0).get(1).unknown().cause())
        .isEqualTo(Estimate.Cause.TOO_MANY_PLAYERS);
    assertThat(found.players()).allMatch(player -> player.timekeeperMillis().known());
  }

  private static TimingFindings fit(Performance take) {
    return TimingModel.fit(take);
  }

  /** Two players, one on the beats, one off, a click on every first beat. */
  private static Performance duo(double first, double second, int steps) {
    return new CoupledPlayers(500, 2)
        .with(
            new CoupledPlayers.Member(s -> s % 2 == 0).followsClick(.4).follows(0, first),
            new CoupledPlayers.Member(s -> s % 2 == 1).followsClick(.4).follows(second, 0))
        .click(s -> s % 8 == 0)
        .play(steps, new Random(3));
  }
}
