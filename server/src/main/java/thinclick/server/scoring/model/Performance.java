package thinclick.server.scoring.model;

import java.util.List;

/**
 * A decoded take as the model takes it: what clicked and what each player played against the
 * written grid.
 *
 * @param beatMillis the written length of a beat, ms
 * @param stepsPerBeat steps a beat; a player's mean may differ by the step's place in the beat
 * @param swingRatio long to short where pairs of steps are shared unevenly, 1 straight
 * @param clickSteps the steps at which a click sounded, ascending, without the count-in
 * @param voices the players
 */
public record Performance(
    double beatMillis,
    int stepsPerBeat,
    double swingRatio,
    List<Integer> clickSteps,
    List<Voice> voices) {
  public Performance {
    if (!(beatMillis > 0) || stepsPerBeat < 1 || !(swingRatio >= 1)) {
      throw new IllegalArgumentException(
          "expected a positive beat, at least one step a beat and a ratio of at least 1, found "
              + beatMillis
              + ", "
              + stepsPerBeat
              + ", "
              + swingRatio);
    }
    clickSteps = List.copyOf(clickSteps);
    voices = List.copyOf(voices);
  }

  /** Where a step lies, in beats from step 0, swing applied. */
  double beatAt(int step) {
    double swung =
        swingRatio == 1 || Math.floorMod(step, 2) == 0
            ? step
            : step - 1 + 2 * swingRatio / (1 + swingRatio);
    return swung / stepsPerBeat;
  }

  /** The place of a step in its beat. */
  int placeInBeat(int step) {
    return Math.floorMod(step, stepsPerBeat);
  }
}
