package thinclick.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.sound.midi.MidiSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.server.material.Rung;
import thinclick.server.material.Stock;

class ComposeCommandTest {
  @TempDir private Path folder;

  /** What a run said and how it ended. */
  private record Run(int exit, String out, String err) {}

  private static Run compose(String... options) {
    List<String> args = new ArrayList<>(List.of("compose"));
    args.addAll(List.of(options));
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line =
        ServerMain.commandLine().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    int exit = line.execute(args.toArray(String[]::new));
    return new Run(exit, out.toString(), err.toString());
  }

  private Drill written(String... options) throws IOException {
    Path file = folder.resolve("made.drill.json");
    List<String> args = new ArrayList<>(List.of(options));
    args.addAll(List.of("--drill", file.toString(), "--replace"));
    Run run = compose(args.toArray(String[]::new));
    assertThat(run.err()).isEmpty();
    assertThat(run.exit()).isZero();
    return FileCodec.readDrill(Files.readAllBytes(file));
  }

  private List<Integer> steps(String... options) throws IOException {
    return written(options).chairs().get(0).cell().attackSteps();
  }

  @Test
  void theListShowsTitleMeterLevelAndChairs() {
    Run run = compose("--list");

    assertThat(run.exit()).isZero();
    assertThat(run.out().lines().map(line -> line.replaceAll(" +", " ")))
        .contains(
            "Title Meter Level Chairs Tempo", "Long threes 4/4 6 1 70-200", "Call 4/4 3 2 70-160")
        .hasSize(Stock.drills().size() + 1);
  }

  @ParameterizedTest
  @CsvSource({
    "lessons, 'First day, 45 minutes'", "scales, bebop dominant", "progressions, 32-bar AABA",
    "instruments, tenor saxophone", "plans, every second bar", "deals, call and answer"
  })
  void everyKindOfWordCanBeListed(String what, String shown) {
    assertThat(compose("--list", what).out()).contains(shown);
  }

  @Test
  void everyDrillOfTheStockIsPrinted() {
    for (Drill drill : Stock.drills()) {
      Run run = compose(drill.title().toUpperCase(java.util.Locale.ROOT).replace(' ', '-'));
      assertThat(run.err()).as(drill.title()).isEmpty();
      assertThat(run.out()).as(drill.title()).startsWith(drill.title() + ", ").contains("Bar 1");
    }
  }

  @Test
  void aPartIsPrintedAsCountedSyllablesOverBeats() {
    Run run = compose("Charleston", "--key", "Eb", "--instrument", "trumpet");

    assertThat(run.out())
        .isEqualTo(
            """
            Charleston, Chair 1 (trumpet), 4/4, level 2, 112 beats a minute
            Chair 1 comes in on the one of bar 1.
            Written: F major.
            Bar 1
              1    .    .    &    .    .    .    .
              F4             G4
              |         |         |         |

            """
                .replace("level 2", "level " + Stock.find("Charleston").level())
                .replace("\n", System.lineSeparator()));
  }

  @Test
  void aHandoutIsInTheLanguageThatWasAskedFor() throws IOException {
    Path svg = folder.resolve("handout.svg");
    Run run = compose("Charleston", "--key", "Eb", "--instrument", "trumpet", "--language", "de");
    assertThat(run.out())
        .startsWith("Charleston, Platz 1 (Trompete), 4/4, Stufe ")
        .contains("Platz 1 setzt auf der Eins in Takt 1 ein.", "Geschrieben: F-Dur.", "Takt 1")
        .doesNotContain("Chair", "Bar ", "level");
    compose("Charleston", "--key", "Eb", "--svg", svg.toString(), "--language", "de");
    assertThat(Files.readString(svg)).contains("lang=\"de\"");
    assertThat(compose("--lesson", "First day", "--script", "--language", "de").out())
        .contains(
            "45 Minuten",
            "Durchgang 1 von 3",
            "Klatscht den Rhythmus einmal ohne Klick.",
            "Sagen: ")
        .doesNotContain("minutes", "take", "Say: ");
  }

  /** The values of the son, 0 3 6 10 12 of 16, as published; `SyncopationTest` has the sources. */
  @Test
  void everyMeasureIsNamedWithItsSource() {
    Run run = compose("Son 3-2", "--measures");

    assertThat(run.out().lines().map(line -> line.strip().replaceAll(" +", " ")))
        .contains(
            "off-beat starts 2 (Keith 1991, counted by Gomez and others 2005)",
            "hesitation 1, anticipation 2, syncopation 3 6 (Keith 1991)",
            "off-beatness 1 (Toussaint 2013)")
        .hasSize(9);
    assertThat(compose("Bembe", "--measures").out()).contains("only for cycles of 2, 4, 8, 16");
  }

  @Test
  void cellsAreMadeByRule() throws IOException {
    assertThat(steps("--leave-out", "3")).containsExactly(1, 3, 5, 7);
    assertThat(steps("Even eighths", "--without", "0 4")).containsExactly(1, 2, 3, 5, 6, 7);
    assertThat(steps("--euclid", "5 8")).containsExactly(0, 2, 3, 5, 6);
    assertThat(steps("--grouping", "3", "--period", "4"))
        .isEqualTo(Stock.find("Long threes").chairs().get(0).cell().attackSteps());
    assertThat(steps("--grouping", "5", "--cell", "0 3", "--period", "2"))
        .isEqualTo(Stock.find("Split fives").chairs().get(0).cell().attackSteps());
    assertThat(steps("--grouping", "5", "--period", "4", "--tail", "downbeat"))
        .isEqualTo(Stock.find("Long fives").chairs().get(0).cell().attackSteps());
    assertThat(steps("Tresillo", "--displace", "1")).containsExactly(1, 4, 7);
    assertThat(steps("Tresillo", "--rotate", "1")).containsExactly(0, 3, 5);
    assertThat(steps("Tresillo", "--retrograde")).containsExactly(0, 2, 5);
    assertThat(steps("Tresillo", "--augment", "2")).containsExactly(0, 6, 12);
    assertThat(steps("Habanera", "--end-off")).containsExactly(0, 3);
    assertThat(steps("Even eighths", "--begin-off")).containsExactly(1, 2, 3, 4, 5, 6, 7);
    assertThat(
            written("--cell", "0 3 6", "--accents", "0", "--lengths", "3 3 2")
                .chairs()
                .get(0)
                .cell())
        .isEqualTo(
            new Drill.Cell(8, List.of(0, 3, 6), List.of(0), List.of(3, 3, 2), null, null, null));
  }

  @Test
  void everyMeterAndGridIsHad() throws IOException {
    assertThat(steps("--meter", "7/4", "--leave-out", "2", "--steps-per-beat", "2"))
        .containsExactly(1, 2, 3, 5, 6, 7, 9, 10, 11, 12, 13);
    assertThat(written("--meter", "12/8", "--grouping", "5").stepsPerBeat()).isEqualTo(3);
    assertThat(written("--meter", "5/4", "--groups", "2 3", "--cell", "0", "--plan", "P3").stages())
        .extracting(stage -> stage.beats())
        .containsExactly(List.of(2, 5));
  }

  @Test
  void everyRungIsAPlanByNameAndByNumber() throws IOException {
    for (Rung rung : Rung.values()) {
      Drill drill = written("Even eighths", "--plan", rung.plainName(), "--stage-bars", "16");
      assertThat(drill.stages())
          .as(rung.plainName())
          .containsExactly(rung.stage(drill.meter(), 2, null, 16, drill.deal().seed()));
      assertThat(written("Even eighths", "--plan", rung.number(), "--stage-bars", "16").stages())
          .isEqualTo(drill.stages());
    }
    assertThat(written("Even eighths", "--plan", "One and three, two and four").stages())
        .hasSize(2);
    assertThat(written("Even eighths", "--plan", "all beats to every second bar").stages())
        .hasSize(4);
  }

  @Test
  void aPartIsWrittenToEveryKindOfFile() throws Exception {
    Path pdf = folder.resolve("p.pdf");
    Path svg = folder.resolve("p.svg");
    Path xml = folder.resolve("p.musicxml");
    Path midi = folder.resolve("p.mid");
    Run run =
        compose(
            "Long threes",
            "--progression",
            "ii-V-I",
            "--key",
            "Bb",
            "--instrument",
            "tenor saxophone, bass",
            "--chairs",
            "2",
            "--pdf",
            pdf.toString(),
            "--svg",
            svg.toString(),
            "--musicxml",
            xml.toString(),
            "--midi",
            midi.toString());

    assertThat(run.err()).isEmpty();
    assertThat(run.out().lines()).hasSize(4).allMatch(line -> line.startsWith("Wrote "));
    assertThat(Files.readAllBytes(pdf))
        .startsWith("%PDF".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    assertThat(svg).content().contains("<svg");
    assertThat(xml).content().contains("score-partwise").contains("<chromatic>-2</chromatic>");
    assertThat(MidiSystem.getSequence(midi.toFile()).getTracks()).hasSizeGreaterThan(2);
  }

  @Test
  void allTwelveKeysComeOnOneHandout() {
    Run run = compose("Two-five line", "--all-keys", "--instrument", "alto sax", "--text");

    assertThat(run.err()).isEmpty();
    assertThat(run.out().lines().filter(line -> line.startsWith("Written: ")).distinct())
        .hasSize(12)
        .startsWith("Written: ii-V-I in C major.");
  }

  @Test
  void threeLevelsOfTheSameCycle() {
    Run run = compose("Short threes", "--mixed", "--chairs", "3", "--deal", "unison");

    assertThat(run.out()).contains("with the easier rhythm").contains("with the harder rhythm");
  }

  @Test
  void aLessonIsFittedToAClassHour() {
    assertThat(compose("--lesson", "first-day").out()).startsWith("First day, 45 minutes (");
    assertThat(compose("--lesson", "First day", "--minutes", "20").out())
        .startsWith("First day, 20 minutes (");
  }

  @Test
  void aLessonIsPrintedWithAllThatASubstituteSays() {
    Run run = compose("--lesson", "First day", "--script");

    assertThat(run.out().lines().map(String::strip))
        .contains(
            "Take 1 of 3",
            "Say: Clap it once without the click.",
            "Count: One two three four, one two three four.");
    assertThat(compose("--script", "charleston").err())
        .contains("--script: expected only with --lesson");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "long-trees                            | did you mean \"Long threes\"",
        "charleston --scale dorien             | --scale: expected a scale, found \"dorien\"; did you mean \"dorian\"",
        "charleston --plan frist               | --plan: expected a click plan",
        "charleston --deal hockett             | did you mean \"hocket\"",
        "charleston --instrument trumpit       | did you mean \"trumpet\"",
        "charleston --key H                    | --key: expected a key such as C, Eb, F# or \"G minor\", found \"H\"",
        "charleston --cell x                   | --cell: expected whole numbers such as \"0 3 6\", found \"x\"",
        "--cell 0,9 --period 1                 | period: expected at least 2 bars for step 9, found 1",
        "--grouping 13                         | grouping: expected 2 to 12, found 13",
        "--euclid 3                            | --euclid: expected attacks and steps such as \"3 8\"",
        "charleston --leave-out 9              | leave-out: expected 1 to 3, found 9",
        "charleston --chairs 30                | --chairs: expected 1 to 24, found 30",
        "charleston --tempo 900                | tempo: expected 30 to 320, found 900",
        "charleston --seed -1                  | seed: expected 0 to",
        "charleston --swing loose              | --swing: expected a ratio from 1 to 4 or band",
        "charleston --meter 3/4                | --meter: expected only where no drill is named",
        "charleston --tail upbeat              | --tail: expected only with --grouping",
        "charleston --all-keys                 | --all-keys: expected pitches",
        "charleston --minutes 40               | --minutes: expected only with --lesson",
        "charleston --musicxm a.xml            | did you mean \"--musicxml\"",
        "charleston --tempo fast               | --tempo: expected a number, found \"fast\"",
        "--list drilz                          | did you mean \"drills\"",
        "--lesson fist-day                     | did you mean \"First day\"",
        "--folder no-such-folder charleston    | expected a folder of drills and lessons, found none",
        "nowhere.json                          | expected a file, found none"
      })
  void aWrongOptionGetsOneSentenceWithTheNearestRightWords(String options, String says) {
    Run run = compose(options.strip().split(" +", -1));

    assertThat(run.exit()).isEqualTo(2);
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).contains(says);
    assertThat(run.out()).isEmpty();
  }

  /** What the drill calls a field is the option that was typed. */
  @ParameterizedTest
  @CsvSource({
    "charleston --tempo 900, --tempo: expected 30 to 320",
    "charleston --seed -1, --seed: expected 0 to",
    "charleston --swing 9, --swing: expected 1 to 4",
    "charleston --stage-bars 0, --stage-bars: expected whole periods",
    "charleston --leave-out 9, --leave-out: expected 1 to 3",
    "charleston --without 99, --without: expected attacked steps",
    "charleston --accents 99, --accents: expected",
    "charleston --staccato 99, --staccato: expected steps of",
    "charleston --tenuto 99, --tenuto: expected steps of",
    "charleston --lengths 1, --lengths: expected a list",
    "charleston --augment 0, --augment: expected",
    "charleston --end-off 99, --end-off: expected",
    "charleston --entry -1, --entry: expected 0 to",
    "charleston --groups 9, --groups: expected",
    "charleston --period 0, --period: expected 1 to 64",
    "charleston --scale dorian --pattern 99, --pattern: expected -7 to 7",
    "--cell 0 --meter 9/9, --meter: expected",
    "--cell 0 --steps-per-beat 7, --steps-per-beat: expected",
    "'--cell 0,9 --period 1', --period: expected at least 2 bars",
    "--grouping 13, --grouping: expected 2 to 12",
    "--grouping 3 --period 99, --period: expected 1 to 64",
    "'--euclid 9,8', --euclid: expected"
  })
  void whatIsRefusedIsCalledAsItWasTyped(String options, String says) {
    Run run = compose(options.split(" "));

    assertThat(run.exit()).isEqualTo(2);
    assertThat(run.err()).startsWith(says).hasLineCount(1);
  }

  @Test
  void aWrongChordIsNamedWithItsBar() {
    Run run = compose("Charleston", "--progression", "Dm7 | Gx");

    assertThat(run.exit()).isEqualTo(2);
    assertThat(run.err())
        .startsWith("--progression, bar 2: expected a known kind of chord, found \"x\" in \"Gx\"");
  }

  @Test
  void nothingIsWrittenWhereAnythingIsWrong() {
    Path pdf = folder.resolve("p.pdf");
    Run run = compose("Charleston", "--chairs", "30", "--pdf", pdf.toString());

    assertThat(run.exit()).isEqualTo(2);
    assertThat(pdf).doesNotExist();
  }
}
