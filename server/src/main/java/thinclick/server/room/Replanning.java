package thinclick.server.room;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;

/** A click plan that is changed while it runs: what has clicked stays, what is to come is new. */
final class Replanning {
  private Replanning() {}

  /**
   * The whole plan with its rest exchanged.
   *
   * @param fromBar the first bar of the new stages
   * @param rest as many bars as are left from there
   */
  static List<Stage> stages(Take take, int fromBar, List<Stage> rest) {
    ClickPlan plan = take.plan();
    new ClickPlan(rest).checkMeter(take.meter(), take.stepsPerBeat());
    int left = plan.bars() - fromBar;
    int given = new ClickPlan(rest).bars();
    if (given != left) {
      throw new BadInput(
          "stages", "expected " + left + " bars, the rest of the take, found " + given);
    }
    List<Stage> whole = new ArrayList<>();
    for (int i = 0; i < plan.stages().size() && plan.fromBar(i) < fromBar; i++) {
      Stage stage = plan.stages().get(i);
      int bars = Math.min(stage.bars(), fromBar - plan.fromBar(i));
      whole.add(new Stage(bars, stage.everyBars(), stage.beats(), stage.steps()));
    }
    whole.addAll(rest);
    return List.copyOf(whole);
  }

  static Take with(Take take, List<Stage> stages) {
    return take.edited().stages(stages).take();
  }
}
