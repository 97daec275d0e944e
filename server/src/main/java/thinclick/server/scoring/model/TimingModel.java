package thinclick.server.scoring.model;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.model.Estimate.Cause;

/**
 * Fits the model to a take: each player's timekeeper, motor and gains, who follows whom, forecasts
 * and the account of a delay. A pure function, deterministic, linear in the attacks.
 *
 * <p>For each player a hidden position (ms from the written grid) is observed at attacks with motor
 * noise, corrected at each click and each heard attack by a fraction of the distance, and moved
 * between them by the timekeeper's noise and the player's own tendency (Vorberg and Wing 1996;
 * Wing, Endo, Bradbury and Vorberg 2014). Others' attacks are data, so the likelihood falls apart
 * into one scalar Kalman filter a player.
 */
public final class TimingModel {
  /** Fewer attacks than this are not fitted. */
  public static final int LEAST_ATTACKS = 16;

  /** Fewer attacks than this on either side give no gain between two players. */
  public static final int LEAST_FOR_GAINS = 60;

  /** A gain less certain than this standard error is not shown. */
  public static final double MOST_GAIN_ERROR = 0.10;

  /** A click heard fewer times than this while the player plays says nothing of the gain to it. */
  private static final int LEAST_CLICKS = 8;

  private static final double MOST_CLICK_GAIN_WIDTH = 0.8;

  /** Rounds that multiply a distance by more than this run away. */
  private static final double RUNS_AWAY = 1.1;

  /**
   * The lower 2.5 % point of the t statistic of a random walk fitted with a constant (Dickey and
   * Fuller 1979; from Fuller 1976's table, from memory).
   */
  private static final double LEFT_ALONE = 3.12;

  private final Performance take;
  private final Tracks tracks;
  private final int n;
  private final @Nullable Player[] fitted;

  /**
   * One fitted player.
   *
   * @param followed the players heard, in the order of their gains
   */
  private record Player(Track track, List<Integer> followed, Fit fit, Sweep sweep) {
    /** The index of the gain to another player; -1 where that player is not heard. */
    int gainTo(int other) {
      int place = followed.indexOf(other);
      return place < 0 ? -1 : place + (track.clickGain >= 0 ? 1 : 0);
    }
  }

  private TimingModel(Performance take) {
    this.take = take;
    tracks = new Tracks(take);
    n = take.voices().size();
    fitted = new @Nullable Player[n];
  }

  /** What the model says of a take. */
  public static TimingFindings fit(Performance take) {
    TimingModel model = new TimingModel(take);
    for (int i = 0; i < model.n; i++) {
      model.fitted[i] = model.fitPlayer(i);
    }
    List<PlayerTiming> players = new ArrayList<>();
    for (int i = 0; i < model.n; i++) {
      players.add(model.player(i));
    }
    return new TimingFindings(players, model.coupling(), model.delay());
  }

  private @Nullable Player fitPlayer(int i) {
    Screened own = tracks.screened(i);
    if (own.kept() < LEAST_ATTACKS || own.constant()) {
      return null;
    }
    List<Integer> others = new ArrayList<>();
    for (int j = 0; j < n; j++) {
      if (j != i && tracks.heard(i, j) > 0) {
        others.add(j);
      }
    }
    int[] followed = others.stream().mapToInt(Integer::intValue).toArray();
    Track track = tracks.of(i, followed, Track.Before.LISTENED);
    if (track.observed - track.positions < LEAST_ATTACKS / 2) {
      return null;
    }
    Fit fit = Fit.of(new Likelihood(track, Likelihood.Kind.RESTRICTED));
    return new Player(track, others, fit, Sweep.of(fit));
  }

  private PlayerTiming player(int i) {
    Voice voice = take.voices().get(i);
    Player player = fitted[i];
    if (player == null) {
      Estimate none = notFitted(i);
      List<Forecast> forecasts = new ArrayList<>();
      for (ThinnerClick plan : voice.ahead()) {
        forecasts.add(new Forecast(plan.plan(), none, none));
      }
      return new PlayerTiming(voice.player(), none, none, none, none, forecasts);
    }
    double[] timekeeper = player.sweep.timekeeperSd(0.5, 0.025, 0.975);
    double[] motor = player.sweep.motorSd(0.5, 0.025, 0.975);
    return new PlayerTiming(
        voice.player(),
        estimate(timekeeper),
        motor(i, player, motor),
        clickGain(player),
        tendency(player),
        forecasts(i, player));
  }

  private Estimate notFitted(int i) {
    Screened own = tracks.screened(i);
    return own.kept() >= LEAST_ATTACKS && own.constant()
        ? Estimate.unknown(Cause.CONSTANT, "all attacks lie alike to a tenth of a millisecond")
        : Estimate.unknown(
            Cause.TOO_FEW,
            "timekeeper and motor need " + LEAST_ATTACKS + " matched attacks, here " + own.kept());
  }

  private static Estimate estimate(double[] middleLowHigh) {
    return Estimate.of(middleLowHigh[0], new Interval(middleLowHigh[1], middleLowHigh[2]));
  }

  private Estimate motor(int i, Player player, double[] motor) {
    if (player.track.gains == 0) {
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

  private static Estimate clickGain(Player player) {
    int gain = player.track.clickGain;
    int clicks = 0;
    for (boolean click : player.track.click) {
      clicks += click ? 1 : 0;
    }
    if (gain < 0 || clicks < LEAST_CLICKS) {
      return Estimate.unknown(
          Cause.NO_CLICK, "a gain to the click needs " + LEAST_CLICKS + " clicks, here " + clicks);
    }
    Interval interval = player.sweep.gain(gain, Normal.Z95);
    if (interval.width() > MOST_CLICK_GAIN_WIDTH) {
      return Estimate.unknown(
          Cause.TOO_UNSURE,
          "the part of the distance to the click that is closed lies anywhere from "
              + percent(interval.low())
              + " to "
              + percent(interval.high())
              + " %");
    }
    return Estimate.of(player.sweep.gain(gain), interval);
  }

  private Estimate tendency(Player player) {
    player.fit.likelihood.at(player.fit.theta);
    double[] coefficients = player.fit.likelihood.coefficients();
    int last = coefficients.length - 1;
    double error =
        Math.sqrt(player.fit.likelihood.coefficientCovariance(player.fit.scale)[last][last]);
    if (error > 0.8 * Likelihood.TENDENCY_SHARE * take.beatMillis()) {
      return Estimate.unknown(
          Cause.TOO_UNSURE, "where others or the click pull, a tendency looks like a lean");
    }
    double value = coefficients[last];
    return Estimate.of(value, new Interval(value - Normal.Z95 * error, value + Normal.Z95 * error));
  }

  private List<Forecast> forecasts(int i, Player player) {
    List<Forecast> forecasts = new ArrayList<>();
    Estimate gain = clickGain(player);
    Forecaster forecaster = new Forecaster(take, player.fit, player.sweep);
    Estimate elsewhere =
        Estimate.unknown(Cause.VIOLATED, "a plan is foretold by its spread or by its return");
    for (ThinnerClick plan : take.voices().get(i).ahead()) {
      Estimate.Unknown why = null;
      if (!player.followed.isEmpty()) {
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

  private Coupling coupling() {
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
    if (own < LEAST_FOR_GAINS || heard < LEAST_FOR_GAINS) {
      return Estimate.unknown(
          Cause.TOO_FEW,
          "a gain needs "
              + LEAST_FOR_GAINS
              + " attacks on either side, here "
              + own
              + " and "
              + heard);
    }
    Player player = fitted[i];
    int gain = player == null ? -1 : player.gainTo(j);
    if (player == null || gain < 0) {
      return notFitted(i);
    }
    double error = player.sweep.standardError(gain);
    if (error > MOST_GAIN_ERROR) {
      return Estimate.unknown(
          Cause.TOO_UNSURE,
          "its standard error is "
              + Math.round(100 * error)
              + " %, more than "
              + percent(MOST_GAIN_ERROR)
              + " %");
    }
    return Estimate.of(player.sweep.gain(gain), interval(i, j, player.sweep, gain));
  }

  /**
   * The interval of a gain. Where no click holds two players and their own gains do not clearly
   * draw them together, their distance is a random walk, and a gain then comes out too high as
   * often as Dickey and Fuller (1979) say: its lower end is taken from their distribution.
   */
  private Interval interval(int i, int j, Sweep sweep, int gain) {
    Interval interval = sweep.gain(gain, Normal.Z95);
    Player other = fitted[j];
    if (other == null || heldByClicks(i) || heldByClicks(j)) {
      return interval;
    }
    int back = other.gainTo(i);
    double drawn = sweep.gain(gain) + (back < 0 ? 0 : other.sweep.gain(back));
    double unsure =
        Math.hypot(sweep.standardError(gain), back < 0 ? 0 : other.sweep.standardError(back));
    if (drawn > LEFT_ALONE * unsure) {
      return interval;
    }
    double low = sweep.gain(gain) - LEFT_ALONE * sweep.standardError(gain);
    return new Interval(Math.min(interval.low(), low), interval.high());
  }

  private boolean heldByClicks(int i) {
    Player player = fitted[i];
    if (player == null || player.track.clickGain < 0) {
      return false;
    }
    int clicks = 0;
    for (boolean click : player.track.click) {
      clicks += click ? 1 : 0;
    }
    return 8 * clicks > player.track.observed;
  }

  private double growth() {
    double[][] gains = new double[n][n];
    for (int i = 0; i < n; i++) {
      Player player = fitted[i];
      for (int j = 0; player != null && j < n; j++) {
        int gain = player.gainTo(j);
        gains[i][j] = gain >= 0 ? player.sweep.gain(gain) : 0;
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

  private @Nullable DelayAccount delay() {
    boolean late = false;
    for (Voice voice : take.voices()) {
      late |= voice.hearsOthers() && voice.heardLateMillis() > 0;
    }
    if (!late || n < 2 || !tracks.coupledOneByOne()) {
      return null;
    }
    for (int i = 0; i < n; i++) {
      if (fitted[i] == null || take.voices().get(i).missing()) {
        return null;
      }
    }
    return DelayAccounting.of(take, tracks, new FittedPlayers());
  }

  /** The fits as the delay's account reads them. */
  private final class FittedPlayers implements DelayAccounting.Players {
    private Player player(int i) {
      Player player = fitted[i];
      if (player == null) {
        throw new IllegalStateException("expected every player fitted, found none for " + i);
      }
      return player;
    }

    @Override
    public boolean hears(int i, int j) {
      return i != j && player(i).gainTo(j) >= 0;
    }

    @Override
    public double gain(int i, int j) {
      return hears(i, j) ? player(i).sweep.gain(player(i).gainTo(j)) : 0;
    }

    @Override
    public double covariance(int i, int j, int k) {
      Player player = player(i);
      return player.fit.covariance[player.gainTo(j)][player.gainTo(k)];
    }

    @Override
    public double timekeeper(int i) {
      double sd = player(i).fit.timekeeperSd();
      return sd * sd;
    }

    @Override
    public double motor(int i) {
      double sd = player(i).fit.motorSd();
      return sd * sd;
    }
  }

  private static long percent(double share) {
    return Math.round(100 * share);
  }
}
