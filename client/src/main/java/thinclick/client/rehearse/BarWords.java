package thinclick.client.rehearse;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.server.scoring.PlanWords;

/** What clicks in one bar, counted aloud: "one . three .", "silent". */
final class BarWords {
  private BarWords() {}

  /** The bar's clicked beats by name, silent ones as a dot, a click between beats as "and". */
  static String of(ClickPlan plan, int bar, Meter meter, int stepsPerBeat) {
    int stage = plan.stageAt(bar);
    int stepsPerBar = meter.stepsPerBar(stepsPerBeat);
    long first = (long) (bar - plan.fromBar(stage)) * stepsPerBar;
    List<Long> clicked =
        plan.stages().get(stage).clickedSteps(meter, stepsPerBeat).stream()
            .map(step -> step - first)
            .filter(step -> step >= 0 && step < stepsPerBar)
            .toList();
    if (clicked.isEmpty()) {
      return "silent";
    }
    List<String> words = new ArrayList<>();
    for (int beat = 0; beat < meter.beatsPerBar(); beat++) {
      long from = (long) beat * stepsPerBeat;
      words.add(clicked.contains(from) ? PlanWords.number(beat + 1) : ".");
      for (long step = from + 1; step < from + stepsPerBeat; step++) {
        if (clicked.contains(step)) {
          words.add("and");
        }
      }
    }
    return String.join(" ", words);
  }
}
