package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;

/**
 * What clicks in one bar, counted aloud: "one . three .", "silent".
 *
 * @param plan the click plan
 * @param speaker says the numbers
 */
public record BarWords(ClickPlan plan, Meter meter, int stepsPerBeat, Speaker speaker) {
  /** Every beat by its number, as a count-in has it. */
  public String counted() {
    return String.join(
        " ", IntStream.rangeClosed(1, meter.beatsPerBar()).mapToObj(this::number).toList());
  }

  /** The bar's clicked beats by number, silent ones as a dot, a click between beats as "and". */
  public String of(int bar) {
    int stage = plan.stageAt(bar);
    int stepsPerBar = meter.stepsPerBar(stepsPerBeat);
    long first = (long) (bar - plan.fromBar(stage)) * stepsPerBar;
    List<Long> clicked =
        plan.stages().get(stage).clickedSteps(meter, stepsPerBeat).stream()
            .map(step -> step - first)
            .filter(step -> step >= 0 && step < stepsPerBar)
            .toList();
    if (clicked.isEmpty()) {
      return speaker.say("count.silent");
    }
    List<String> words = new ArrayList<>();
    for (int beat = 0; beat < meter.beatsPerBar(); beat++) {
      long from = (long) beat * stepsPerBeat;
      words.add(clicked.contains(from) ? number(beat + 1) : ".");
      for (long step = from + 1; step < from + stepsPerBeat; step++) {
        if (clicked.contains(step)) {
          words.add(speaker.say("count.and"));
        }
      }
    }
    return String.join(" ", words);
  }

  private String number(int beat) {
    return speaker.say(Speaker.number(beat));
  }
}
