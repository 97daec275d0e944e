package thinclick.server.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.FieldSource;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.engraving.Articulation;
import thinclick.server.engraving.NoteValue;
import thinclick.server.material.Rung;
import thinclick.server.material.Stock;
import thinclick.server.material.pitch.Instrument;
import thinclick.server.material.pitch.Scale;
import thinclick.server.scoring.Displacement;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.Reason;
import thinclick.server.season.ErasedPlace;

/** The small words that sentences are made of, and the bundle they stand in. */
class WordsTest {
  private static final Speaker ENGLISH = Speaker.english();
  private static final Meter FOUR_FOUR = Meter.FOUR_FOUR;

  @Nested
  class AClick {
    @Test
    void isNamedByItsBeats() {
      assertClick("all beats", Stage.ofBeats(8, 1, 1, 2, 3, 4));
      assertClick("one and three", Stage.ofBeats(8, 1, 1, 3));
      assertClick("two and four", Stage.ofBeats(8, 1, 2, 4));
      assertClick("one, two and four", Stage.ofBeats(8, 1, 1, 2, 4));
      assertClick("the one of every bar", Stage.ofBeats(8, 1, 1));
      assertClick("the last beat of every bar", Stage.ofBeats(8, 1, 4));
      assertClick("beat three of every bar", Stage.ofBeats(8, 1, 3));
      assertClick("no click", Stage.ofBeats(8, 1));
    }

    @Test
    void isNamedByItsBars() {
      assertClick("the one of every second bar", Stage.ofBeats(8, 2, 1));
      assertClick("the last beat of every second bar", Stage.ofBeats(8, 2, 4));
      assertClick("beat three of every second bar", Stage.ofBeats(8, 2, 3));
      assertClick("the one of every second bar", Stage.ofSteps(8, 2, 8));
      assertClick("two and four of every fourth bar", Stage.ofBeats(8, 4, 2, 4));
      assertClick("all beats, four bars on and four off", islands(4, 8));
      assertClick("all beats, two bars on and six off", islands(2, 8));
      assertClick(
          "all beats in two of three bars", Stage.ofSteps(9, 3, 0, 2, 4, 6, 16, 18, 20, 22));
      assertClick("the one of every 12th bar", Stage.ofBeats(24, 12, 1));
    }

    @Test
    void isNamedByItsOffbeats() {
      assertClick("the ands", Stage.ofSteps(8, 1, 1, 3, 5, 7));
      assertClick("the last and", Stage.ofSteps(8, 1, 7));
      assertClick("two steps a bar", Stage.ofSteps(8, 1, 1, 3));
      assertThat(say(Stage.ofSteps(8, 1, 1, 5, 9, 13), FOUR_FOUR, 4))
          .isEqualTo("one step after each beat");
      assertThat(say(Stage.ofSteps(8, 1, 2, 6, 10, 14), FOUR_FOUR, 4)).isEqualTo("the ands");
      assertClick("every third step", Rung.EVERY_THIRD_STEP.stage(FOUR_FOUR, 2, null, 9, 1));
      assertClick("three clicks in two bars", Stage.ofSteps(8, 2, 0, 3, 9));
    }

    @Test
    void countsDottedQuartersInSixEight() {
      assertThat(say(Stage.ofBeats(8, 1, 1, 2), Meter.parse("6/8"), 3)).isEqualTo("all beats");
      assertThat(say(Stage.ofBeats(8, 1, 2), Meter.parse("6/8"), 3))
          .isEqualTo("the last beat of every bar");
    }

    /** Every rung of the ladder has a name that says what is heard. */
    @ParameterizedTest
    @EnumSource
    void ofEveryRungHasAName(Rung rung) {
      for (Meter meter : List.of(FOUR_FOUR, Meter.parse("3/4"), Meter.parse("12/8"))) {
        String said =
            say(
                rung.stage(meter, meter.compound() ? 3 : 2, null, 16, 7),
                meter,
                meter.compound() ? 3 : 2);
        assertThat(said).isNotBlank().doesNotContain("{").hasSizeLessThan(50);
      }
    }

    @Test
    void isSaidAfterTogetherAndAfterThrough() {
      Stage silent = Stage.ofBeats(8, 1);
      Stage thin = Stage.ofBeats(4, 1, 1, 3);

      assertThat(ENGLISH.say(ClickWords.on(silent, FOUR_FOUR, 2))).isEqualTo("without a click");
      assertThat(ENGLISH.say(ClickWords.on(thin, FOUR_FOUR, 2))).isEqualTo("on one and three");
      assertThat(ENGLISH.say(ClickWords.through(silent, FOUR_FOUR, 2)))
          .isEqualTo("eight silent bars");
      assertThat(ENGLISH.say(ClickWords.through(thin, FOUR_FOUR, 2)))
          .isEqualTo("the four bars on one and three");
      assertThat(ENGLISH.say(ClickWords.through(Stage.ofBeats(1, 1), FOUR_FOUR, 2)))
          .isEqualTo("one silent bar");
    }

    @Test
    void isBriefWhereRoomIsScarce() {
      assertThat(briefly(Stage.ofBeats(8, 1, 1))).isEqualTo("the one");
      assertThat(briefly(Stage.ofBeats(8, 1, 3))).isEqualTo("beat three");
      assertThat(briefly(Stage.ofBeats(8, 1, 4))).isEqualTo("last beat");
      assertThat(briefly(Stage.ofBeats(8, 2, 1))).isEqualTo("the one of every second bar");
      assertThat(briefly(Stage.ofBeats(8, 1, 2, 4))).isEqualTo("two and four");
      assertThat(briefly(Stage.ofBeats(8, 1))).isEqualTo("no click");
    }

    private String briefly(Stage stage) {
      return ENGLISH.say(ClickWords.briefly(stage, FOUR_FOUR, 2));
    }

    @Test
    void isCountedBarByBar() {
      ClickPlan plan =
          new ClickPlan(
              List.of(
                  Stage.ofBeats(1, 1, 1, 3),
                  Stage.ofBeats(2, 2, 1),
                  Stage.ofSteps(1, 1, 1, 3, 5, 7)));
      BarWords words = new BarWords(plan, FOUR_FOUR, 2, ENGLISH);

      assertThat(words.counted()).isEqualTo("one two three four");
      assertThat(List.of(0, 1, 2, 3))
          .map(words::of)
          .containsExactly("one . three .", "one . . .", "silent", ". and . and . and . and");
    }

    private Stage islands(int on, int cycle) {
      Integer[] steps = new Integer[4 * on];
      Arrays.setAll(steps, i -> 2 * i);
      return Stage.ofSteps(16, cycle, steps);
    }

    private void assertClick(String said, Stage stage) {
      assertThat(say(stage, FOUR_FOUR, 2)).isEqualTo(said);
    }

    private String say(Stage stage, Meter meter, int stepsPerBeat) {
      return ENGLISH.say(ClickWords.of(stage, meter, stepsPerBeat));
    }
  }

  /** "Turned around" is kept for a change of beat side; the rest is said as it is. */
  @ParameterizedTest
  @CsvSource({
    "4/4, 2,  1, turned around (an eighth late)",
    "4/4, 2, -1, turned around (an eighth early)",
    "4/4, 2,  2, a beat late",
    "4/4, 2,  3, turned around (three eighths late)",
    "4/4, 2, -4, two beats early",
    "4/4, 2,  8, a bar out (late)",
    "4/4, 2, -16, two bars out (early)",
    "4/4, 4,  1, a sixteenth late",
    "4/4, 4,  2, turned around (two sixteenths late)",
    "4/4, 4, -3, three sixteenths early",
    "4/4, 4,  4, a beat late",
    "4/4, 3,  1, a triplet late",
    "4/4, 6,  3, turned around (three sixths of a beat late)",
    "6/8, 3,  1, an eighth late",
    "6/8, 3,  3, a beat late",
    "6/8, 3,  6, a bar out (late)",
    "12/8, 6, 1, a sixteenth late",
  })
  void aShiftIsSaidAsItIs(String meter, int stepsPerBeat, int steps, String said) {
    assertThat(ENGLISH.say(ShiftWords.of(steps, Meter.parse(meter), stepsPerBeat))).isEqualTo(said);
  }

  @Nested
  class ANumber {
    /** The more uncertain, the rounder. */
    @ParameterizedTest
    @CsvSource({
      "22.4,   0,   22",
      "22.4,   4.9, 22",
      "22.4,   5,   20",
      "163.2, 12,   160",
      "163.2, 60,   150",
      "-0.3,   0,   0",
      "1204,   0,   1204",
    })
    void ofMillisCarriesNoMoreThanItsInterval(double value, double half, String shown) {
      assertThat(
              Quantity.millis(value, new Interval(value - half, value + half)).shown(Locale.ROOT))
          .isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource({"0.94, 0, 0.9", "1.02, 0, 1", "2.34, 0.6, 2.5", "2.34, 1.5, 2", "-0.04, 0, 0"})
    void ofDriftHasTenthsAtMost(double value, double half, String shown) {
      assertThat(new Quantity(value, half, 0.1).shown(Locale.ROOT)).isEqualTo(shown);
    }

    /** What is not held is not said to be, nor all where one was dropped. */
    @ParameterizedTest
    @CsvSource({"79.4, 79", "79.6, 79", "80, 80", "80.4, 80", "95.83, 96", "99.6, 99", "100, 100"})
    void ofHoldIsNotRoundedUpToWhatItFallsShortOf(double hold, String shown) {
      assertThat(Quantity.percent(hold).shown(Locale.ROOT)).isEqualTo(shown);
    }

    /** Files and terminals have the hyphen, what is drawn has a minus. */
    @Test
    void belowNoughtHasAMinusAndOnPlainPagesAHyphen() {
      String shown = ENGLISH.shown(new Quantity(-2.2, 0, 0.1));
      Table table = new Table(List.of("Drift %"));
      table.add(List.of(shown));
      assertThat(shown).isEqualTo("\u22122.2");
      assertThat(table.lines().get(1).strip()).isEqualTo("-2.2");
      assertThat(Table.wrap("2\u20133, " + shown, "")).containsExactly("2-3, -2.2");
    }

    @Test
    void ofADifferentLanguageHasItsOwnComma() {
      assertThat(new Quantity(0.9, 0, 0.1).shown(Locale.GERMAN)).isEqualTo("0,9");
    }

    @Test
    void thatIsABarHasNoThousandsMark() {
      assertThat(ENGLISH.say(Said.of("place.displacedHome", "Ana", "late", 1_200, 1_204)))
          .isEqualTo("Ana was late from bar 1200 and was home again in bar 1204.");
    }
  }

  /** A stretch that lasts to the end of the take came home in no bar of it. */
  @ParameterizedTest
  @CsvSource({
    "4, 8, 'Ana was a beat late from bar 5 and was home again in bar 9.'",
    "4, 24, Ana was a beat late from bar 5 to the end.",
    "0, 24, Ana was a beat late throughout.",
    "0, 23, 'Ana was a beat late from bar 1 and was home again in bar 24.'",
  })
  void aStretchSaysWhereItBeganAndWhereThePlayerWasHome(int from, int to, String says) {
    Displacement stretch = new Displacement(from, to, 2);

    assertThat(ENGLISH.say(ShiftWords.stretch("Ana", stretch, 24, FOUR_FOUR, 2))).isEqualTo(says);
  }

  @Nested
  class TheBundle {
    @Test
    void readsAsPatternsWhoseValuesAreNumberedFromZero() {
      for (String key : Bundles.english().keySet()) {
        String pattern = Bundles.english().getString(key);
        MessageFormat format = new MessageFormat(pattern, Locale.ENGLISH);
        for (int i = 0; i < format.getFormatsByArgumentIndex().length; i++) {
          assertThat(pattern).as(key).contains("{" + i);
        }
        // A single apostrophe would swallow what follows it.
        assertThat(pattern.replace("''", "")).as(key).doesNotContain("'");
      }
    }

    /** Keys are written out in the code, or made of a prefix and one of a closed list. */
    @Test
    void hasEveryKeyThatTheCodeNamesAndNoOther() {
      Set<String> named = new TreeSet<>(literalKeys());
      for (int i = 0; i <= 12; i++) {
        named.add("number." + i);
      }
      for (int i = 2; i <= 8; i++) {
        named.add("ordinal." + i);
      }
      for (int i = 1; i <= 7; i++) {
        named.add("beat." + i); // of 7/4, the longest bar
      }
      for (String note : List.of("C", "D", "E", "F", "G", "A", "B")) {
        List.of("", "-flat", "-sharp", "-double-flat", "-double-sharp")
            .forEach(sign -> named.add("note." + note + sign));
      }
      for (Advice advice : Advice.values()) {
        named.add("next." + advice.name());
      }
      for (Reason.Code code : Reason.Code.values()) {
        named.add("reason." + code);
        named.add("verdict.no." + code);
      }
      List.of("bar", "beat", "eighth", "triplet", "sixteenth", "sixth")
          .forEach(step -> named.add("distance." + step));
      List.of("beat", "eighth", "triplet", "sixteenth", "sixth")
          .forEach(step -> named.add("steps." + step));
      for (Comparison.Verdict verdict : Comparison.Verdict.values()) {
        named.add("compare." + verdict);
      }
      for (NextRung.Move move : NextRung.Move.values()) {
        named.add("history.next." + move);
      }
      for (int size = 1; size <= 12; size++) {
        named.add("groups." + size);
      }
      for (ErasedPlace.Done done : ErasedPlace.Done.values()) {
        named.add("erase.file." + done);
      }
      for (Rung rung : Rung.values()) {
        named.add("rung." + rung.name());
      }
      for (Rung brief : StageLines.BRIEF) {
        named.add("brief." + brief.name());
      }
      for (String role : RoleWords.KNOWN) {
        named.add("role." + role);
      }
      for (Instrument instrument : Instrument.all()) {
        named.add("instrument." + instrument.name().replace(' ', '-'));
      }
      Scale.names().stream()
          .filter(scale -> !scale.equals("major"))
          .forEach(scale -> named.add("scale." + scale.replace(' ', '-')));
      List.of(
              "minor-ii-V-i",
              "minor-turnaround",
              "12-bar-blues",
              "12-bar-minor-blues",
              "32-bar-AABA",
              "dominants-of-two-bars")
          .forEach(name -> named.add("progression." + name));
      for (NoteValue value : NoteValue.values()) {
        named.add("value." + value.name().toLowerCase(Locale.ROOT));
      }
      for (Articulation articulation : Articulation.values()) {
        named.add("articulation." + articulation.name().toLowerCase(Locale.ROOT));
      }
      List.of("treble", "bass", "percussion", "one-line")
          .forEach(clef -> named.add("clef." + clef));
      List.of("placed", "early", "late", "dropped", "added")
          .forEach(kind -> named.add("mark." + kind));
      List.of("beats", "steps").forEach(what -> named.add("line." + what));
      List.of("bars", "beats", "steps", "and", "every", "to")
          .forEach(what -> named.add("line.read." + what));
      List.of("placed", "early", "late", "dropped")
          .forEach(shape -> named.add("picture.key." + shape));
      List.of("time.dragged", "time.rushed").forEach(key -> named.add(key + "Together"));

      assertThat(Bundles.english().keySet()).containsExactlyInAnyOrderElementsOf(named);
    }

    /** A language is whole: it has every key, and each message takes the values English takes. */
    @ParameterizedTest
    @FieldSource("thinclick.server.words.Speaker#LANGUAGES")
    void ofEveryLanguageHasTheSameKeysAndValues(String language) {
      Map<String, String> english = Bundles.messages("");
      Map<String, String> other = Bundles.messages(language.equals("en") ? "" : "_" + language);

      assertThat(other.keySet()).isEqualTo(english.keySet());
      english.forEach(
          (key, pattern) -> {
            assertThat(values(other.get(key))).as(key).isEqualTo(values(pattern));
            assertThat(other.get(key).replace("''", "")).as(key).doesNotContain("'");
            assertThat(other.get(key).contains(",choice,"))
                .as("a plural of %s", key)
                .isEqualTo(pattern.contains(",choice,"));
          });
    }

    private Set<String> values(String pattern) {
      return Pattern.compile("\\{(\\d)")
          .matcher(pattern)
          .results()
          .map(found -> found.group(1))
          .collect(Collectors.toSet());
    }

    /** Advice that names a drill names one that the stock has. */
    @Test
    void namesDrillsOfTheStock() {
      for (String title :
          List.of(
              "Short threes",
              "Push only",
              "Gapped ands",
              "Ands alone",
              "Two-and four-and",
              "Even eighths")) {
        assertThat(Stock.has(title)).as(title).isTrue();
        assertThat(
                Arrays.stream(Advice.values())
                    .map(advice -> ENGLISH.say(advice.said(HardTakes.small())))
                    .filter(said -> said.contains(title)))
            .as(title)
            .hasSize(1);
      }
    }

    private Set<String> literalKeys() {
      Pattern key = Pattern.compile("\"<?([a-z]+\\.[A-Za-z.]+[A-Za-z])\"|\"(sentence)\"");
      return Stream.of("words", "picture", "history", "season", "dealing", "engraving")
          .map(name -> Path.of("src/main/java/thinclick/server", name))
          .flatMap(WordsTest::files)
          .filter(path -> path.toString().endsWith(".java"))
          .flatMap(WordsTest::lines)
          .flatMap(line -> key.matcher(line).results())
          .map(found -> found.group(1) != null ? found.group(1) : found.group(2))
          .filter(found -> !found.startsWith("thinclick."))
          .collect(Collectors.toSet());
    }
  }

  private static Stream<Path> files(Path folder) {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.toList().stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Stream<String> lines(Path source) {
    try {
      return Files.readAllLines(source).stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
