package thinclick.server.scoring.model;

import java.util.Arrays;
import java.util.List;

/**
 * Lays a take out as one track for each player: own attacks, clicks, and the others' attacks with
 * their own means removed.
 */
final class Tracks {
  /** Among more players than this, gains for each other player cannot be told apart. */
  static final int MOST_COUPLED = 8;

  /** A click within so many beats before an attack lets the attack tell the player's level. */
  private static final double CLICK_REACH_BEATS = 2;

  private static final int ENOUGH_FOR_LEVEL = 8;

  private final Performance take;
  private final Screened[] screened;
  private final int[] clickSteps;

  Tracks(Performance take) {
    this.take = take;
    List<Voice> voices = take.voices();
    screened = new Screened[voices.size()];
    for (int i = 0; i < screened.length; i++) {
      screened[i] = Screened.of(take, voices.get(i));
    }
    clickSteps = take.clickSteps().stream().mapToInt(Integer::intValue).toArray();
    findLevels();
  }

  Screened screened(int player) {
    return screened[player];
  }

  /** True where each other player has a gain of their own; false where they share one. */
  boolean coupledOneByOne() {
    return screened.length <= MOST_COUPLED;
  }

  /** How many attacks of j were heard by i and stand before i's last attack. */
  int heard(int i, int j) {
    Screened own = screened[i];
    if (own.size() == 0 || !take.voices().get(i).hearsOthers()) {
      return 0;
    }
    int last = own.step[own.size() - 1];
    Screened other = screened[j];
    int count = 0;
    for (int k = 0; k < other.size() && other.step[k] < last; k++) {
      count += other.slip[k] ? 0 : 1;
    }
    return count;
  }

  /**
   * The track of a player. Gains: the click's first where a click sounds before the player's last
   * attack, then one for each voice in {@code followed}, in that order.
   */
  Track of(int player, int[] followed, Track.Before before) {
    Screened own = screened[player];
    int last = own.size() == 0 ? -1 : own.step[own.size() - 1];
    boolean clicked = clickSteps.length > 0 && clickSteps[0] < last;
    boolean oneByOne = coupledOneByOne();
    int heardGains = followed.length == 0 ? 0 : oneByOne ? followed.length : 1;
    Track.Builder track =
        new Track.Builder(
            take.beatMillis(), heardGains + (clicked ? 1 : 0), clicked ? 0 : -1, before);
    int[] column = columns(own);
    double late = take.voices().get(player).heardLateMillis();
    int firstGain = clicked ? 1 : 0;
    int nextOwn = 0;
    int nextClick = 0;
    int[] next = new int[followed.length];
    while (true) {
      int step = Integer.MAX_VALUE;
      if (nextOwn < own.size()) {
        step = own.step[nextOwn];
      }
      if (nextClick < clickSteps.length) {
        step = Math.min(step, clickSteps[nextClick]);
      }
      for (int f = 0; f < followed.length; f++) {
        Screened other = screened[followed[f]];
        if (next[f] < other.size()) {
          step = Math.min(step, other.step[next[f]]);
        }
      }
      if (step > last) {
        return track.build();
      }
      track.event(take.beatAt(step));
      if (nextOwn < own.size() && own.step[nextOwn] == step) {
        if (!own.slip[nextOwn]) {
          track.own(own.millis[nextOwn], column[own.place[nextOwn]]);
        }
        nextOwn++;
      }
      if (nextClick < clickSteps.length && clickSteps[nextClick] == step) {
        if (clicked) {
          track.click();
        }
        nextClick++;
      }
      double sum = 0;
      int heard = 0;
      for (int f = 0; f < followed.length; f++) {
        Screened other = screened[followed[f]];
        int k = next[f];
        if (k < other.size() && other.step[k] == step) {
          if (!other.slip[k]) {
            double millis = other.followed(k) + late;
            if (oneByOne) {
              track.heard(firstGain + f, millis);
            }
            sum += millis;
            heard++;
          }
          next[f]++;
        }
      }
      if (!oneByOne && heard > 0) {
        track.heard(firstGain, sum / heard);
      }
    }
  }

  /** Numbers the places that hold an attack; the others have no mean. */
  private int[] columns(Screened own) {
    int[] column = new int[take.stepsPerBeat()];
    Arrays.fill(column, -1);
    for (int k = 0; k < own.size(); k++) {
      if (!own.slip[k]) {
        column[own.place[k]] = 0;
      }
    }
    int next = 0;
    for (int p = 0; p < column.length; p++) {
      if (column[p] == 0) {
        column[p] = next++;
      }
    }
    return column;
  }

  /**
   * Each player's level: against the click where one sounds near enough attacks, else against the
   * mean course of those whose level is known, else of all.
   */
  private void findLevels() {
    int n = screened.length;
    boolean[] known = new boolean[n];
    boolean any = false;
    for (int i = 0; i < n; i++) {
      known[i] = levelFromClick(screened[i]);
      any |= known[i];
    }
    int[] at = new int[n];
    int[] next = new int[n];
    double[] sum = new double[n];
    int[] count = new int[n];
    // One walk over all attacks in order of steps; each course holds until its next attack.
    while (true) {
      int step = Integer.MAX_VALUE;
      for (int i = 0; i < n; i++) {
        if (next[i] < screened[i].size()) {
          step = Math.min(step, screened[i].step[next[i]]);
        }
      }
      if (step == Integer.MAX_VALUE) {
        break;
      }
      double pulse = 0;
      int voices = 0;
      for (int i = 0; i < n; i++) {
        Screened voice = screened[i];
        if (next[i] < voice.size() && voice.step[next[i]] == step) {
          at[i] = next[i]++;
        }
        if (voice.size() > 0 && next[i] > 0 && (known[i] || !any)) {
          pulse += voice.course[at[i]] - voice.level;
          voices++;
        }
      }
      for (int i = 0; voices > 0 && i < n; i++) {
        Screened voice = screened[i];
        if (!known[i] && next[i] > 0 && voice.step[at[i]] == step) {
          sum[i] += voice.course[at[i]] - pulse / voices;
          count[i]++;
        }
      }
    }
    for (int i = 0; i < n; i++) {
      if (!known[i] && count[i] > 0) {
        screened[i].level = sum[i] / count[i];
      }
    }
  }

  private boolean levelFromClick(Screened voice) {
    double sum = 0;
    int count = 0;
    int click = -1;
    for (int k = 0; k < voice.size(); k++) {
      while (click + 1 < clickSteps.length && clickSteps[click + 1] <= voice.step[k]) {
        click++;
      }
      if (click >= 0
          && !voice.slip[k]
          && take.beatAt(voice.step[k]) - take.beatAt(clickSteps[click]) <= CLICK_REACH_BEATS) {
        sum += voice.millis[k] - voice.contrast[voice.place[k]];
        count++;
      }
    }
    if (count >= ENOUGH_FOR_LEVEL) {
      voice.level = sum / count;
    }
    return count >= ENOUGH_FOR_LEVEL;
  }
}
