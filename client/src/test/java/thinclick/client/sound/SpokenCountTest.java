package thinclick.client.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.client.sound.CueSheet.Cue;
import thinclick.client.window.session.TakeMoment;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;

/** A count-in that is spoken, rendered: the right number on its beat, soft, and over in time. */
class SpokenCountTest {
  private static final List<String> METERS =
      List.of("2/4", "3/4", "4/4", "5/4", "6/4", "7/4", "6/8", "9/8", "12/8");
  private static final double PER_MICRO = 0.048;
  private static final int BLOCK = 240;
  private static final int BARS = 2;

  @ParameterizedTest
  @CsvSource({
    "4/4, 92, one two three four",
    "4/4, 133, one two three four",
    "4/4, 200, one two three four",
    "4/4, 261, one two three four",
    "4/4, 300, one . three .",
    "2/4, 320, one two",
    "2/4, 30, one two",
    "3/4, 300, one . .",
    "5/4, 300, one . three . .",
    "6/4, 300, one . three . five .",
    "7/4, 120, one two three four five six seven",
    "7/4, 300, one . three . five . .",
    "12/8, 80, one two three four",
    "6/8, 60, one two"
  })
  void everyBeatIsSpokenWhereThereIsTimeAndElseEveryOther(String meter, double tempo, String said) {
    String spoken =
        SpokenCount.bar(Meter.parse(meter).beatsPerBar(), 60e6 / tempo).stream()
            .map(word -> word.map(w -> NumberFiles.NAMES.get(w.number() - 1)).orElse("."))
            .collect(Collectors.joining(" "));
    assertThat(spoken).isEqualTo(said);
  }

  @Test
  void whatIsSpokenIsTheNumberThatIsShown() {
    for (String meter : METERS) {
      for (double tempo = StepGrid.MIN_TEMPO; tempo <= StepGrid.MAX_TEMPO; tempo += 29) {
        StepGrid grid = grid(meter, tempo);
        ClickPlan plan = plan();
        Announced announced =
            new Announced("t", "d", 1, countInMicros(grid), grid.startMicros(), BARS);
        for (Cue cue : sheet(grid, CountIn.SPOKEN).cues()) {
          if (cue.sound() instanceof SpokenNumber word) {
            // A microsecond on, since instants are rounded to it.
            TakeMoment shown = TakeMoment.at(grid, plan, announced, cue.micros() + 1);
            assertThat(shown.part()).isEqualTo(TakeMoment.Part.COUNT_IN);
            assertThat(word.number()).as("%s at %.0f", meter, tempo).isEqualTo(shown.count());
          }
        }
      }
    }
  }

  @Test
  void wordsNeverRunIntoEachOtherNorIntoTheTake() {
    for (String meter : METERS) {
      for (double tempo = StepGrid.MIN_TEMPO; tempo <= StepGrid.MAX_TEMPO; tempo++) {
        StepGrid grid = grid(meter, tempo);
        double over = 0;
        for (Cue cue : sheet(grid, CountIn.SPOKEN).cues()) {
          if (cue.sound() instanceof SpokenNumber word) {
            double begins = cue.micros() * PER_MICRO - word.lead();
            assertThat(begins)
                .as("%s at %.0f, %d", meter, tempo, word.number())
                .isGreaterThan(over);
            over = begins + word.frames();
          }
        }
        assertThat(over).isPositive().isLessThan(grid.startMicros() * PER_MICRO);
      }
    }
  }

  /** What is spoken is what sounds besides the click: nothing but the words, each at its place. */
  @ParameterizedTest
  @CsvSource({"4/4, 92", "4/4, 173.5", "4/4, 300", "3/4, 147", "7/4, 211", "9/8, 51", "2/4, 320"})
  void vowelsBeginWithinASampleOfTheirBeat(String meter, double tempo) {
    StepGrid grid = grid(meter, tempo);
    float[] clicked = rendered(sheet(grid, CountIn.CLICKED), grid, Loudness.FIRST, 0);
    float[] spoken = rendered(sheet(grid, CountIn.SPOKEN), grid, Loudness.FIRST, 0);

    float[] expected = new float[spoken.length];
    int words = 0;
    for (Cue cue : sheet(grid, CountIn.SPOKEN).cues()) {
      if (cue.sound() instanceof SpokenNumber word) {
        words++;
        long step = Math.round((cue.micros() - grid.startMicros()) / grid.stepMicros());
        double beat = (grid.startMicros() + step * grid.stepMicros()) * PER_MICRO;
        int vowel = (int) Math.round(cue.micros() * PER_MICRO);
        assertThat((double) vowel).isCloseTo(beat, within(1.0));
        for (int i = 0; i < word.frames(); i++) {
          expected[vowel - word.lead() + i] = (float) (word.sample(i) * Loudness.FIRST.peak());
        }
      }
    }
    assertThat(words).isPositive();
    double worst = 0;
    for (int i = 0; i < spoken.length; i++) {
      worst = Math.max(worst, Math.abs(spoken[i] - clicked[i] - expected[i]));
    }
    assertThat(worst).as("anything else, or elsewhere").isLessThan(1e-6);
    int one = (int) (grid.startMicros() * PER_MICRO);
    assertThat(differ(spoken, clicked, one, spoken.length))
        .as("no word in the take itself")
        .isEqualTo(-1);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-6, -24})
  void withTheVoiceTheClickPeaksNoHigher(double dbfs) {
    for (double tempo : new double[] {92, 150, 200, 300}) {
      Loudness loudness = new Loudness(dbfs);
      StepGrid grid = grid("7/4", tempo);
      float[] spoken = rendered(sheet(grid, CountIn.SPOKEN), grid, loudness, 0);
      double peak = 0;
      for (float sample : spoken) {
        peak = Math.max(peak, Math.abs(sample));
      }
      assertThat(20 * Math.log10(peak)).as("at %.0f", tempo).isCloseTo(dbfs, within(1e-4));
    }
  }

  /** Not set, a count-in is what it always was, bit for bit. */
  @Test
  void clickedItIsTheClickAlone() {
    StepGrid grid = grid("5/4", 118);
    List<Click> clicks =
        Stream.concat(ClickPlan.countIn(grid, BARS).stream(), plan().clicks(grid).stream())
            .toList();
    float[] always = rendered(CueSheet.of(clicks, grid.beatMicros()), grid, Loudness.FIRST, 0);
    float[] now = rendered(sheet(grid, CountIn.CLICKED), grid, Loudness.FIRST, 0);
    assertThat(Onsets.in(now)).hasSize(clicks.size());
    assertThat(differ(now, always, 0, always.length)).isEqualTo(-1);
  }

  /** Whoever comes into it late hears no half word, and the click from the next beat on. */
  @Test
  void aWordWhoseBeginningIsPastIsNotSpoken() {
    StepGrid grid = grid("4/4", 92);
    CueSheet spoken = sheet(grid, CountIn.SPOKEN);
    long two = countInMicros(grid) + Math.round(grid.beatMicros());
    int first = (int) (two * PER_MICRO) - SpokenNumber.of(2, SpokenNumber.Length.USUAL).lead() + 9;
    float[] clicks = rendered(sheet(grid, CountIn.CLICKED), grid, Loudness.FIRST, first);
    float[] words = rendered(spoken, grid, Loudness.FIRST, first);

    int three = (int) ((two + grid.beatMicros()) * PER_MICRO) - first;
    int before = three - SpokenNumber.of(3, SpokenNumber.Length.USUAL).lead() - 1;
    assertThat(differ(words, clicks, 0, before)).isEqualTo(-1);
    assertThat(Onsets.in(Arrays.copyOf(words, before))).as("the click of two").hasSize(1);
    assertThat(differ(words, clicks, before, three)).as("three is spoken").isPositive();
  }

  /** A correction that makes a word late pulls its click by no more than any other. */
  @Test
  void aWordThatIsMissedLeavesTheClicksAlone() {
    CueReader reader = new CueReader(sheet(grid("4/4", 120), CountIn.SPOKEN));
    long beat = 500_000L * 48 / 1_000;
    long one = reader.frame(micros -> micros * PER_MICRO);
    reader.placed(one); // the word
    assertThat(reader.frame(micros -> micros * PER_MICRO)).isEqualTo(one);
    reader.placed(one); // its click
    FrameTimes threeMillisEarlier = micros -> micros * PER_MICRO - 144;
    assertThat(reader.sound()).isInstanceOf(SpokenNumber.class);
    reader.missed();
    assertThat(reader.sound()).isEqualTo(Voice.BEAT);
    assertThat(reader.frame(threeMillisEarlier)).isEqualTo(one + beat - 24);
  }

  /** Counted from there, the first frame at which they are not the same bit by bit; -1 for none. */
  private static int differ(float[] one, float[] other, int from, int to) {
    return Arrays.mismatch(one, from, to, other, from, to);
  }

  /** Two bars of count-in, a second of silence before them. */
  private static StepGrid grid(String written, double tempo) {
    Meter meter = Meter.parse(written);
    long start = 1_000_000 + Math.round(BARS * meter.beatsPerBar() * 60e6 / tempo);
    return new StepGrid(meter, 3, tempo, Swing.STRAIGHT, start);
  }

  private static ClickPlan plan() {
    return new ClickPlan(List.of(Stage.ofBeats(1, 1, 1)));
  }

  private static CueSheet sheet(StepGrid grid, CountIn countIn) {
    return CueSheet.ofTake(grid, BARS, countIn, plan());
  }

  private static long countInMicros(StepGrid grid) {
    return grid.instantOf(-(long) BARS * grid.stepsPerBar());
  }

  /** All of it from a frame on until bar 1 has begun, block by block as an output gets it. */
  private static float[] rendered(CueSheet sheet, StepGrid grid, Loudness loudness, int first) {
    ClickRenderer renderer = new ClickRenderer(new Fader(loudness));
    CueReader reader = new CueReader(sheet);
    int blocks = (int) ((grid.startMicros() + 500_000) * PER_MICRO - first) / BLOCK;
    float[] all = new float[blocks * BLOCK];
    float[] block = new float[BLOCK];
    for (int i = 0; i < blocks; i++) {
      renderer.render(first + (long) i * BLOCK, block, reader, micros -> micros * PER_MICRO);
      System.arraycopy(block, 0, all, i * BLOCK, BLOCK);
    }
    return all;
  }
}
