package thinclick.server.scoring.model;

import java.util.Arrays;
import java.util.List;

/**
 * A player's attacks made ready for the model: slips of the hand marked, the means by place in the
 * beat known roughly.
 *
 * <p>An attack is a slip where it lies further than 3.5 MAD (scaled to a normal SD) from the median
 * of its four neighbours. 3 % of them at 80 ms would drop the coverage of the motor's interval to
 * .41.
 */
final class Screened {
  private static final double SLIP = 3.5 * 1.4826;
  private static final int REACH = 4;

  final int[] step;

  /** Attack less the written place, ms. */
  final double[] millis;

  /** The place in the beat. */
  final int[] place;

  final boolean[] slip;

  /**
   * How each place in the beat differs from the player's own course, ms; sums to 0 over attacks.
   */
  final double[] contrast;

  /** The player's slow course at each attack, ms from the written grid. */
  final double[] course;

  /** Where the player's course lies against click or pulse, ms; set once all players are known. */
  double level;

  private Screened(int attacks, int places) {
    step = new int[attacks];
    millis = new double[attacks];
    place = new int[attacks];
    slip = new boolean[attacks];
    contrast = new double[places];
    course = new double[attacks];
  }

  /** Screens one player. */
  static Screened of(Performance take, Voice voice) {
    List<GridAttack> attacks = voice.attacks();
    Screened result = new Screened(attacks.size(), take.stepsPerBeat());
    for (int k = 0; k < attacks.size(); k++) {
      result.step[k] = attacks.get(k).step();
      result.millis[k] = attacks.get(k).millis();
      result.place[k] = take.placeInBeat(attacks.get(k).step());
    }
    result.findContrasts(2, true);
    result.markSlips();
    result.findContrasts(3, false);
    return result;
  }

  int size() {
    return step.length;
  }

  /** How many attacks are no slips. */
  int kept() {
    int count = 0;
    for (boolean one : slip) {
      count += one ? 0 : 1;
    }
    return count;
  }

  /** True where the attacks lie alike about their course: there is no noise to estimate. */
  boolean constant() {
    double most = 0;
    for (int k = 0; k < size(); k++) {
      if (!slip[k]) {
        most = Math.max(most, Math.abs(millis[k] - contrast[place[k]] - course[k]));
      }
    }
    return most < 0.1;
  }

  /** Timekeeper and motor from the intervals between attacks that are no slips. */
  IntervalMoments moments(Performance take) {
    int n = Math.max(0, kept() - 1);
    double[] intervals = new double[n];
    double[] beats = new double[n];
    int before = -1;
    int count = 0;
    for (int k = 0; k < size(); k++) {
      if (!slip[k]) {
        if (before >= 0) {
          beats[count] = take.beatAt(step[k]) - take.beatAt(step[before]);
          intervals[count++] =
              beats[count - 1] * take.beatMillis()
                  + millis[k]
                  - contrast[place[k]]
                  - (millis[before] - contrast[place[before]]);
        }
        before = k;
      }
    }
    return IntervalMoments.of(intervals, beats);
  }

  /** An attack with the player's mean at its place removed: what others follow, ms. */
  double followed(int k) {
    return millis[k] - contrast[place[k]] - level;
  }

  /** Course and contrasts in turn, each from the other's remainder. */
  private void findContrasts(int rounds, boolean byMedian) {
    int n = size();
    double[] window = new double[2 * REACH + 1];
    double[] rest = new double[n];
    for (int round = 0; round < rounds; round++) {
      for (int k = 0; k < n; k++) {
        int from = Math.max(0, k - REACH);
        int to = Math.min(n - 1, k + REACH);
        int count = 0;
        for (int i = from; i <= to; i++) {
          if (!slip[i]) {
            window[count++] = millis[i] - contrast[place[i]];
          }
        }
        course[k] = count == 0 ? millis[k] : middle(window, count, byMedian);
      }
      for (int p = 0; p < contrast.length; p++) {
        int count = 0;
        for (int k = 0; k < n; k++) {
          if (place[k] == p && !slip[k]) {
            rest[count++] = millis[k] - course[k];
          }
        }
        contrast[p] = count == 0 ? 0 : middle(rest, count, byMedian);
      }
      double sum = 0;
      int count = 0;
      for (int k = 0; k < n; k++) {
        if (!slip[k]) {
          sum += contrast[place[k]];
          count++;
        }
      }
      for (int p = 0; count > 0 && p < contrast.length; p++) {
        contrast[p] -= sum / count;
      }
    }
  }

  private void markSlips() {
    int n = size();
    if (n < 5) {
      return;
    }
    double[] away = new double[n];
    double[] neighbours = new double[4];
    for (int k = 0; k < n; k++) {
      int from = Math.max(0, Math.min(n - 5, k - 2));
      int count = 0;
      for (int i = from; i < from + 5; i++) {
        if (i != k) {
          neighbours[count++] = millis[i] - contrast[place[i]];
        }
      }
      away[k] = Math.abs(millis[k] - contrast[place[k]] - middle(neighbours, 4, true));
    }
    double limit = SLIP * Math.max(1, middle(away.clone(), n, true));
    for (int k = 0; k < n; k++) {
      slip[k] = away[k] > limit;
    }
  }

  /** Median (sorts the values in place) or mean of the first {@code count} values. */
  private static double middle(double[] values, int count, boolean byMedian) {
    if (byMedian) {
      Arrays.sort(values, 0, count);
      return 0.5 * (values[(count - 1) / 2] + values[count / 2]);
    }
    double sum = 0;
    for (int i = 0; i < count; i++) {
      sum += values[i];
    }
    return sum / count;
  }
}
