package thinclick.server.engraving;

import java.util.List;
import java.util.stream.IntStream;
import thinclick.protocol.music.Stage;

/** A stage of the click plan as the direction above its first bar. */
final class StageWords {
  private static final List<String> NUMBERS =
      List.of("zero", "one", "two", "three", "four", "five", "six", "seven");
  private static final List<String> ORDINALS =
      List.of("", "", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth");

  private StageWords() {}

  /** {@code "8 bars, click on two and four"}. */
  static String of(Stage stage, StaffPart part) {
    String bars = stage.bars() + (stage.bars() == 1 ? " bar, " : " bars, ");
    return bars + click(stage, part);
  }

  private static String click(Stage stage, StaffPart part) {
    List<Integer> beats = stage.beats();
    if (stage.clickedSteps(part.meter(), part.stepsPerBeat()).isEmpty()) {
      return "no click";
    }
    if (beats == null) {
      return steps(stage, part);
    }
    int beatsPerBar = part.meter().beatsPerBar();
    String every = every(stage.everyBars());
    if (beats.size() == beatsPerBar) {
      return "click on every beat" + every;
    }
    List<String> words = beats.stream().map(NUMBERS::get).toList();
    return "click on " + (beats.size() == 1 ? words.get(0) + " only" : joined(words)) + every;
  }

  private static String steps(Stage stage, StaffPart part) {
    List<Integer> steps = stage.steps();
    int stepsPerBar = part.stepsPerBar();
    List<Integer> ands =
        IntStream.range(0, stepsPerBar)
            .filter(step -> step % part.stepsPerBeat() == part.stepsPerBeat() / 2)
            .boxed()
            .toList();
    boolean twos = part.stepsPerBeat() % 2 == 0;
    if (twos && stage.everyBars() == 1 && ands.equals(steps)) {
      return "click on every and";
    }
    return "click as written";
  }

  private static String every(int bars) {
    if (bars == 1) {
      return "";
    }
    String ordinal = bars < ORDINALS.size() ? ORDINALS.get(bars) : bars + "th";
    return ", every " + ordinal + " bar";
  }

  private static String joined(List<String> words) {
    String last = words.get(words.size() - 1);
    return String.join(", ", words.subList(0, words.size() - 1)) + " and " + last;
  }
}
