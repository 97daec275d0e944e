package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Take;

/**
 * Judges attacks as they come, from what came before alone, and takes a judgement back where later
 * attacks prove it wrong. The cost of an attack does not depend on how many came before it. The
 * review after the take does not come from here: it sees everything and never depends on the order
 * of arrival.
 *
 * <p>Not safe for use by several threads at once: a room is owned by one.
 */
public final class LiveScorer {
  /** What an attack was, so far as can be told. */
  public enum Kind {
    /** Within tolerance of the ensemble pulse. */
    TOGETHER,
    /** Before it. */
    EARLY,
    /** After it. */
    LATE,
    /** Answers a written attack by a player who sits off the part by whole steps. */
    DISPLACED,
    /** Answers nothing that is written. */
    ADDED,
    /** Belongs to the attack before it: a chord's later note, a double trigger. */
    SET_ASIDE
  }

  /**
   * One judgement.
   *
   * @param player whose attack
   * @param micros its room time
   * @param kind what it was
   * @param writtenStep the step it answers; null where it answers none
   * @param displacement the player's displacement in steps, positive late
   * @param asynchronyMillis its distance from the ensemble pulse, positive late; null where it
   *     answers nothing
   */
  public record Judgement(
      String player,
      long micros,
      Kind kind,
      @Nullable Integer writtenStep,
      int displacement,
      @Nullable Double asynchronyMillis) {}

  /** A displacement is believed when it explains so much more than home does, in nats. */
  private static final double BELIEVED = 6;

  /** Attacks of a player whose judgement may still be taken back. */
  private static final int PENDING = 6;

  private static final double NOISE = 30;
  private static final double FORGET = 0.85;
  private static final double FOLLOW = 0.25;
  private static final double HIT = 3;
  private static final double MISS = -2;

  private final Sheet sheet;
  private final Places places;
  private final double tolerance;
  private final Follower[] followers;

  /** A take before its first attack: its parts and its plan. */
  public LiveScorer(Take dealt) {
    sheet = new Sheet(dealt.withAttacks(List.of()));
    places = Places.nominal(sheet, dealt.swing().ratio(), 8 * sheet.stepsPerBar);
    tolerance = Tolerance.of(sheet, dealt.swing().ratio()).millis();
    followers = new Follower[sheet.chairs.size()];
    for (int i = 0; i < followers.length; i++) {
      followers[i] = new Follower(sheet.chairs.get(i), sheet.stepsPerBar);
    }
  }

  /**
   * Judges one attack.
   *
   * @param player who played it; a name without a part is refused
   * @param micros its room time
   * @return its judgement first, then those of earlier attacks that are now judged otherwise
   */
  public List<Judgement> judge(String player, long micros) {
    for (Follower follower : followers) {
      if (follower.chair.part.player().equals(player)) {
        return judge(follower, micros);
      }
    }
    throw new IllegalArgumentException("expected a player with a part, found " + player);
  }

  private List<Judgement> judge(Follower follower, long micros) {
    double at = sheet.millis(micros);
    if (at - follower.last >= 0 && at - follower.last <= Chair.DOUBLE_MILLIS) {
      return List.of(new Judgement(follower.name(), micros, Kind.SET_ASIDE, null, 0, null));
    }
    follower.last = at;
    int before = follower.shift();
    follower.hear(at);
    Judgement now = follower.judgement(micros, pulse(follower));
    List<Judgement> told = new ArrayList<>();
    told.add(now);
    if (follower.shift() != before) {
      for (int i = 0; i < follower.pending.size(); i++) {
        Judgement old = follower.pending.get(i);
        Judgement anew = follower.judgement(old.micros(), pulse(follower));
        if (anew.kind() != old.kind() || anew.displacement() != old.displacement()) {
          follower.pending.set(i, anew);
          told.add(anew);
        }
      }
    }
    follower.pending.add(now);
    if (follower.pending.size() > PENDING) {
      follower.pending.remove(0);
    }
    return List.copyOf(told);
  }

  /** The mean of the slow parts of those who have played; a single player's is the click. */
  private double pulse(Follower asked) {
    double sum = 0;
    double weights = 0;
    int heard = 0;
    for (Follower one : followers) {
      if (one.heard > 0) {
        sum += one.chair.part.pulseWeight() * one.phase;
        weights += one.chair.part.pulseWeight();
        heard++;
      }
    }
    if (heard < 2) {
      return Math.abs(asked.phase) <= Judged.SOLO_LEAN ? asked.phase : 0;
    }
    return weights > 0 ? sum / weights : 0;
  }

  /** One player's shift and slow phase, so far. */
  private final class Follower {
    final Chair chair;
    final Shifts shifts;
    final double[] weight;
    final List<Judgement> pending = new ArrayList<>();
    double phase;
    double last = Double.NEGATIVE_INFINITY;
    int heard;
    private int believed;

    Follower(Chair chair, int stepsPerBar) {
      this.chair = chair;
      shifts =
          Shifts.of(
              chair.part.attackSteps().stream().mapToInt(Integer::intValue).toArray(), stepsPerBar);
      weight = new double[shifts.shifts().length];
      believed = shifts.zero();
    }

    String name() {
      return chair.part.player();
    }

    int shift() {
      return shifts.shifts()[believed];
    }

    void hear(double at) {
      double reach = Math.min(2.5 * NOISE, 0.4 * sheet.stepMillis);
      for (int d = 0; d < weight.length; d++) {
        int k = nearest(at, shifts.shifts()[d]);
        double off = k < 0 ? Double.POSITIVE_INFINITY : off(at, k, shifts.shifts()[d]);
        double score = Math.abs(off) <= reach ? HIT - off * off / (2 * NOISE * NOISE) : MISS;
        weight[d] = FORGET * weight[d] + score - 0.02 * Math.abs(shifts.shifts()[d]);
      }
      int best = shifts.zero();
      for (int d = 0; d < weight.length; d++) {
        if (weight[d] > weight[best]) {
          best = d;
        }
      }
      if (best != believed && weight[best] > weight[believed] + BELIEVED) {
        believed = best;
      }
      int k = nearest(at, shift());
      if (k >= 0 && Math.abs(off(at, k, shift())) <= reach) {
        phase += (heard == 0 ? 1 : FOLLOW) * off(at, k, shift());
        heard++;
      }
    }

    Judgement judgement(long micros, double pulse) {
      double at = sheet.millis(micros);
      int k = nearest(at, shift());
      if (k < 0 || Math.abs(off(at, k, shift())) > 0.5 * sheet.stepMillis) {
        return new Judgement(name(), micros, Kind.ADDED, null, shift(), null);
      }
      double feel =
          sheet.grid.onbeat(chair.steps[k])
              ? chair.part.feel().onbeat()
              : chair.part.feel().offbeat();
      double asynchrony = at - places.at(chair.steps[k] + shift()) - pulse - feel;
      Kind kind =
          shift() != 0
              ? Kind.DISPLACED
              : Math.abs(asynchrony) <= tolerance
                  ? Kind.TOGETHER
                  : asynchrony < 0 ? Kind.EARLY : Kind.LATE;
      return new Judgement(name(), micros, kind, chair.steps[k], shift(), Round.millis(asynchrony));
    }

    private double off(double at, int k, int shift) {
      return at - places.at(chair.steps[k] + shift) - phase;
    }

    /** The written attack next to an instant at a shift; -1 where nothing is written. */
    private int nearest(double at, int shift) {
      if (chair.steps.length == 0) {
        return -1;
      }
      double step = (at - phase) / sheet.stepMillis - shift;
      int near = (int) Math.rint(Math.max(-1e6, Math.min(2e6, step)));
      int found = Arrays.binarySearch(chair.steps, near);
      if (found >= 0) {
        return found;
      }
      int after = -found - 1;
      if (after == 0) {
        return 0;
      }
      if (after == chair.steps.length) {
        return after - 1;
      }
      double later = Math.abs(off(at, after, shift));
      double earlier = Math.abs(off(at, after - 1, shift));
      return later < earlier ? after : after - 1;
    }
  }
}
