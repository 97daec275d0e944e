package thinclick.server.scoring.model;

import org.jspecify.annotations.Nullable;

/** Works a {@link DelayAccount} out from the fits of all players. */
final class DelayAccounting {
  private static final double SHORTEST_BEATS = 16;
  private static final double NUDGE = 1e-4;

  private final Performance take;
  private final Tracks tracks;
  private final Players players;
  private final int n;
  private final int from;
  private final int to;

  /** The gains of all players: gain[i][j] of i to j, 0 where i does not hear j. */
  interface Players {
    double gain(int i, int j);

    /** Covariance of two gains of one player. */
    double covariance(int i, int j, int k);

    boolean hears(int i, int j);

    double timekeeper(int i);

    double motor(int i);
  }

  private DelayAccounting(Performance take, Tracks tracks, Players players, int from, int to) {
    this.take = take;
    this.tracks = tracks;
    this.players = players;
    n = take.voices().size();
    this.from = from;
    this.to = to;
  }

  /** The account, or null where no stretch without a click is long enough to be one. */
  static @Nullable DelayAccount of(Performance take, Tracks tracks, Players players) {
    int end = 0;
    for (int i = 0; i < take.voices().size(); i++) {
      Screened voice = tracks.screened(i);
      end = voice.size() == 0 ? end : Math.max(end, voice.step[voice.size() - 1] + 1);
    }
    // A last beat counts whole, so that what each beat holds is not divided by less than a beat.
    end += Math.floorMod(-end, take.stepsPerBeat());
    int from = 0;
    int to = 0;
    int open = 0;
    for (int i = 0; i <= take.clickSteps().size(); i++) {
      int next = i < take.clickSteps().size() ? Math.min(end, take.clickSteps().get(i)) : end;
      if (next - open > to - from) {
        from = open;
        to = next;
      }
      open = next + 1;
    }
    if (take.beatAt(to) - take.beatAt(from) < SHORTEST_BEATS) {
      return null;
    }
    return new DelayAccounting(take, tracks, players, from, to).account();
  }

  private @Nullable DelayAccount account() {
    double measured = slope();
    if (Double.isNaN(measured)) {
      return null;
    }
    double[][] gains = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        gains[i][j] = players.gain(i, j);
      }
    }
    double network = drag(gains);
    double variance = 0;
    for (int i = 0; i < n; i++) {
      double[] rise = new double[n];
      for (int j = 0; j < n; j++) {
        if (players.hears(i, j)) {
          double kept = gains[i][j];
          gains[i][j] = kept + NUDGE;
          rise[j] = (drag(gains) - network) / NUDGE;
          gains[i][j] = kept;
        }
      }
      for (int j = 0; j < n; j++) {
        for (int k = 0; k < n; k++) {
          if (players.hears(i, j) && players.hears(i, k)) {
            variance += rise[j] * rise[k] * players.covariance(i, j, k);
          }
        }
      }
    }
    double wander = wander(gains);
    double half = Normal.Z95 * Math.sqrt(Math.max(0, variance));
    double whole = Normal.Z95 * Math.sqrt(Math.max(0, variance) + wander);
    double remainder = measured - network;
    return new DelayAccount(
        from,
        to,
        measured,
        Estimate.of(network, new Interval(network - half, network + half)),
        Estimate.of(remainder, new Interval(remainder - whole, remainder + whole)),
        Math.abs(network) > whole);
  }

  /** Least-squares slope of all attacks on beats, each player with a level of their own. */
  private double slope() {
    double products = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      Screened voice = tracks.screened(i);
      double beats = 0;
      double millis = 0;
      int count = 0;
      for (int k = 0; k < voice.size(); k++) {
        if (counts(voice, k)) {
          beats += take.beatAt(voice.step[k]);
          millis += voice.followed(k);
          count++;
        }
      }
      for (int k = 0; k < voice.size(); k++) {
        if (counts(voice, k)) {
          double away = take.beatAt(voice.step[k]) - beats / count;
          products += away * (voice.followed(k) - millis / count);
          squares += away * away;
        }
      }
    }
    return squares == 0 ? Double.NaN : products / squares;
  }

  private boolean counts(Screened voice, int k) {
    return !voice.slip[k] && voice.step[k] >= from && voice.step[k] < to;
  }

  /** How fast the delays alone would slow the players, noise left out, ms a beat. */
  private double drag(double[][] gains) {
    double[] x = new double[n];
    run(gains, x, true); // until the players stand where the delays keep them
    double before = mean(x);
    run(gains, x, true);
    return (mean(x) - before) / beats();
  }

  /** Variance of the slope that timekeepers and hands make by chance, (ms a beat)^2. */
  private double wander(double[][] gains) {
    double[] share = new double[n];
    double variance = 0;
    for (int i = 0; i < n; i++) {
      double[] x = new double[n];
      x[i] = 1;
      run(gains, x, false);
      share[i] = mean(x);
      variance += share[i] * share[i] * players.timekeeper(i) * beats();
    }
    // A motor delay moves everybody by what those who hear it make of it, less its own player's
    // answer to whom it hears at that moment.
    Walk walk = new Walk();
    while (walk.next()) {
      for (int j = 0; j < n; j++) {
        if (walk.plays[j]) {
          double moved = 0;
          for (int i = 0; i < n; i++) {
            if (i != j) {
              moved += share[i] * gains[i][j];
              moved -= walk.plays[i] ? share[j] * gains[j][i] : 0;
            }
          }
          variance += moved * moved * players.motor(j);
        }
      }
    }
    // The least-squares slope of a random walk has 6/5 of the variance of its ends' slope.
    return 1.2 * variance / (beats() * beats());
  }

  private double beats() {
    return take.beatAt(to) - take.beatAt(from);
  }

  private void run(double[][] gains, double[] x, boolean late) {
    double[] moved = new double[n];
    Walk walk = new Walk();
    while (walk.next()) {
      for (int i = 0; i < n; i++) {
        moved[i] = x[i];
        double delay = late ? take.voices().get(i).heardLateMillis() : 0;
        for (int j = 0; j < n; j++) {
          if (walk.plays[j] && j != i) {
            moved[i] -= gains[i][j] * (x[i] - x[j] - delay);
          }
        }
      }
      System.arraycopy(moved, 0, x, 0, n);
    }
  }

  private static double mean(double[] x) {
    double sum = 0;
    for (double one : x) {
      sum += one;
    }
    return sum / x.length;
  }

  /** Goes through the steps of the stretch that somebody plays. */
  private final class Walk {
    final boolean[] plays = new boolean[n];
    private final int[] next = new int[n];

    Walk() {
      for (int i = 0; i < n; i++) {
        Screened voice = tracks.screened(i);
        while (next[i] < voice.size() && voice.step[next[i]] < from) {
          next[i]++;
        }
      }
    }

    boolean next() {
      int step = to;
      for (int i = 0; i < n; i++) {
        Screened voice = tracks.screened(i);
        if (next[i] < voice.size()) {
          step = Math.min(step, voice.step[next[i]]);
        }
      }
      if (step >= to) {
        return false;
      }
      for (int i = 0; i < n; i++) {
        Screened voice = tracks.screened(i);
        plays[i] = next[i] < voice.size() && voice.step[next[i]] == step;
        next[i] += plays[i] ? 1 : 0;
      }
      return true;
    }
  }
}
