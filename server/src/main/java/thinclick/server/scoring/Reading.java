package thinclick.server.scoring;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** What has been understood so far of one chair: shifts, phases, partners. */
final class Reading {
  /**
   * An attack answers what is written within so many SDs of the noise: some attacks miss by far
   * more than the rest, and what nobody wrote seldom falls just beside a place that is free.
   */
  private static final double WINDOW = 5.5;

  /** The least such window, ms. */
  private static final double LEAST_WINDOW = 25;

  final Chair chair;
  final Shifts shifts;

  /** Whole-step displacement at each counted written attack. */
  final int[] shift;

  /** Slow phase at each, ms from its place. */
  final double[] phase;

  /** How sure the phase is, SD in ms; widens the window of the match. */
  final double[] doubt;

  /** Log evidence of what was played around each, against its being dropped, in nats. */
  final double[] evidence;

  /** Index of the matched attack for each, or {@link Matcher#NONE}. */
  int[] partner;

  /** SD of this player's attacks about the slow phase, ms. */
  double noise;

  Reading(Chair chair, Shifts shifts, double noise) {
    this.chair = chair;
    this.shifts = shifts;
    this.noise = noise;
    shift = new int[chair.steps.length];
    phase = new double[chair.steps.length];
    doubt = new double[chair.steps.length];
    evidence = new double[chair.steps.length];
    partner = new int[chair.steps.length];
    Arrays.fill(partner, Matcher.NONE);
  }

  /** A second reading that can be changed without changing this one. */
  Reading copy() {
    Reading copy = new Reading(chair, shifts, noise);
    System.arraycopy(shift, 0, copy.shift, 0, shift.length);
    System.arraycopy(phase, 0, copy.phase, 0, phase.length);
    System.arraycopy(doubt, 0, copy.doubt, 0, doubt.length);
    System.arraycopy(evidence, 0, copy.evidence, 0, evidence.length);
    copy.partner = partner.clone();
    return copy;
  }

  int size() {
    return shift.length;
  }

  /** The step on which a written attack sounded. */
  int soundingStep(int k) {
    return chair.steps[k] + shift[k];
  }

  int displacedCount() {
    int count = 0;
    for (int one : shift) {
      count += one == 0 ? 0 : 1;
    }
    return count;
  }

  int matchedCount() {
    int count = 0;
    for (int one : partner) {
      count += one == Matcher.NONE ? 0 : 1;
    }
    return count;
  }

  /** The lean asked for at a written attack, ms. */
  double feel(Sheet sheet, int k) {
    return sheet.grid.onbeat(chair.steps[k])
        ? chair.part.feel().onbeat()
        : chair.part.feel().offbeat();
  }

  /** Matches anew at the present shifts and phases. */
  void match(Sheet sheet, Places places) {
    partner = partners(sheet, places, 0, size(), shift);
  }

  /**
   * How many written attacks around a run would find a partner if the run sat off by a shift: what
   * lies two bars from it is not asked.
   *
   * @param from the first written attack of the run
   * @param to the one after its last
   */
  int matchedAround(Sheet sheet, Places places, int from, int to, int tried) {
    int margin = 2 * sheet.stepsPerBar + Math.max(Math.abs(tried), Math.abs(shift[from]));
    int first = from;
    while (first > 0 && chair.steps[from] - chair.steps[first - 1] <= margin) {
      first--;
    }
    int end = to;
    while (end < size() && chair.steps[end] - chair.steps[to - 1] <= margin) {
      end++;
    }
    int[] shifts = Arrays.copyOfRange(shift, first, end);
    Arrays.fill(shifts, from - first, to - first, tried);
    int count = 0;
    for (int one : partners(sheet, places, first, end, shifts)) {
      count += one == Matcher.NONE ? 0 : 1;
    }
    return count;
  }

  private int[] partners(Sheet sheet, Places places, int first, int end, int[] shifts) {
    int n = end - first;
    double[] expected = new double[n];
    Integer[] order = new Integer[n];
    for (int i = 0; i < n; i++) {
      int k = first + i;
      expected[i] = places.at(chair.steps[k] + shifts[i]) + phase[k] + feel(sheet, k);
      order[i] = i;
    }
    boolean sorted = true;
    for (int i = 1; i < n && sorted; i++) {
      sorted = expected[i] >= expected[i - 1];
    }
    if (!sorted) {
      Arrays.sort(order, (a, b) -> Double.compare(expected[a], expected[b]));
    }
    double[] inOrder = new double[n];
    double[] window = new double[n];
    for (int i = 0; i < n; i++) {
      inOrder[i] = expected[order[i]];
    }
    for (int i = 0; i < n; i++) {
      double gap = Double.POSITIVE_INFINITY;
      if (i > 0) {
        gap = inOrder[i] - inOrder[i - 1];
      }
      if (i + 1 < n) {
        gap = Math.min(gap, inOrder[i + 1] - inOrder[i]);
      }
      if (gap < 0.25 * sheet.stepMillis) {
        gap = sheet.stepMillis; // two fell on one place, where a shift changed
      }
      double unsure = Math.hypot(noise, doubt[first + order[i]]);
      window[i] = Math.min(Math.max(LEAST_WINDOW, WINDOW * unsure), gap / 2);
    }
    int[] found = Matcher.match(inOrder, window, chair.attacks);
    int[] partners = new int[n];
    for (int i = 0; i < n; i++) {
      partners[order[i]] = found[i];
    }
    return partners;
  }

  /**
   * Where the odd steps of this player's pairs sound; null where either kind is too rare.
   *
   * @param laid the ratio already in the places
   */
  SwingRatio.@Nullable Place swing(Sheet sheet, Places places, double laid) {
    double[] sum = new double[2];
    double[] squares = new double[2];
    int[] count = new int[2];
    for (int k = 0; k < size(); k++) {
      if (partner[k] != Matcher.NONE && shift[k] == 0) {
        int kind = chair.steps[k] & 1;
        double off =
            chair.attacks[partner[k]] - places.at(chair.steps[k]) - feel(sheet, k) - phase[k];
        sum[kind] += off;
        squares[kind] += off * off;
        count[kind]++;
      }
    }
    if (count[0] < SwingRatio.LEAST || count[1] < SwingRatio.LEAST) {
      return null;
    }
    double variance = 0;
    for (int kind = 0; kind < 2; kind++) {
      double mean = sum[kind] / count[kind];
      variance += Math.max(0, squares[kind] / count[kind] - mean * mean) / (count[kind] - 1);
    }
    return SwingRatio.place(
        laid, sum[1] / count[1] - sum[0] / count[0], Math.sqrt(variance), sheet.stepMillis);
  }

  /**
   * What this chair tells of the pulse at its present shifts and partners.
   *
   * @param displacedDoubt the factor by which displaced attacks are doubted
   */
  Observed observed(Sheet sheet, Places places, double displacedDoubt) {
    int count = matchedCount();
    if (count == 0) {
      return Observed.NONE;
    }
    long[] keys = new long[count];
    int filled = 0;
    for (int k = 0; k < size(); k++) {
      if (partner[k] != Matcher.NONE) {
        keys[filled++] = ((long) (soundingStep(k) + (1 << 30)) << 32) | k;
      }
    }
    Arrays.sort(keys);
    int[] at = new int[count];
    double[] off = new double[count];
    double[] doubts = new double[count];
    for (int i = 0; i < count; i++) {
      int k = (int) keys[i];
      at[i] = soundingStep(k);
      off[i] = chair.attacks[partner[k]] - places.at(at[i]) - feel(sheet, k);
      doubts[i] = shift[k] == 0 ? 1 : displacedDoubt;
    }
    return new Observed(at, off, doubts);
  }
}
