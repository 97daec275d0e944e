package thinclick.server.scoring.model;

import java.util.Arrays;

/**
 * How a player's asynchronies hang together: each keeps part of the one before, so that a hundred
 * of them tell no more of the lean than some thirty independent ones would.
 *
 * <p>The asynchronies are those from the ensemble pulse (from the click, for a single player). They
 * are drawn to the pulse at each click and at each attack of another player.
 */
public final class Dependence {
  private static final int ENOUGH_TO_FIT = 8;

  private final double beatMillis;
  private final double[] attackBeats;
  private final double[] asynchronyMillis;
  private final double[] pullBeats;
  private final double[] theta;

  /** Vc + Vm, ms2; 0 where the asynchronies are too few to be fitted. */
  private final double scale;

  private Dependence(
      double beatMillis,
      double[] attackBeats,
      double[] asynchronyMillis,
      double[] pullBeats,
      int[] place) {
    this.beatMillis = beatMillis;
    this.attackBeats = attackBeats;
    this.asynchronyMillis = asynchronyMillis;
    this.pullBeats = pullBeats;
    int n = attackBeats.length;
    if (n < ENOUGH_TO_FIT || spread(asynchronyMillis, all(n)) < 1e-6) {
      theta = new double[0];
      scale = 0;
      return;
    }
    Likelihood likelihood =
        new Likelihood(track(all(n), place), Likelihood.Kind.RESTRICTED_WITHOUT_TENDENCY);
    theta = new Search(likelihood).best();
    likelihood.at(theta);
    scale = likelihood.scale();
  }

  /**
   * Fits one player.
   *
   * @param beatMillis the written length of a beat, ms
   * @param attackBeats where the attacks are written, beats, ascending
   * @param asynchronyMillis their asynchronies, positive late
   * @param pullBeats where a click or another's attack sounded, beats, ascending
   * @param place a small number for each attack; attacks of one number share a mean
   */
  public static Dependence of(
      double beatMillis,
      double[] attackBeats,
      double[] asynchronyMillis,
      double[] pullBeats,
      int[] place) {
    if (attackBeats.length != asynchronyMillis.length || attackBeats.length != place.length) {
      throw new IllegalArgumentException(
          "expected as many asynchronies and places as attacks, "
              + attackBeats.length
              + ", found "
              + asynchronyMillis.length
              + " and "
              + place.length);
    }
    return new Dependence(
        beatMillis, attackBeats.clone(), asynchronyMillis.clone(), pullBeats.clone(), place);
  }

  /**
   * A mean with what it is worth.
   *
   * @param millis the generalised least-squares mean, positive late
   * @param standardError its standard error, ms
   * @param freedom degrees of freedom of the spread about it: tr(C S)^2 / tr((C S)^2) from the
   *     fitted covariance S and the centring C; at most one less than the attacks
   */
  public record Mean(double millis, double standardError, double freedom) {
    /** Where the mean lies with 95 % confidence. */
    public Interval interval() {
      return interval(Normal.Z95);
    }

    Interval interval(double z) {
      double half = Normal.student(z, freedom) * standardError;
      return new Interval(millis - half, millis + half);
    }
  }

  /**
   * The mean of the chosen attacks.
   *
   * @param chosen which attacks, at least two of them
   */
  public Mean mean(boolean[] chosen) {
    int n = count(chosen);
    if (n < 2) {
      throw new IllegalArgumentException("expected at least 2 attacks, found " + n);
    }
    if (scale == 0) {
      double sum = 0;
      for (int k = 0; k < chosen.length; k++) {
        sum += chosen[k] ? asynchronyMillis[k] : 0;
      }
      return new Mean(sum / n, spread(asynchronyMillis, chosen) / Math.sqrt(n), n - 1);
    }
    Track track = track(chosen, new int[chosen.length]);
    Likelihood likelihood = new Likelihood(track, Likelihood.Kind.RESTRICTED_WITHOUT_TENDENCY);
    likelihood.at(theta);
    double error = Math.sqrt(likelihood.coefficientCovariance(scale)[0][0]);
    return new Mean(likelihood.coefficients()[0], error, covariance(track).freedom());
  }

  /** The mean of all attacks; at least two. */
  public Mean mean() {
    return mean(all(attackBeats.length));
  }

  /**
   * How much later one group of attacks lies than the rest, from a joint fit.
   *
   * @param group at least one attack in it and one outside
   */
  public Mean difference(boolean[] group) {
    int n = group.length;
    int in = count(group);
    if (in == 0 || in == n) {
      throw new IllegalArgumentException(
          "expected attacks in the group and outside it, found " + in + " of " + n);
    }
    if (scale == 0) {
      boolean[] rest = new boolean[n];
      for (int k = 0; k < n; k++) {
        rest[k] = !group[k];
      }
      double sum = 0;
      double restSum = 0;
      for (int k = 0; k < n; k++) {
        sum += group[k] ? asynchronyMillis[k] : 0;
        restSum += rest[k] ? asynchronyMillis[k] : 0;
      }
      double own = in < 2 ? 0 : spread(asynchronyMillis, group);
      double other = n - in < 2 ? 0 : spread(asynchronyMillis, rest);
      return new Mean(
          sum / in - restSum / (n - in),
          Math.sqrt(own * own / in + other * other / (n - in)),
          Math.max(1, n - 2));
    }
    int[] column = new int[n];
    for (int k = 0; k < n; k++) {
      column[k] = group[k] ? 1 : 0;
    }
    Track track = track(all(n), column);
    Likelihood likelihood = new Likelihood(track, Likelihood.Kind.RESTRICTED_WITHOUT_TENDENCY);
    likelihood.at(theta);
    double[] means = likelihood.coefficients();
    double[][] covariance = likelihood.coefficientCovariance(scale);
    double variance = covariance[0][0] + covariance[1][1] - 2 * covariance[0][1];
    return new Mean(
        means[1] - means[0], Math.sqrt(Math.max(0, variance)), covariance(track).freedom());
  }

  /** Variances and covariances of a track's attacks as fitted. */
  private AttackCovariance covariance(Track track) {
    double phi = theta[theta.length - 1];
    double timekeeper = scale * Math.cos(phi) * Math.cos(phi);
    double motor = scale * Math.sin(phi) * Math.sin(phi);
    double gain = theta.length > 1 ? theta[0] : 0;
    double start = theta.length > 1 ? AttackCovariance.listened(gain, timekeeper) : timekeeper;
    return new AttackCovariance(track, gain, timekeeper, motor, start);
  }

  private Track track(boolean[] chosen, int[] place) {
    boolean pulled = pullBeats.length > 0;
    Track.Builder track =
        new Track.Builder(beatMillis, pulled ? 1 : 0, pulled ? 0 : -1, Track.Before.LISTENED);
    int[] column = new int[place.length];
    int columns = 0;
    int[] number = new int[1 + Arrays.stream(place).max().orElse(0)];
    for (int k = 0; k < place.length; k++) {
      if (chosen[k]) {
        if (number[place[k]] == 0) {
          number[place[k]] = ++columns;
        }
        column[k] = number[place[k]] - 1;
      }
    }
    int attack = 0;
    int pull = 0;
    double end = attackBeats.length == 0 ? 0 : attackBeats[attackBeats.length - 1];
    while (attack < attackBeats.length) {
      double at = attackBeats[attack];
      if (pull < pullBeats.length) {
        at = Math.min(at, pullBeats[pull]);
      }
      if (at > end) {
        break;
      }
      track.event(at);
      if (attackBeats[attack] == at) {
        if (chosen[attack]) {
          track.own(asynchronyMillis[attack], column[attack]);
        }
        attack++;
      }
      if (pull < pullBeats.length && pullBeats[pull] == at) {
        track.click();
        while (pull < pullBeats.length && pullBeats[pull] == at) {
          pull++;
        }
      }
    }
    return track.build();
  }

  private static boolean[] all(int n) {
    boolean[] all = new boolean[n];
    Arrays.fill(all, true);
    return all;
  }

  private static int count(boolean[] chosen) {
    int count = 0;
    for (boolean one : chosen) {
      count += one ? 1 : 0;
    }
    return count;
  }

  private static double spread(double[] millis, boolean[] chosen) {
    double sum = 0;
    int n = 0;
    for (int k = 0; k < millis.length; k++) {
      sum += chosen[k] ? millis[k] : 0;
      n += chosen[k] ? 1 : 0;
    }
    double squares = 0;
    for (int k = 0; k < millis.length; k++) {
      double away = millis[k] - sum / n;
      squares += chosen[k] ? away * away : 0;
    }
    return Math.sqrt(squares / (n - 1));
  }
}
