package thinclick.server.material;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;

/** The click plans that a ladder is made of, from the fullest to none; the order is our own. */
public enum Rung {
  /** Every beat clicks. */
  ALL_BEATS("P1", "all beats", null),
  /** The first beat of each group: one and three in 4/4. */
  GROUP_FIRSTS("P2", "the first beat of each group", ALL_BEATS),
  /** The last beat of each group: two and four in 4/4. */
  GROUP_LASTS("P3", "the last beat of each group", GROUP_FIRSTS),
  /** The first beat alone. */
  FIRST_ONLY("P4", "the one of every bar", GROUP_FIRSTS),
  /** The last beat alone. */
  LAST_ONLY("P5", "the last beat of every bar", GROUP_LASTS),
  /** The first beat of every second bar. */
  EVERY_SECOND_BAR("P6", "the one of every second bar", FIRST_ONLY),
  /** The first beat of every fourth bar. */
  EVERY_FOURTH_BAR("P7", "the one of every fourth bar", EVERY_SECOND_BAR),
  /** The ands, no beat. */
  ANDS("P8", "the ands", ALL_BEATS),
  /** The and of the last beat alone. */
  LAST_AND("P9", "the last and", LAST_ONLY),
  /** Every beat a step late, so that it sounds like the beat. */
  MOVED_FLOOR("P10", "moved floor", ANDS),
  /** A quarter of the bars silent, at most two in a row. */
  QUARTER_SILENT("P11", "a quarter of the bars silent", ALL_BEATS),
  /** Half of the bars silent, at most two in a row. */
  HALF_SILENT("P11-50", "half of the bars silent", QUARTER_SILENT),
  /** Three quarters of the bars silent, at most four in a row. */
  MOST_SILENT("P11-75", "three quarters of the bars silent", HALF_SILENT),
  /** Four bars on, four bars off. */
  ISLANDS("P12", "islands", ALL_BEATS),
  /** Two bars on, six bars off. */
  SMALL_ISLANDS("P12-2", "small islands", ISLANDS),
  /** Every third step, across beats and bars. */
  EVERY_THIRD_STEP("P13", "every third step", FIRST_ONLY),
  /** No click at all. */
  NONE("P14", "no click", EVERY_FOURTH_BAR);

  private static final List<String> NUMBERS =
      List.of("none", "one", "two", "three", "four", "five", "six", "seven");

  private final String number;
  private final String plainName;
  private final @Nullable Rung easier;

  Rung(String number, String plainName, @Nullable Rung easier) {
    this.number = number;
    this.plainName = plainName;
    this.easier = easier;
  }

  /** The short form, {@code "P4"}. */
  public String number() {
    return number;
  }

  /** What people see and type in any meter, {@code "the one of every bar"}. */
  public String plainName() {
    return plainName;
  }

  /** The rung that prepares this one; empty for all beats. */
  public Optional<Rung> easier() {
    return Optional.ofNullable(easier);
  }

  /** The name in a meter: {@code "one and three"} for the group firsts of 4/4. */
  public String nameIn(Meter meter, @Nullable List<Integer> groups) {
    BeatGroups beats = BeatGroups.of(meter, groups);
    if (this == GROUP_FIRSTS) {
      return spoken(beats.firsts(), FIRST_ONLY);
    }
    return this == GROUP_LASTS ? spoken(beats.lasts(), LAST_ONLY) : plainName;
  }

  /** A bar of one group has one first and one last beat, which are called what they always are. */
  private static String spoken(List<Integer> beats, Rung alone) {
    List<String> words = beats.stream().map(NUMBERS::get).toList();
    if (words.size() == 1) {
      return alone.plainName;
    }
    return String.join(", ", words.subList(0, words.size() - 1))
        + " and "
        + words.get(words.size() - 1);
  }

  /**
   * This rung as a stage of {@code bars} bars.
   *
   * @param groups how the beats of a bar stand together, or null for the usual
   * @param seed chooses the silent bars; the other rungs leave it aside
   */
  public Stage stage(
      Meter meter, int stepsPerBeat, @Nullable List<Integer> groups, int bars, long seed) {
    BeatGroups beats = BeatGroups.of(meter, groups);
    int count = meter.beatsPerBar();
    int and = andStep(stepsPerBeat);
    return switch (this) {
      case ALL_BEATS -> beats(bars, 1, IntStream.rangeClosed(1, count).boxed().toList());
      case GROUP_FIRSTS -> beats(bars, 1, beats.firsts());
      case GROUP_LASTS -> beats(bars, 1, beats.lasts());
      case FIRST_ONLY -> beats(bars, 1, List.of(1));
      case LAST_ONLY -> beats(bars, 1, List.of(count));
      case EVERY_SECOND_BAR -> beats(bars, 2, List.of(1));
      case EVERY_FOURTH_BAR -> beats(bars, 4, List.of(1));
      case NONE -> beats(bars, 1, List.of());
      case ANDS -> steps(bars, 1, everyBeat(count, stepsPerBeat, and));
      case LAST_AND -> steps(bars, 1, List.of((count - 1) * stepsPerBeat + and));
      case MOVED_FLOOR -> steps(bars, 1, everyBeat(count, stepsPerBeat, 1));
      case EVERY_THIRD_STEP -> thirdSteps(bars, meter.stepsPerBar(stepsPerBeat));
      case ISLANDS -> islands(bars, 4, 8, count, stepsPerBeat);
      case SMALL_ISLANDS -> islands(bars, 2, 8, count, stepsPerBeat);
      case QUARTER_SILENT -> silence(bars, 0.25, 2, count, stepsPerBeat, seed);
      case HALF_SILENT -> silence(bars, 0.5, 2, count, stepsPerBeat, seed);
      case MOST_SILENT -> silence(bars, 0.75, 4, count, stepsPerBeat, seed);
    };
  }

  /** The step of a beat that is its "and": the second of 2, third of 3 or 4, fifth of 6. */
  static int andStep(int stepsPerBeat) {
    return switch (stepsPerBeat) {
      case 2 -> 1;
      case 6 -> 4;
      default -> 2;
    };
  }

  private static Stage beats(int bars, int everyBars, List<Integer> beats) {
    return new Stage(bars, everyBars, beats, null);
  }

  private static Stage steps(int bars, int everyBars, List<Integer> steps) {
    return new Stage(bars, everyBars, null, steps);
  }

  private static List<Integer> everyBeat(int beats, int stepsPerBeat, int step) {
    return IntStream.range(0, beats).map(beat -> beat * stepsPerBeat + step).boxed().toList();
  }

  private static Stage thirdSteps(int bars, int stepsPerBar) {
    int everyBars = stepsPerBar % 3 == 0 ? 1 : 3;
    int cycle = everyBars * stepsPerBar;
    return steps(
        bars, everyBars, IntStream.range(0, cycle).filter(s -> s % 3 == 0).boxed().toList());
  }

  private static Stage islands(int bars, int on, int cycle, int beats, int stepsPerBeat) {
    List<Boolean> clicked = IntStream.range(0, cycle).mapToObj(bar -> bar < on).toList();
    return steps(bars, cycle, beatsOf(clicked, beats, stepsPerBeat));
  }

  private static Stage silence(
      int bars, double share, int longest, int beats, int stepsPerBeat, long seed) {
    List<Boolean> silent = SilentBars.choose(bars, share, longest, seed);
    return steps(
        bars, bars, beatsOf(silent.stream().map(bar -> !bar).toList(), beats, stepsPerBeat));
  }

  private static List<Integer> beatsOf(List<Boolean> clicked, int beats, int stepsPerBeat) {
    List<Integer> steps = new ArrayList<>();
    for (int bar = 0; bar < clicked.size(); bar++) {
      for (int beat = 0; clicked.get(bar) && beat < beats; beat++) {
        steps.add((bar * beats + beat) * stepsPerBeat);
      }
    }
    return steps;
  }

  /** Every rung's names, for the list of what may be typed. */
  public static List<String> names() {
    return Arrays.stream(values()).map(Rung::plainName).toList();
  }
}
