package thinclick.server.engraving;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.music.Meter;

/**
 * Spelling, as text: 1 whole, 2 half, 4 quarter, 8 eighth, 16 sixteenth, r a rest, R a silent bar,
 * ~ tied to the next, [3: in a triplet, ( ) under a beam. The expectations are common practice, no
 * source.
 */
class SpellerTest {
  @Nested
  class InEighths {
    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        value = {
          // notes as from-to in steps | beats visible
          "0-2 2-4 4-6 6-8 | 4 4 4 4",
          "0-8 | 1",
          "0-4 4-8 | 2 2",
          "2-6 | r4 4~ 4 r4", // over the half bar
          "0-6 | 2~ 4 r4", // no dot outside a beat
          "2-8 | r4 4~ 2",
          "1-3 | r8 8~ 8 r8 r2",
          "0-3 3-6 6-8 | 4~ (8 8~) 4 4",
          "1-2 3-4 5-6 7-8 | r8 8 r8 8 r8 8 r8 8",
          "0-1 1-2 2-3 3-4 | (8 8) (8 8) r2",
          "0-1 3-4 | 8 r8 r8 8 r2",
          "3-4 | r4 r8 8 r2",
          "7-8 | r2 r4 r8 8",
          "1-8 | r8 8~ 4~ 2",
          "3-8 | r4 r8 8~ 2",
        })
    void everyBeatIsVisible(String notes, String written) {
      assertThat(spell("4/4", 2, 1, Cut.BEATS, notes)).isEqualTo(written);
    }

    @Test
    void noteOverABarLineIsTied() {
      assertThat(spell("4/4", 2, 2, Cut.BEATS, "6-11 11-12")).isEqualTo("r2 r4 4~ | 4~ (8 8) r2");
    }

    @Test
    void silentBarHasOneRest() {
      assertThat(spell("4/4", 2, 3, Cut.BEATS, "8-10")).isEqualTo("R | 4 r4 r2 | R");
    }

    @Test
    void syncopatedQuarterStaysWholeInsideAHalfBarWhenOnlyHalfBarsAreCut() {
      assertThat(spell("4/4", 2, 1, Cut.HALF_BARS, "0-1 1-3 3-5 5-7 7-8"))
          .isEqualTo("8 4 8~ 8 4 8");
      assertThat(spell("4/4", 2, 1, Cut.HALF_BARS, "0-3 3-6")).isEqualTo("4~ (8 8~) 4 r4");
    }

    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        value = {
          "3/4 | 0-6 | 2.",
          "3/4 | 2-6 | r4 2",
          "3/4 | 0-2 | 4 r4 r4",
          "3/4 | 1-5 | r8 8~ 4~ 8 r8",
          "5/4 | 0-10 | 2.~ 2",
          "5/4 | 4-8 | r4 r4 4~ 4 r4", // 3+2
          "6/4 | 0-12 | 1.",
          "7/4 | 0-14 | 2~ 2~ 2.", // 2+2+3
          "2/4 | 0-4 | 2",
        })
    void otherMetersAreCutAtTheirGroups(String meter, String notes, String written) {
      assertThat(spell(meter, 2, 1, Cut.BEATS, notes)).isEqualTo(written);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "4/4 | 0-3 3-6 6-9 9-12 12-14 14-16 | (8. 16~) (8 8~) (16 8.) (8 8)",
        "4/4 | 0-1 1-3 3-4 | (16 8 16) r4 r2",
        "4/4 | 1-4 | r16 8. r4 r2",
        "4/4 | 0-1 | 16 r16 r8 r4 r2",
        "4/4 | 3-5 | r8 r16 16~ 16 r16 r8 r2",
        "4/4 | 0-1 2-3 3-4 | 16 r16 (16 16) r4 r2",
      })
  void sixteenthsKeepTheBeat(String meter, String notes, String written) {
    assertThat(spell(meter, 4, 1, Cut.BEATS, notes)).isEqualTo(written);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "3 | 0-1 1-2 2-3 3-6 | ([3:8 8 8]) 4 r2",
        "3 | 1-2 | [3:r8 8 r8] r4 r2",
        "3 | 0-2 2-3 | [3:4 8] r4 r2",
        "3 | 0-2 2-4 4-6 | [3:4 8~] [3:8 4] r2",
        "3 | 2-3 | [3:r4 8] r4 r2",
        "6 | 0-3 3-6 | (8 8) r4 r2",
        "6 | 0-2 2-4 4-6 | ([3:8 8 8]) r4 r2",
        "6 | 0-1 1-2 2-3 3-4 4-5 5-6 | ([6:16 16 16 16 16 16]) r4 r2",
        "6 | 0-2 2-3 3-6 | ([6:8 16 8.]) r4 r2",
      })
  void threesInASimpleMeterAreTuplets(int stepsPerBeat, String notes, String written) {
    assertThat(spell("4/4", stepsPerBeat, 1, Cut.BEATS, notes)).isEqualTo(written);
  }

  @Test
  void quarterTripletFillsAHalfBarWhenOnlyHalfBarsAreCut() {
    assertThat(spell("4/4", 3, 1, Cut.HALF_BARS, "0-2 2-4 4-6")).isEqualTo("[3:4 4 4] r2");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "6/8 | 3 | 0-6 | 2.",
        "6/8 | 3 | 0-2 2-4 4-6 | 4 8~ 8 4",
        "6/8 | 3 | 1-2 4-5 | r8 8 r8 r8 8 r8",
        "6/8 | 3 | 0-1 | 8 r8 r8 r4.",
        "9/8 | 3 | 0-3 3-9 | 4. 2.",
        "12/8 | 3 | 0-2 2-4 4-5 5-7 7-9 9-11 11-12 | 4 8~ (8 8 8~) 8 4 4 8",
        "12/8 | 3 | 0-12 | 1.",
        "12/8 | 3 | 0-3 | 4. r4. r2.",
        "6/8 | 6 | 0-2 2-3 3-6 | (8 16 8.) r4.",
        "6/8 | 6 | 1-5 | r16 (16~ 8.) r16 r4.",
        "6/8 | 6 | 1-6 | r16 16~ 4 r4.",
      })
  void dottedBeatsAreDividedInThree(String meter, int stepsPerBeat, String notes, String written) {
    assertThat(spell(meter, stepsPerBeat, 1, Cut.BEATS, notes)).isEqualTo(written);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void randomNotesFillEveryBarAndKeepTheBeats(long seed) {
    Random random = new Random(seed);
    for (int round = 0; round < 200; round++) {
      String meter = METERS.get(random.nextInt(METERS.size()));
      List<Integer> divisions = meter.endsWith("8") ? List.of(3, 6) : List.of(2, 3, 4, 6);
      int stepsPerBeat = divisions.get(random.nextInt(divisions.size()));
      BarGrid grid = BarGrid.of(Meter.parse(meter), stepsPerBeat);
      int bars = 1 + random.nextInt(4);
      List<NoteSpan> notes = randomNotes(random, bars * grid.stepsPerBar());
      for (Cut cut : Cut.values()) {
        String what = "seed " + seed + " round " + round + " " + grid + " " + cut + " " + notes;
        List<SpelledBar> spelled = Speller.spell(grid, bars, notes, cut);
        assertThat(written(spelled)).as(what).isEqualTo(heard(notes, bars * grid.stepsPerBar()));
        spelled.forEach(bar -> checkBar(bar, grid, cut, what));
      }
    }
  }

  private static final List<String> METERS =
      List.of("2/4", "3/4", "4/4", "5/4", "6/4", "7/4", "6/8", "9/8", "12/8");

  static List<NoteSpan> randomNotes(Random random, int steps) {
    List<NoteSpan> notes = new ArrayList<>();
    int at = random.nextInt(4);
    while (at < steps) {
      int length = 1 + random.nextInt(random.nextInt(5) == 0 ? 12 : 4);
      notes.add(new NoteSpan(at, length));
      at += length + (random.nextBoolean() ? 0 : random.nextInt(4));
    }
    return notes;
  }

  /** For each step the note that sounds on it, negative where it is attacked; 0 for silence. */
  private static int[] heard(List<NoteSpan> notes, int steps) {
    int[] heard = new int[steps];
    for (int i = 0; i < notes.size(); i++) {
      for (int at = notes.get(i).start(); at < Math.min(steps, notes.get(i).end()); at++) {
        heard[at] = at == notes.get(i).start() ? -(i + 1) : i + 1;
      }
    }
    return heard;
  }

  private static int[] written(List<SpelledBar> bars) {
    List<Integer> steps = new ArrayList<>();
    for (SpelledBar bar : bars) {
      for (Symbol symbol : bar.symbols()) {
        assertThat(symbol.start()).isEqualTo(steps.size());
        for (int i = 0; i < symbol.length(); i++) {
          int sounding = symbol.rest() ? 0 : symbol.note() + 1;
          steps.add(i == 0 && symbol.attack() ? -sounding : sounding);
        }
      }
    }
    return steps.stream().mapToInt(Integer::intValue).toArray();
  }

  private static void checkBar(SpelledBar bar, BarGrid grid, Cut cut, String what) {
    double thirdsOfSixteenths = 0;
    for (Symbol symbol : bar.symbols()) {
      if (symbol.wholeBar()) {
        return;
      }
      double dotted = symbol.value().sixteenths() * (symbol.dots() == 1 ? 1.5 : 1);
      Tuplet tuplet = symbol.tuplet();
      double length =
          3
              * (tuplet == null ? dotted : dotted * tuplet.normal())
              / (tuplet == null ? 1 : tuplet.actual());
      assertThat(length)
          .as("value of %s, %s", symbol, what)
          .isEqualTo(3.0 * symbol.length() * grid.sixteenthsPerBeat() / grid.stepsPerBeat());
      thirdsOfSixteenths += length;
      boolean beatHidden =
          (symbol.start() % grid.stepsPerBeat() != 0 || symbol.end() % grid.stepsPerBeat() != 0)
              && symbol.start() / grid.stepsPerBeat() != (symbol.end() - 1) / grid.stepsPerBeat();
      assertThat(beatHidden && (cut == Cut.BEATS || symbol.rest() && tuplet == null))
          .as("a beat inside %s, %s", symbol, what)
          .isFalse();
    }
    assertThat(thirdsOfSixteenths)
        .as("bar sum, %s", what)
        .isEqualTo(3.0 * grid.sixteenthsPerBeat() * grid.meter().beatsPerBar());
    for (List<Integer> beam : bar.beams()) {
      assertThat(beam.stream().map(i -> bar.symbols().get(i).start() / grid.stepsPerBeat()))
          .as("beam over a beat, %s", what)
          .containsOnly(bar.symbols().get(beam.get(0)).start() / grid.stepsPerBeat());
    }
  }

  private static String spell(String meter, int stepsPerBeat, int bars, Cut cut, String notes) {
    List<NoteSpan> spans =
        Arrays.stream(notes.split(" "))
            .map(note -> note.split("-"))
            .map(ends -> new int[] {Integer.parseInt(ends[0]), Integer.parseInt(ends[1])})
            .map(ends -> new NoteSpan(ends[0], ends[1] - ends[0]))
            .toList();
    BarGrid grid = BarGrid.of(Meter.parse(meter), stepsPerBeat);
    return String.join(
        " | ", Speller.spell(grid, bars, spans, cut).stream().map(SpellerTest::text).toList());
  }

  private static String text(SpelledBar bar) {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < bar.symbols().size(); i++) {
      int at = i;
      Symbol symbol = bar.symbols().get(i);
      Tuplet tuplet = symbol.tuplet();
      String word = symbol.rest() ? "r" : "";
      word += 16 / symbol.value().sixteenths() + (symbol.dots() == 1 ? "." : "");
      word = symbol.wholeBar() ? "R" : word + (symbol.tiedOn() ? "~" : "");
      if (tuplet != null && tuplet.start() == symbol.start()) {
        word = "[" + tuplet.actual() + ":" + word;
      }
      if (bar.beams().stream().anyMatch(beam -> beam.get(0) == at)) {
        word = "(" + word;
      }
      if (tuplet != null && tuplet.start() + tuplet.length() == symbol.end()) {
        word += "]";
      }
      if (bar.beams().stream().anyMatch(beam -> beam.get(beam.size() - 1) == at)) {
        word += ")";
      }
      words.add(word);
    }
    return String.join(" ", words);
  }
}
