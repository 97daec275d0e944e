package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/** A grouping laid over a period, with a tail that fills what it leaves over. */
public final class GroupedCell {
  /** The tail's longest silence: what is longer is filled by twos towards the end. */
  private static final int LONGEST_GAP = 3;

  private GroupedCell() {}

  /** What the last attack of the tail stands on. */
  public enum Aim {
    /** The last beat, so that the next downbeat follows a beat later. */
    DOWNBEAT,
    /** The last upbeat, so that the next downbeat is anticipated. */
    UPBEAT
  }

  /**
   * A figure of {@code grouping} steps repeated to fill {@code steps} steps.
   *
   * <p>The tail begins with the figure's first attack and ends where it aims; longer silences in it
   * are filled by twos from its end. What is left over is joined to the last group where it is
   * shorter than three steps and the aim lies beyond its first.
   *
   * @param grouping 2 to 12 steps
   * @param inner the attacks of the figure, from 0
   * @param steps length of the period
   */
  public static Drill.Cell of(
      int grouping, List<Integer> inner, int steps, int stepsPerBeat, Aim aim) {
    Check.range("grouping", grouping, 2L, 12);
    Check.ascending("inner", inner, 0, grouping - 1);
    Check.size("inner", inner, 1, grouping);
    if (steps < grouping) {
      throw new BadInput(
          "grouping", "expected at most the period's " + steps + " steps, found " + grouping);
    }
    int over = steps % grouping;
    int aimStep = aim == Aim.DOWNBEAT ? steps - stepsPerBeat : lastUpbeat(steps, stepsPerBeat);
    int tail = steps - over;
    if (over > 0 && over < LONGEST_GAP && aimStep != tail + inner.get(0)) {
      tail -= grouping;
    }
    while (over > 0 && tail > aimStep && tail >= grouping) {
      tail -= grouping;
    }
    TreeSet<Integer> attacks = new TreeSet<>();
    for (int at = 0; at < tail; at += grouping) {
      for (int step : inner) {
        attacks.add(at + step);
      }
    }
    if (over > 0) {
      attacks.addAll(tail(tail, inner.get(0), aimStep));
    }
    return Drill.Cell.of(steps, List.copyOf(attacks), grouping);
  }

  private static int lastUpbeat(int steps, int stepsPerBeat) {
    return steps - stepsPerBeat + Rung.andStep(stepsPerBeat);
  }

  private static List<Integer> tail(int from, int firstInner, int aimStep) {
    List<Integer> steps = new ArrayList<>();
    int first = Math.min(from + firstInner, aimStep);
    int at = Math.max(aimStep, from);
    steps.add(at);
    while (at - first > LONGEST_GAP) {
      at -= 2;
      steps.add(at);
    }
    steps.add(Math.max(first, from));
    return steps;
  }
}
