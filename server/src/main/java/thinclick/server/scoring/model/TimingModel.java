package thinclick.server.scoring.model;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

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

  private final Performance take;
  private final Tracks tracks;
  private final int n;
  private final @Nullable FittedPlayer[] fitted;

  private TimingModel(Performance take) {
    this.take = take;
    tracks = new Tracks(take);
    n = take.voices().size();
    fitted = new @Nullable FittedPlayer[n];
  }

  /** What the model says of a take. */
  public static TimingFindings fit(Performance take) {
    TimingModel model = new TimingModel(take);
    for (int i = 0; i < model.n; i++) {
      model.fitted[i] = model.fitPlayer(i);
    }
    PlayerTimings timings = new PlayerTimings(take, model.tracks);
    List<PlayerTiming> players = new ArrayList<>();
    for (int i = 0; i < model.n; i++) {
      players.add(timings.of(i, model.fitted[i]));
    }
    Gains gains = new Gains(take, model.tracks, model.fitted, timings);
    return new TimingFindings(players, gains.coupling(), model.delay());
  }

  private @Nullable FittedPlayer fitPlayer(int i) {
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
    return new FittedPlayer(track, others, fit, Sweep.of(fit));
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
    return DelayAccounting.of(take, tracks, new FittedPlayers(fitted));
  }
}
