package thinclick.client.window.lectern;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.music.ClickPlan;

/**
 * Where the stages, bars and clicks of a plan stand on its ruled line, pixels from the left. Before
 * the first bar of each stage there is room for its double line and air after it, so that the click
 * on its first beat stands clear of the line, as music does after a bar line.
 *
 * @param left where the line begins
 * @param air from a stage's double line to its first bar
 * @param barWidth of every bar
 */
record PlanPlaces(ClickPlan plan, double left, double air, double barWidth) {
  /**
   * Divides the room.
   *
   * @param width of the whole line
   * @param em the size of the text, pixels
   */
  static PlanPlaces within(ClickPlan plan, double width, double em) {
    double left = 1;
    double air = 0.55 * em;
    double right = 1;
    double forBars = width - left - right - air * plan.stages().size();
    return new PlanPlaces(plan, left, air, forBars / plan.bars());
  }

  /** A stage's double line: the left edge of its first stroke. */
  double stage(int index) {
    return left + index * air + plan.fromBar(index) * barWidth;
  }

  /** The beginning of a bar of a stage, counted within it. */
  double bar(int stage, double barInStage) {
    return stage(stage) + air + barInStage * barWidth;
  }

  /** Where the line ends. */
  double end() {
    int last = plan.stages().size() - 1;
    return bar(last, plan.stages().get(last).bars());
  }

  /** How wide a click may be drawn without touching the next step's. */
  double clickWidth(int stepsPerBar) {
    return Math.max(1, Math.min(2.5, barWidth / stepsPerBar * 0.8));
  }

  /** The ends of the bars of a stage, all but its last: those the next double line shows. */
  List<Double> barLines(int stage) {
    List<Double> lines = new ArrayList<>();
    for (int bar = 1; bar < plan.stages().get(stage).bars(); bar++) {
      lines.add(bar(stage, bar));
    }
    return lines;
  }
}
