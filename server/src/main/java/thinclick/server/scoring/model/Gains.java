package thinclick.server.scoring.model;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.model.Estimate.Cause;

/** Who follows whom: the gains of all players' fits, or why one cannot be told. */
final class Gains {
  /** Rounds that multiply a distance by more than this run away. */
  private static final double RUNS_AWAY = 1.1;

  /**
   * The lower 2.5 % point of the t statistic of a random walk fitted with a constant (Dickey and
   * Fuller 1979; from Fuller 1976's table, from memory).
   */
  private static final double LEFT_ALONE = 3.12;

  private final Performance take;
  private final Tracks tracks;
  private final @Nullable FittedPlayer[] fitted;
  private final PlayerTimings timings;
  private final int n;

  Gains(Performance take, Tracks tracks, @Nullable FittedPlayer[] fitted, PlayerTimings timings) {
    this.take = take;
    this.tracks = tracks;
    this.fitted = fitted;
    this.timings = timings;
    n = fitted.length;
  }

  Coupling coupling() {
    Estimate.@Nullable Unknown common = whyNoGains();
    List<List<@Nullable Estimate>> rows = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      List<@Nullable Estimate> row = new ArrayList<>();
      for (int j = 0; j < n; j++) {
        row.add(i == j ? null : common != null ? new Estimate(null, null, common) : gain(i, j));
      }
      rows.add(row);
    }
    return Coupling.of(rows);
  }

  /** Why no gain at all can be given, or null where some may. */
  private Estimate.@Nullable Unknown whyNoGains() {
    if (!tracks.coupledOneByOne()) {
      return new Estimate.Unknown(
          Cause.TOO_MANY_PLAYERS,
          "who follows whom can be told among "
              + Tracks.MOST_COUPLED
              + " players at most, here are "
              + n);
    }
    for (Voice voice : take.voices()) {
      if (voice.missing()) {
        return new Estimate.Unknown(
            Cause.PLAYER_MISSING,
            "only "
                + voice.attacks().size()
                + " of "
                + voice.written()
                + " attacks of "
                + voice.player()
                + " can be used; whoever followed them would seem to follow another");
      }
    }
    double growth = growth();
    if (growth > RUNS_AWAY) {
      return new Estimate.Unknown(
          Cause.UNSTABLE,
          "with the fitted gains a distance would grow by "
              + Math.round(100 * (growth - 1))
              + " % each round");
    }
    return null;
  }

  private Estimate gain(int i, int j) {
    Voice voice = take.voices().get(i);
    if (!voice.hearsOthers()) {
      return Estimate.unknown(
          Cause.NOT_HEARD, voice.player() + " did not hear the others' own attacks");
    }
    int own = tracks.screened(i).kept();
    int heard = tracks.heard(i, j);
    if (own < TimingModel.LEAST_FOR_GAINS || heard < TimingModel.LEAST_FOR_GAINS) {
      return Estimate.unknown(
          Cause.TOO_FEW,
          "a gain needs "
              + TimingModel.LEAST_FOR_GAINS
              + " attacks on either side, here "
              + own
              + " and "
              + heard);
    }
    FittedPlayer player = fitted[i];
    int gain = player == null ? -1 : player.gainTo(j);
    if (player == null || gain < 0) {
      return timings.notFitted(i);
    }
    double error = player.sweep().standardError(gain);
    if (error > TimingModel.MOST_GAIN_ERROR) {
      return Estimate.unknown(
          Cause.TOO_UNSURE,
          "its standard error is "
              + Math.round(100 * error)
              + " %, more than "
              + percent(TimingModel.MOST_GAIN_ERROR)
              + " %");
    }
    return Estimate.of(player.sweep().gain(gain), interval(i, j, player.sweep(), gain));
  }

  /**
   * The interval of a gain. Where no click holds two players and their own gains do not clearly
   * draw them together, their distance is a random walk, and a gain then comes out too high as
   * often as Dickey and Fuller (1979) say: its lower end is taken from their distribution.
   */
  private Interval interval(int i, int j, Sweep sweep, int gain) {
    Interval interval = sweep.gain(gain, Normal.Z95);
    FittedPlayer other = fitted[j];
    if (other == null || heldByClicks(i) || heldByClicks(j)) {
      return interval;
    }
    int back = other.gainTo(i);
    double drawn = sweep.gain(gain) + (back < 0 ? 0 : other.sweep().gain(back));
    double unsure =
        Math.hypot(sweep.standardError(gain), back < 0 ? 0 : other.sweep().standardError(back));
    if (drawn > LEFT_ALONE * unsure) {
      return interval;
    }
    double low = sweep.gain(gain) - LEFT_ALONE * sweep.standardError(gain);
    return new Interval(Math.min(interval.low(), low), interval.high());
  }

  private boolean heldByClicks(int i) {
    FittedPlayer player = fitted[i];
    if (player == null || player.track().clickGain < 0) {
      return false;
    }
    int clicks = 0;
    for (boolean click : player.track().click) {
      clicks += click ? 1 : 0;
    }
    return 8 * clicks > player.track().observed;
  }

  private double growth() {
    double[][] gains = new double[n][n];
    for (int i = 0; i < n; i++) {
      FittedPlayer player = fitted[i];
      for (int j = 0; player != null && j < n; j++) {
        int gain = player.gainTo(j);
        gains[i][j] = gain >= 0 ? player.sweep().gain(gain) : 0;
      }
    }
    return growth(gains);
  }

  /**
   * By how much the largest distance is multiplied when everybody has been heard once; 1 where the
   * players together may go anywhere but stay together.
   */
  static double growth(double[][] gains) {
    int n = gains.length;
    if (n < 2) {
      return 0;
    }
    double[][] round = new double[n][n];
    for (int i = 0; i < n; i++) {
      round[i][i] = 1;
      for (int j = 0; j < n; j++) {
        if (j != i) {
          round[i][j] = gains[i][j];
          round[i][i] -= gains[i][j];
        }
      }
    }
    EigenDecomposition roots = new EigenDecomposition(new Array2DRowRealMatrix(round, false));
    double most = 0;
    for (int i = 0; i < n; i++) {
      most =
          Math.max(most, new Complex(roots.getRealEigenvalue(i), roots.getImagEigenvalue(i)).abs());
    }
    return most;
  }

  private static long percent(double share) {
    return Math.round(100 * share);
  }
}
