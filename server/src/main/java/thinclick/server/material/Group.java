package thinclick.server.material;

import java.util.List;

/**
 * One run of a grouping as it lies across beats and bar lines.
 *
 * @param fromStep its first step, from bar 1
 * @param toStep the first step after it
 * @param tail true where it is what the grouping left over of the period
 * @param beatSteps the beats that cut it: steps after its first on which a beat falls
 * @param barSteps the bar lines that cut it: those of them on which a bar begins
 * @param onBarLine true where its first step is the first of a bar, so that it comes round
 */
public record Group(
    int fromStep,
    int toStep,
    boolean tail,
    List<Integer> beatSteps,
    List<Integer> barSteps,
    boolean onBarLine) {
  public Group {
    beatSteps = List.copyOf(beatSteps);
    barSteps = List.copyOf(barSteps);
  }
}
