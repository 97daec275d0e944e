package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;

/** Says what clicks in a stage, as a bandleader would. */
public final class PlanWords {
  private static final String[] NUMBERS = {
    "none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
    "twelve"
  };
  private static final String[] ORDINALS = {
    "", "", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"
  };

  private PlanWords() {}

  /** For example "all beats", "two and four", "the one of every second bar", "no click". */
  public static String of(Stage stage, Meter meter, int stepsPerBeat) {
    List<Integer> beats = beats(stage, meter, stepsPerBeat);
    String every = stage.everyBars() == 1 ? "" : " of every " + ordinal(stage.everyBars()) + " bar";
    if (stage.clickedSteps(meter, stepsPerBeat).isEmpty()) {
      return "no click";
    }
    if (beats == null) {
      return stage.everyBars() == 1 ? "clicks off the beat" : "clicks in some bars";
    }
    if (beats.size() == meter.beatsPerBar()) {
      return "all beats" + every;
    }
    if (beats.size() == 1) {
      String one = "the " + number(beats.get(0));
      return stage.everyBars() == 1 ? one + " alone" : one + every;
    }
    StringBuilder said = new StringBuilder();
    for (int i = 0; i < beats.size(); i++) {
      said.append(i == 0 ? "" : i == beats.size() - 1 ? " and " : ", ")
          .append(number(beats.get(i)));
    }
    return said + every;
  }

  /** The beats, where only beats of each cycle's first bar click; null where other steps do. */
  private static @org.jspecify.annotations.Nullable List<Integer> beats(
      Stage stage, Meter meter, int stepsPerBeat) {
    if (stage.beats() != null) {
      return stage.beats();
    }
    List<Integer> beats = new ArrayList<>();
    for (int step : stage.steps() == null ? List.<Integer>of() : stage.steps()) {
      if (step % stepsPerBeat != 0 || step >= meter.stepsPerBar(stepsPerBeat)) {
        return null;
      }
      beats.add(step / stepsPerBeat + 1);
    }
    return beats;
  }

  /** A small number as a word. */
  public static String number(int value) {
    return value >= 0 && value < NUMBERS.length ? NUMBERS[value] : Integer.toString(value);
  }

  private static String ordinal(int value) {
    return value < ORDINALS.length ? ORDINALS[value] : value + "th";
  }
}
