package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;

/**
 * Which attacks arrive at a bar line: the one on it, else the nearest from one step before to one
 * after, of two as near the earlier. An attack before the bar line is a push and takes the new
 * chord.
 */
final class Arrivals {
  private Arrivals() {}

  /**
   * For each attack the step whose chord it takes: its own, or that of the bar line it pushes.
   *
   * @param atBarLine filled with true for each attack that arrives at a bar line
   */
  static int[] harmonySteps(
      List<Integer> attacks, int stepsPerBar, int totalSteps, boolean[] atBarLine) {
    int[] harmony = attacks.stream().mapToInt(Integer::intValue).toArray();
    for (int line = 0; line <= totalSteps; line += stepsPerBar) {
      int on = attacks.indexOf(line);
      int before = attacks.indexOf(line - 1);
      int after = attacks.indexOf(line + 1);
      if (on >= 0) {
        atBarLine[on] = true;
      } else if (before >= 0) {
        atBarLine[before] = true;
        harmony[before] = line;
      } else if (after >= 0) {
        atBarLine[after] = true;
      }
    }
    return harmony;
  }

  /** The steps of the attacks that arrive. */
  static List<Integer> steps(List<Integer> attacks, int stepsPerBar, int totalSteps) {
    boolean[] atBarLine = new boolean[attacks.size()];
    harmonySteps(attacks, stepsPerBar, totalSteps, atBarLine);
    List<Integer> steps = new ArrayList<>();
    for (int i = 0; i < atBarLine.length; i++) {
      if (atBarLine[i]) {
        steps.add(attacks.get(i));
      }
    }
    return steps;
  }
}
