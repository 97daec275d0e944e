package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;

/**
 * A stage as a line that can be read and edited: {@code "8 bars: one and three"}. After the colon
 * stands the plain name of a rung, or {@code "beats 1 4"}, {@code "steps 3 7"}, where fewer than
 * every bar click with {@code "of every 2 bars"}. What is written reads back the same.
 */
public final class StageText {
  private static final Pattern LINE =
      Pattern.compile("\\s*(\\d+)\\s*(?:bars?)?\\s*:?\\s*(.*?)\\s*\\.?\\s*");
  private static final Pattern OWN =
      Pattern.compile(
          "(beats?|steps?)\\s+(\\d+(?:[\\s,]+(?:and\\s+)?\\d+)*)"
              + "(?:\\s+of\\s+every\\s+(\\d+)\\s+bars)?",
          Pattern.CASE_INSENSITIVE);

  private StageText() {}

  /** The line of a stage. */
  public static String of(
      Stage stage, Meter meter, int stepsPerBeat, @Nullable List<Integer> groups) {
    return stage.bars()
        + (stage.bars() == 1 ? " bar: " : " bars: ")
        + clicks(stage, meter, stepsPerBeat, groups);
  }

  private static String clicks(
      Stage stage, Meter meter, int stepsPerBeat, @Nullable List<Integer> groups) {
    Optional<Rung> rung = new Thinning(meter, stepsPerBeat, groups).of(stage);
    if (rung.isPresent()
        && rung.get().stage(meter, stepsPerBeat, groups, stage.bars(), 0).equals(stage)) {
      return rung.get().nameIn(meter, groups);
    }
    List<Integer> beats = stage.beats();
    List<Integer> steps = stage.steps();
    if (beats != null ? beats.isEmpty() : steps == null || steps.isEmpty()) {
      return Rung.NONE.plainName();
    }
    String own = beats != null ? "beats " + spaced(beats) : "steps " + spaced(steps);
    return stage.everyBars() == 1 ? own : own + " of every " + stage.everyBars() + " bars";
  }

  private static String spaced(@Nullable List<Integer> numbers) {
    return numbers == null ? "" : String.join(" ", numbers.stream().map(String::valueOf).toList());
  }

  /**
   * Reads a line; a ladder such as {@code "8 bars: all beats to first only"} gives a stage for each
   * rung, each as long.
   *
   * @param seed draws silent bars
   */
  public static List<Stage> parse(
      String line, Meter meter, int stepsPerBeat, @Nullable List<Integer> groups, long seed) {
    Matcher matcher = LINE.matcher(line);
    if (!matcher.matches() || matcher.group(2).isEmpty()) {
      throw new BadInput(
          "click",
          "expected bars and what clicks, such as \"8 bars: all beats\", found \""
              + line.strip()
              + "\"");
    }
    int bars = number("bars", matcher.group(1));
    Check.range("bars", bars, 1L, 1_000);
    Matcher own = OWN.matcher(matcher.group(2));
    if (own.matches()) {
      return List.of(own(own, bars, meter, stepsPerBeat));
    }
    List<Stage> stages = new ArrayList<>();
    for (Rung rung : ClickPlans.parse("click", matcher.group(2), meter, groups)) {
      stages.add(rung.stage(meter, stepsPerBeat, groups, bars, seed + stages.size()));
    }
    return List.copyOf(stages);
  }

  private static Stage own(Matcher own, int bars, Meter meter, int stepsPerBeat) {
    List<Integer> numbers = new ArrayList<>();
    for (String piece : own.group(2).split("\\D+", -1)) {
      if (!piece.isEmpty()) {
        numbers.add(number("click", piece));
      }
    }
    int every = own.group(3) == null ? 1 : number("bars", own.group(3));
    boolean beats = own.group(1).toLowerCase(Locale.ROOT).startsWith("beat");
    Stage stage = new Stage(bars, every, beats ? numbers : null, beats ? null : numbers);
    new ClickPlan(List.of(stage)).checkMeter(meter, stepsPerBeat);
    return stage;
  }

  private static int number(String where, String digits) {
    if (digits.length() > 6) {
      throw new BadInput(where, "expected a smaller number, found " + digits);
    }
    return Integer.parseInt(digits);
  }
}
