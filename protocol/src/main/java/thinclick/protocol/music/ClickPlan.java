package thinclick.protocol.music;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/**
 * The stages of a take, one after the other, and the clicks they make.
 *
 * @param stages 1 to 256 stages
 */
public record ClickPlan(List<Stage> stages) {
  public ClickPlan {
    stages = Check.list("stages", stages);
    Check.size("stages", stages, 1, 256);
  }

  /** Refuses beats or steps that the meter does not have, naming the stage. */
  public void checkMeter(Meter meter, int stepsPerBeat) {
    for (int i = 0; i < stages.size(); i++) {
      try {
        stages.get(i).checkMeter(meter, stepsPerBeat);
      } catch (BadInput bad) {
        throw bad.within("stages[" + i + "]");
      }
    }
  }

  /** Length of all stages, bars. */
  public int bars() {
    return stages.stream().mapToInt(Stage::bars).sum();
  }

  /** The bar, from 0, at which a stage begins. */
  public int fromBar(int stage) {
    return stages.subList(0, stage).stream().mapToInt(Stage::bars).sum();
  }

  /** The index of the stage that a bar stands in; -1 before the first and after the last. */
  public int stageAt(long bar) {
    long end = 0;
    for (int i = 0; i < stages.size(); i++) {
      long start = end;
      end += stages.get(i).bars();
      if (bar >= start && bar < end) {
        return i;
      }
    }
    return -1;
  }

  /** All clicks of the take in order, without the count-in. */
  public List<Click> clicks(StepGrid grid) {
    List<Click> clicks = new ArrayList<>();
    for (int i = 0; i < stages.size(); i++) {
      long first = (long) fromBar(i) * grid.stepsPerBar();
      for (long step : stages.get(i).clickedSteps(grid.meter(), grid.stepsPerBeat())) {
        clicks.add(click(grid, first + step, i));
      }
    }
    return List.copyOf(clicks);
  }

  /** The clicks of the count-in: every beat of {@code bars} bars before bar 1. */
  public static List<Click> countIn(StepGrid grid, int bars) {
    Check.range("countInBars", bars, 1L, 4);
    List<Click> clicks = new ArrayList<>();
    for (long step = -(long) bars * grid.stepsPerBar(); step < 0; step += grid.stepsPerBeat()) {
      clicks.add(click(grid, step, -1));
    }
    return List.copyOf(clicks);
  }

  /** Clicks a bar in a stage, on the average over its bars. */
  public double clicksPerBar(int stage, Meter meter, int stepsPerBeat) {
    Stage asked = stages.get(stage);
    return (double) asked.clickedSteps(meter, stepsPerBeat).size() / asked.bars();
  }

  private static Click click(StepGrid grid, long step, int stage) {
    return new Click(step, grid.instantOf(step), stage, grid.stepInBar(step) == 0);
  }
}
