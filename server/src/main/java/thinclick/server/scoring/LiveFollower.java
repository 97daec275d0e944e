package thinclick.server.scoring;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.LiveScorer.Judgement;
import thinclick.server.scoring.LiveScorer.Kind;

/**
 * One player during a take: a lean, and at every attack how likely each shift is. Forwards an
 * attack weighs the shifts; backwards later attacks weigh the last few again.
 */
final class LiveFollower {
  /** Attacks of a player whose judgement may still be taken back. */
  private static final int PENDING = 8;

  private static final double DROP = 0.08;
  private static final double JUMP_AT_BAR = 0.01;
  private static final double JUMP_ELSEWHERE = 0.001;
  private static final double NOISE = 22;

  /** No attack is looked for further from its place than this many steps, one SD. */
  private static final double MOST_DOUBT = 0.25;

  /**
   * What the written attacks cost that were passed over, by how many; more than six cost no more.
   */
  private static final double[] PASSED_OVER = powers(DROP, 7);

  /**
   * How much less likely a jump is to a shift so many steps away; none is likelier than the last.
   */
  private static final double[] APART = powers(0.5, 21);

  private static final double START_LEAN = 60;
  private static final double LEAN_WALK = 1;

  final Chair chair;
  int heard;
  private final Sheet sheet;
  private final Places places;
  private final double tolerance;
  private final Shifts shifts;
  private final double noise;
  private final double addedPerMilli;
  private final double[] weight;
  private final double[] pulls; // room for one step's, kept from attack to attack
  private final double[] after; // room for one look back's
  private final int zero;
  private final int[] reached; // by shift, the last written attack that was explained
  private final Onsets onsets = new Onsets();
  private final Deque<Pending> pending = new ArrayDeque<>();
  private double lean;
  private double leanVariance = START_LEAN * START_LEAN;
  private int lastBar = -1;
  private int believed;

  /** An attack that may be judged again: how likely each shift made it, and what it answers. */
  private static final class Pending {
    final long micros;
    final double at;
    final double pulse;
    final double late;
    final double jump;
    final double[] likely;
    final double[] forward;
    final int[] answers;
    Judgement told;

    /** The shift, by index, that it was last judged by. */
    int toldAs;

    Pending(
        long micros,
        double at,
        double pulse,
        double late,
        double jump,
        int shifts,
        Judgement told) {
      this.micros = micros;
      this.at = at;
      this.pulse = pulse;
      this.late = late;
      this.jump = jump;
      this.told = told;
      likely = new double[shifts];
      forward = new double[shifts];
      answers = new int[shifts];
    }
  }

  LiveFollower(Sheet sheet, Places places, Chair chair, double tolerance) {
    this.sheet = sheet;
    this.places = places;
    this.chair = chair;
    this.tolerance = tolerance;
    int[] whole = chair.part.attackSteps().stream().mapToInt(Integer::intValue).toArray();
    shifts = Shifts.of(whole, sheet.stepsPerBar);
    noise = Math.min(NOISE, 0.15 * sheet.stepMillis);
    addedPerMilli = Math.max(1, 0.06 * whole.length) / Math.max(1, sheet.steps * sheet.stepMillis);
    weight = new double[shifts.shifts().length];
    pulls = new double[weight.length];
    after = new double[weight.length];
    zero = shifts.zero();
    reached = new int[weight.length];
    Arrays.fill(reached, -1);
    Arrays.fill(weight, 0.02 / weight.length);
    believed = zero;
    weight[believed] = 1;
  }

  private static double[] powers(double of, int count) {
    double[] powers = new double[count];
    for (int i = 0; i < count; i++) {
      powers[i] = Math.pow(of, i);
    }
    return powers;
  }

  String name() {
    return chair.part.player();
  }

  int shift() {
    return shifts.shifts()[believed];
  }

  double lean() {
    return lean;
  }

  /**
   * True where a place in steps lies in bars that are free; half a step before a bar is the bar.
   */
  boolean free(double step) {
    int bar = Math.floorDiv((int) Math.max(-1e6, Math.min(2e6, step + 0.5)), sheet.stepsPerBar);
    return chair.part.freeAt(bar);
  }

  /** True where an attack belongs to the one before it. */
  boolean aside(double at, @Nullable Integer pitch) {
    return onsets.aside(at, pitch);
  }

  /**
   * Hears an attack.
   *
   * @param pulse the ensemble pulse there, ms from its place, as known before
   * @return its judgement, then those of earlier attacks that are judged otherwise now
   */
  List<Judgement> hear(long micros, double at, LiveCourse course, double pulse) {
    double here = course.stepAt(at - lean);
    int bar = Math.floorDiv((int) Math.max(-1e6, Math.min(1e6, here)), sheet.stepsPerBar);
    double jump = weight.length == 1 ? 0 : bar == lastBar ? JUMP_ELSEWHERE : JUMP_AT_BAR;
    lastBar = bar;
    Judgement unknown = new Judgement(name(), micros, Kind.ADDED, null, shift(), null);
    Pending now = new Pending(micros, at, pulse, course.swung(1), jump, weight.length, unknown);
    double sd =
        Math.min(
            Math.max(noise, MOST_DOUBT * sheet.stepMillis),
            Math.sqrt(noise * noise + leanVariance + course.variance()));
    double widest = Math.min(4.5 * NOISE, 0.45 * sheet.stepMillis);
    step(weight, jump);
    double dense = sd * Math.sqrt(2 * Math.PI);
    // further out than this an attack is sooner added than a hit: most shifts need no exponential
    double farthest = 1e-6 - 2 * Math.log(Math.min(1, addedPerMilli * dense));
    double all = 0;
    int elsewhere = reached[believed]; // what was answered at another shift was not passed over
    int after = chair.steps.length;
    for (int d = 0; d < weight.length; d++) {
      int shift = shifts.shifts()[d];
      after = firstFrom(here - shift, after);
      int k = nearest(here - shift, after);
      double off = k < 0 ? Double.POSITIVE_INFINITY : off(at, k, shift, course);
      double z = off / sd;
      double hit = z * z > farthest ? 0 : Math.exp(-z * z / 2) / dense;
      boolean free = k > reached[d];
      now.answers[d] = free && Math.abs(off) <= widest ? k : -1;
      if (free && hit > addedPerMilli) {
        int explained = Math.max(reached[d], Math.min(k - 1, elsewhere));
        int skipped = explained < 0 ? 0 : Math.min(6, k - explained - 1);
        now.likely[d] = (1 - DROP) * hit * PASSED_OVER[skipped];
        reached[d] = k;
      } else {
        now.likely[d] = addedPerMilli;
      }
      weight[d] *= now.likely[d];
      all += weight[d];
    }
    int best = zero;
    for (int d = 0; d < weight.length; d++) {
      weight[d] /= all;
      now.forward[d] = weight[d];
      best = weight[d] > weight[best] ? d : best;
    }
    believed = best;
    follow(now, course);
    now.told = judged(now, believed);
    now.toldAs = believed;
    pending.addLast(now);
    if (pending.size() > PENDING) {
      pending.removeFirst();
    }
    List<Judgement> told = new ArrayList<>();
    told.add(now.told);
    lookBack(told);
    return told;
  }

  /** Lets a little of the weight jump to other shifts, likeliest to near ones. */
  private void step(double[] weights, double jump) {
    double spread = 0;
    for (int d = 0; d < weights.length; d++) {
      pulls[d] = pull(d);
      spread += pulls[d];
    }
    for (int d = 0; d < weights.length; d++) {
      weights[d] = (1 - jump) * weights[d] + jump * pulls[d] / spread;
    }
  }

  private double pull(int d) {
    int apart = Math.abs(shifts.shifts()[d] - shift());
    return APART[Math.min(apart, 20)] + (d == zero ? 0.5 : 0);
  }

  /** Moves lean and course by an attack that answers something written. */
  private void follow(Pending now, LiveCourse course) {
    int k = now.answers[believed];
    if (k < 0) {
      leanVariance = Math.min(START_LEAN * START_LEAN, 1.5 * leanVariance + 50);
      return;
    }
    double off = off(now.at, k, shift(), course);
    int step = chair.steps[k] + shift();
    if (sheet.take.swing().asTheBandPlays() && (step & 1) != 0) {
      course.hearSwing(off);
    }
    double own = noise * noise / 2;
    leanVariance += LEAN_WALK * LEAN_WALK;
    double uncertain = course.variance();
    double gain = leanVariance / (leanVariance + own + uncertain);
    course.hear(step, off, own + leanVariance);
    lean += gain * off;
    leanVariance -= gain * leanVariance;
    heard++;
  }

  /** Judges the last attacks again by what came after them. */
  private void lookBack(List<Judgement> told) {
    Arrays.fill(after, 1);
    Pending[] all = pending.toArray(new Pending[0]);
    for (int i = all.length - 2; i >= 0; i--) {
      Pending later = all[i + 1];
      double mean = 0;
      double top = 0;
      for (int d = 0; d < after.length; d++) {
        after[d] *= later.likely[d];
        mean += after[d] / after.length;
      }
      int best = zero;
      double most = -1;
      for (int d = 0; d < after.length; d++) {
        after[d] = (1 - later.jump) * after[d] + later.jump * mean;
        top = Math.max(top, after[d]);
        double smoothed = all[i].forward[d] * after[d];
        if (smoothed > most) {
          most = smoothed;
          best = d;
        }
      }
      for (int d = 0; top > 0 && d < after.length; d++) {
        after[d] /= top;
      }
      if (best == all[i].toldAs) {
        continue;
      }
      Judgement anew = judged(all[i], best);
      all[i].toldAs = best;
      if (anew.kind() != all[i].told.kind() || anew.displacement() != all[i].told.displacement()) {
        all[i].told = anew;
        told.add(anew);
      }
    }
  }

  private Judgement judged(Pending attack, int d) {
    int shift = shifts.shifts()[d];
    int k = attack.answers[d];
    if (k < 0) {
      return new Judgement(name(), attack.micros, Kind.ADDED, null, shift, null);
    }
    int step = chair.steps[k] + shift;
    double swung = (step & 1) == 0 ? 0 : attack.late;
    double asynchrony = attack.at - places.at(step) - swung - feel(k) - attack.pulse;
    Kind kind =
        shift != 0
            ? Kind.DISPLACED
            : Math.abs(asynchrony) <= tolerance
                ? Kind.TOGETHER
                : asynchrony < 0 ? Kind.EARLY : Kind.LATE;
    return new Judgement(
        name(), attack.micros, kind, chair.steps[k], shift, Round.millis(asynchrony));
  }

  /** Takes back a shift that all share: it is the band's, not this player's. */
  void settleAtHome() {
    int away = shift();
    double[] moved = new double[weight.length];
    for (int d = 0; d < weight.length; d++) {
      int to = Arrays.binarySearch(shifts.shifts(), shifts.shifts()[d] - away);
      if (to >= 0) {
        moved[to] += weight[d];
      }
    }
    System.arraycopy(moved, 0, weight, 0, weight.length);
    int[] before = reached.clone();
    Arrays.fill(reached, before[believed]);
    believed = zero;
    pending.clear();
  }

  private double off(double at, int k, int shift, LiveCourse course) {
    int step = chair.steps[k] + shift;
    return at - places.at(step) - course.swung(step) - feel(k) - course.at(step) - lean;
  }

  private double feel(int k) {
    return sheet.grid.onbeat(chair.steps[k])
        ? chair.part.feel().onbeat()
        : chair.part.feel().offbeat();
  }

  /**
   * The first written attack at a place in steps or after it, by index.
   *
   * @param from where one later place had it: shifts ascend, so that places come closer together
   *     and are walked to from the last and not looked for anew
   */
  private int firstFrom(double step, int from) {
    int[] steps = chair.steps;
    int near = near(step);
    if (from == steps.length) { // the first place that is asked for
      int found = Arrays.binarySearch(steps, near);
      return found >= 0 ? found : -found - 1;
    }
    int at = from;
    while (at > 0 && steps[at - 1] >= near) {
      at--;
    }
    return at;
  }

  private static int near(double step) {
    return (int) Math.rint(Math.max(-1e6, Math.min(2e6, step)));
  }

  /**
   * The written attack next to a place in steps; -1 where nothing is written.
   *
   * @param after the first written attack there or after it
   */
  private int nearest(double step, int after) {
    int[] steps = chair.steps;
    if (steps.length == 0) {
      return -1;
    }
    if (after == 0 || after == steps.length) {
      return after == 0 ? 0 : after - 1;
    }
    return steps[after] == near(step) || steps[after] - step < step - steps[after - 1]
        ? after
        : after - 1;
  }
}
