package thinclick.server.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Rung;

/**
 * Every line of the design's material can be had from {@code compose}: cells, groupings and
 * periods, ensembles and roles, rungs and ladders, lines and progressions. What comes out is read
 * back from the drill file and, as it sounds, from the MIDI file by the Java platform's own reader.
 */
class MaterialByCommandTest {
  private static final int COUNT_IN_BARS = 2;

  @TempDir private Path folder;

  /** A line of {@code material/stock.csv}. */
  private record Row(
      String meter,
      int stepsPerBeat,
      int bars,
      String title,
      List<List<Integer>> rows,
      String tempo,
      int level,
      String rung) {
    static Row of(String line) {
      String[] f = line.split(" *, *", -1);
      List<List<Integer>> rows =
          Arrays.stream(f[4].split(" / ", -1)).map(MaterialByCommandTest::steps).toList();
      return new Row(
          f[0],
          Integer.parseInt(f[1]),
          Integer.parseInt(f[2]),
          f[3],
          rows,
          f[5],
          Integer.parseInt(f[6]),
          f[7]);
    }

    int cycle() {
      return bars * Meter.parse(meter).stepsPerBar(stepsPerBeat);
    }

    @Override
    public String toString() {
      return title;
    }
  }

  private static List<Integer> steps(String written) {
    return Arrays.stream(written.strip().split(" +", -1)).map(Integer::valueOf).toList();
  }

  static List<Row> stock() throws IOException {
    try (InputStream in = MaterialByCommandTest.class.getResourceAsStream("/material/stock.csv")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(Row::of)
          .toList();
    }
  }

  /** What a run of the command made. */
  private record Made(Drill drill, List<Track> tracks, double ticksPerStep, int stepsPerBar) {
    /** The steps from bar 1 at which a track sounds; 1 is the click, 2 and on the chairs. */
    List<Integer> onsets(int track) {
      return notes(track).stream().map(note -> note[0]).toList();
    }

    /** Step and key of each note. */
    List<int[]> notes(int track) {
      List<int[]> notes = new ArrayList<>();
      for (int i = 0; i < tracks.get(track).size(); i++) {
        if (tracks.get(track).get(i).getMessage() instanceof ShortMessage on
            && on.getCommand() == ShortMessage.NOTE_ON
            && on.getData2() > 0) {
          double step = tracks.get(track).get(i).getTick() / ticksPerStep;
          assertThat(step).as("a whole step").isEqualTo(Math.rint(step));
          int fromBarOne = (int) step - COUNT_IN_BARS * stepsPerBar;
          if (fromBarOne >= 0) {
            notes.add(new int[] {fromBarOne, on.getData1()});
          }
        }
      }
      return notes;
    }
  }

  private Made compose(String... words) throws Exception {
    Path drillFile = folder.resolve("made.drill.json");
    Path midi = folder.resolve("made.mid");
    List<Object> args = new ArrayList<>(List.of("compose"));
    args.addAll(List.of(words));
    args.addAll(List.of("--drill", drillFile, "--midi", midi, "--replace"));
    Run run = Run.of(args.toArray());
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    Drill drill = FileCodec.readDrill(Files.readAllBytes(drillFile));
    var sequence = MidiSystem.getSequence(midi.toFile());
    double quarters = drill.meter().compound() ? 1.5 : 1;
    return new Made(
        drill,
        List.of(sequence.getTracks()),
        sequence.getResolution() * quarters / drill.stepsPerBeat(),
        drill.stepsPerBar());
  }

  /** What sounds in the second cycle, when every chair has come in, round the cycle. */
  private static List<Integer> inStride(Made made, int chair, int cycle) {
    return List.copyOf(
        new TreeSet<>(
            made.onsets(chair + 2).stream()
                .filter(step -> step >= cycle && step < 2 * cycle)
                .map(step -> step - cycle)
                .toList()));
  }

  @ParameterizedTest
  @MethodSource("stock")
  void everyCellAndEnsembleIsHadByItsTitleAndSoundsAsWritten(Row row) throws Exception {
    Made made = compose(row.title());

    assertThat(made.drill().title()).isEqualTo(row.title());
    assertThat(made.drill().meter().toString()).isEqualTo(row.meter());
    assertThat(made.drill().stepsPerBeat()).isEqualTo(row.stepsPerBeat());
    assertThat(made.drill().periodBars()).isEqualTo(row.bars());
    assertThat(made.drill().level()).isEqualTo(row.level());
    String tempo = "%.0f-%.0f";
    assertThat(tempo.formatted(made.drill().tempo().from(), made.drill().tempo().to()))
        .isEqualTo(row.tempo());
    List<Stage> stages = made.drill().stages();
    Stage thinnest = stages.get(stages.size() - 1);
    assertThat(thinnest)
        .isEqualTo(
            rung(row.rung())
                .stage(made.drill().meter(), row.stepsPerBeat(), null, thinnest.bars(), 7));
    for (int chair = 0; chair < row.rows().size(); chair++) {
      assertThat(inStride(made, chair, row.cycle()))
          .as("chair %d", chair + 1)
          .isEqualTo(row.rows().get(chair));
    }
  }

  private static Rung rung(String number) {
    return Arrays.stream(Rung.values())
        .filter(rung -> rung.number().equals(number))
        .findFirst()
        .orElseThrow();
  }

  /** The Charleston later by 0 to 7 steps, four bars each. */
  @Test
  void theDisplacementLadderMovesAStepAfterEveryFourBars() throws Exception {
    List<Integer> onsets = compose("Displacement ladder").onsets(2);
    for (int bar = 0; bar < 32; bar++) {
      for (int step : new int[] {0, 3}) {
        int at = 8 * bar + step + bar / 4;
        assertThat(onsets.contains(at)).as("step %d", at).isEqualTo(at < 256);
      }
    }
  }

  /** Long threes, fives, sixes and sevens: the grouping, then a tail to the last upbeat or beat. */
  @ParameterizedTest
  @CsvSource({
    "Long threes, 3, 4, upbeat",
    "Long sixes, 6, 4, downbeat",
    "Long fives, 5, 4, downbeat",
    "Long sevens, 7, 4, upbeat",
    "Short threes, 3, 2, upbeat"
  })
  void groupingsOverPeriodsAreMadeByRuleAsTheStockHasThem(
      String title, String grouping, String period, String tail) throws Exception {
    Made made = compose("--grouping", grouping, "--period", period, "--tail", tail);

    assertThat(made.drill().chairs().get(0).cell().attackSteps())
        .isEqualTo(compose(title).drill().chairs().get(0).cell().attackSteps());
    assertThat(made.onsets(2).subList(0, 5)).isEqualTo(compose(title).onsets(2).subList(0, 5));
  }

  @Test
  void everyRoleIsDealtWithItsOwnPart() throws Exception {
    Run run = Run.of("compose", "Charleston", "--deal", "roles", "--chairs", 7, "--text");

    assertThat(run.out())
        .contains(
            "as timeline.",
            "as bass.",
            "as ride.",
            "as comping.",
            "as answer.",
            "as shaker.",
            "as other.");
    assertThat(compose("Charleston", "--deal", "roles", "--chairs", "7").tracks()).hasSize(9);
  }

  /** The first and the last beat of each group; beats in the meter's groups. */
  @ParameterizedTest
  @CsvSource({
    "2/4, 1, 2",
    "3/4, 1 3, 2 3",
    "4/4, 1 3, 2 4",
    "5/4, 1 4, 3 5",
    "6/4, 1 4, 3 6",
    "7/4, 1 3 5, 2 4 7",
    "6/8, 1, 2",
    "9/8, 1 3, 2 3",
    "12/8, 1 3, 2 4"
  })
  void groupsOfEveryMeterClickAtTheirFirstAndLastBeats(String meter, String firsts, String lasts)
      throws Exception {
    assertThat(beats(meter, "P2")).isEqualTo(steps(firsts));
    assertThat(beats(meter, "P3")).isEqualTo(steps(lasts));
    assertThat(beats(meter, "P1"))
        .isEqualTo(IntStream.rangeClosed(1, Meter.parse(meter).beatsPerBar()).boxed().toList());
    assertThat(beats(meter, "first only")).isEqualTo(List.of(1));
    assertThat(beats(meter, "last only")).isEqualTo(List.of(Meter.parse(meter).beatsPerBar()));
  }

  private List<Integer> beats(String meter, String plan) throws Exception {
    return compose("--meter", meter, "--cell", "0", "--plan", plan).drill().stages().get(0).beats();
  }

  /** What clicks in sixteen bars of 4/4 in eighths, by each rung's plain name. */
  static Stream<Arguments> rungs() {
    return Stream.of(
        rung("all beats", step -> step % 2 == 0),
        rung("one and three", step -> step % 4 == 0),
        rung("two and four", step -> step % 4 == 2),
        rung("first only", step -> step % 8 == 0),
        rung("last only", step -> step % 8 == 6),
        rung("every second bar", step -> step % 16 == 0),
        rung("every fourth bar", step -> step % 32 == 0),
        rung("ands", step -> step % 2 == 1),
        rung("last and", step -> step % 8 == 7),
        rung("moved floor", step -> step % 2 == 1), // one step late; in eighths the ands
        rung("islands", step -> step % 2 == 0 && step / 32 % 2 == 0),
        rung("small islands", step -> step % 2 == 0 && step / 8 % 8 < 2),
        rung("every third step", step -> step % 24 % 3 == 0),
        rung("none", step -> false));
  }

  private static Arguments rung(String plan, IntPredicate clicks) {
    return Arguments.of(plan, clicks);
  }

  @ParameterizedTest
  @MethodSource("rungs")
  void everyRungSoundsAsItsNameSays(String plan, IntPredicate clicks) throws Exception {
    Made made = compose("Even eighths", "--plan", plan, "--stage-bars", "16");

    assertThat(made.onsets(1)).isEqualTo(IntStream.range(0, 128).filter(clicks).boxed().toList());
  }

  @ParameterizedTest
  @CsvSource({"P11, 4, 2", "P11-50, 8, 2", "P11-75, 12, 4"})
  void seededSilenceIsWrittenOutAndNoLongerThanItMay(String plan, int silent, int longest)
      throws Exception {
    Made made = compose("Even eighths", "--plan", plan, "--stage-bars", "16", "--seed", "3");
    int run = 0;
    int all = 0;
    for (int bar = 0; bar < 16; bar++) {
      int at = bar;
      boolean sounds = made.onsets(1).stream().anyMatch(step -> step / 8 == at);
      run = sounds ? 0 : run + 1;
      all += sounds ? 0 : 1;
      assertThat(run).as("bar %d", bar).isLessThanOrEqualTo(longest);
    }
    assertThat(all).isEqualTo(silent);
    assertThat(made.drill().stages().get(0).steps()).isNotNull();
  }

  @Test
  void aLadderLeadsFromOneRungToAnother() throws Exception {
    List<Stage> stages =
        compose("Even eighths", "--plan", "all beats to every fourth bar").drill().stages();

    assertThat(stages)
        .extracting(Stage::everyBars, Stage::beats)
        .containsExactly(
            tuple(1, List.of(1, 2, 3, 4)),
            tuple(1, List.of(1, 3)),
            tuple(1, List.of(1)),
            tuple(2, List.of(1)),
            tuple(4, List.of(1)));
  }

  /** The worked examples of the design, step and note, as they sound. */
  @ParameterizedTest
  @CsvSource({
    "Minor two-five line, 1 3 5 7 9 11 13 15 19, A C Eb F# A C Eb D Bb",
    "Two-five line, 1 2 5 6 9 10 13 15 19, F Ab C Eb D F Ab G Bb"
  })
  void theWorkedLinesSoundNoteForNote(String title, String at, String notes) throws Exception {
    List<String> names = List.of("C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B");
    List<int[]> first = compose(title).notes(2).stream().filter(note -> note[0] < 32).toList();

    assertThat(first.stream().map(note -> note[0])).isEqualTo(steps(at));
    assertThat(first.stream().map(note -> names.get(note[1] % 12)))
        .containsExactly(notes.split(" ", -1));
  }

  @Test
  void threesSevensAndFivesRunOverTheirForms() throws Exception {
    Made threes = compose("Threes over a blues");
    assertThat(threes.onsets(2).subList(0, 32))
        .isEqualTo(IntStream.range(0, 32).map(i -> 3 * i).boxed().toList());
    assertThat(threes.onsets(2).get(32)).as("32 groups exactly").isEqualTo(96);
    List<Integer> sevens =
        new ArrayList<>(IntStream.rangeClosed(0, 12).map(i -> 7 * i).boxed().toList());
    sevens.addAll(List.of(91, 93, 96));
    assertThat(compose("Sevens over a blues").onsets(2).subList(0, 16)).isEqualTo(sevens);
    Made form = compose("Fives over a form");
    assertThat(form.drill().periodBars()).isEqualTo(32);
    assertThat(form.drill().chairs().get(0).line().progression()).isEqualTo("32-bar AABA");
    assertThat(form.onsets(2).subList(0, 12))
        .isEqualTo(IntStream.range(0, 12).map(i -> 5 * i).boxed().toList());
  }

  @ParameterizedTest
  @CsvSource({
    "ii-V-I, 4",
    "minor ii-V-i, 4",
    "turnaround, 2",
    "12-bar blues, 12",
    "12-bar minor blues, 12",
    "32-bar AABA, 32",
    "dominants of two bars, 8",
    "Dm7 | G7 | Cmaj7 | %, 4"
  })
  void everyProgressionCarriesAnyFigure(String progression, int bars) throws Exception {
    for (String figure : List.of("Ands alone", "Long threes")) {
      Made made = compose(figure, "--progression", progression, "--instrument", "piano");
      assertThat(made.drill().chairs().get(0).line().progression()).isEqualTo(progression);
      assertThat(made.onsets(2)).startsWith(compose(figure).onsets(2).get(0));
    }
    Run run = Run.of("compose", "Ands alone", "--progression", progression, "--text");
    assertThat(run.out().lines().filter(line -> line.startsWith("Bar "))).hasSize(bars);
  }

  /** The file read by a program of another family, where it is installed. */
  @Test
  void midicsvReadsTheSameOnsets() throws Exception {
    assumeTrue(
        Arrays.stream(System.getenv("PATH").split(File.pathSeparator))
            .anyMatch(at -> Files.isExecutable(Path.of(at, "midicsv"))),
        "midicsv is not installed here, so the MIDI file is read by Java's own reader alone");
    Made made = compose("Long threes", "--instrument", "tenor saxophone", "--key", "Bb");
    Process process = new ProcessBuilder("midicsv", folder.resolve("made.mid").toString()).start();
    String read = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isZero();
    List<String> notes =
        read.lines()
            .map(line -> line.split(", ", -1))
            .filter(f -> f[0].equals("3") && f[2].equals("Note_on_c") && !f[5].equals("0"))
            .map(f -> (Long.parseLong(f[1]) / 480 - 16) + " " + f[4])
            .toList();

    assertThat(notes)
        .isEqualTo(made.notes(2).stream().map(note -> note[0] + " " + note[1]).toList());
  }
}
