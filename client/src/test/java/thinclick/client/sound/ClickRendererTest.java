package thinclick.client.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;

/** Samples out of cues: on the frame, never loud, never twice. */
class ClickRendererTest {
  private static final int BLOCK = 240;
  private static final float[] SILENCE = new float[BLOCK];

  @ParameterizedTest
  @ValueSource(doubles = {-500, 0, 500})
  void onsetsFallOnTheirFrameForNinetyMinutesWhateverTheCrystal(double ppm) {
    double perMicro = 0.048 * (1 + ppm / 1e6);
    StepGrid grid = new StepGrid(Meter.FOUR_FOUR, 2, 127, Swing.STRAIGHT, 3_000_000);
    int bars = 90 * 127 / 4;
    ClickPlan plan = new ClickPlan(List.of(Stage.ofBeats(bars, 1, 1, 2, 3, 4)));
    CueSheet sheet = CueSheet.ofTake(grid, 1, plan);
    ClickRenderer renderer = new ClickRenderer(new Fader(Loudness.FIRST));
    CueReader reader = new CueReader(sheet);
    FrameTimes times = micros -> micros * perMicro;

    List<Long> onsets = new ArrayList<>();
    float[] block = new float[BLOCK];
    long silentSince = -Voice.RATE;
    for (long first = 0; !reader.done(); first += BLOCK) {
      renderer.render(first, block, reader, times);
      for (int i = 0; i < BLOCK && !Arrays.equals(block, SILENCE); i++) {
        if (block[i] != 0) {
          if (first + i - silentSince > 960) {
            onsets.add(first + i - 1);
          }
          silentSince = first + i;
        }
      }
    }

    assertThat(renderer.missed()).isZero();
    assertThat(onsets.size()).isBetween(sheet.size() - 1, sheet.size());
    for (int i = 0; i < onsets.size(); i++) {
      assertThat((double) onsets.get(i))
          .as("click %d", i)
          .isCloseTo(sheet.micros(i) * perMicro, within(1.0));
    }
  }

  @Test
  void aCueThatIsPastStaysSilent() {
    CueSheet sheet = CueSheet.of(List.of(click(0, 1_000), click(1, 20_000)), 500_000);
    ClickRenderer renderer = new ClickRenderer(new Fader(Loudness.FIRST));
    float[] second = new float[4_800];
    renderer.render(480, second, new CueReader(sheet), micros -> micros * 0.048);
    assertThat(renderer.missed()).isEqualTo(1);
    assertThat(Onsets.in(second)).containsExactly(960L - 480L);
  }

  @Test
  void noSampleIsEverOverTheCeiling() {
    Random random = new Random(11);
    Limiter limiter = new Limiter();
    float ceiling = (float) Math.pow(10, -6 / 20.0);
    for (int turn = 0; turn < 400; turn++) {
      float[] block = new float[BLOCK];
      float loud = turn % 7 == 0 ? 6 : 0.4f;
      for (int i = 0; i < BLOCK; i++) {
        block[i] = loud * (float) random.nextGaussian();
      }
      limiter.apply(block);
      for (float sample : block) {
        assertThat(Math.abs(sample))
            .as("seed 11, turn %d", turn)
            .isLessThanOrEqualTo(ceiling + 1e-6f);
      }
    }
  }

  @Test
  void theLimiterLeavesSoftSoundAsItIsOnlyLater() {
    Limiter limiter = new Limiter();
    float[] block = new float[BLOCK];
    for (int i = 0; i < BLOCK; i++) {
      block[i] = (float) (0.4 * Math.sin(i * 0.2));
    }
    float[] out = block.clone();
    limiter.apply(out);
    for (int i = Limiter.AHEAD; i < BLOCK; i++) {
      assertThat(out[i]).isEqualTo(block[i - Limiter.AHEAD]);
    }
  }

  @Test
  void clicksPeakAtTheLevelThatWasSet() {
    float[] out = new float[48_000];
    new ClickRenderer(new Fader(Loudness.FIRST))
        .render(
            0,
            out,
            new CueReader(CueSheet.of(List.of(click(0, 100_000)), 500_000)),
            micros -> micros * 0.048);
    assertThat(peak(out)).isCloseTo(Math.pow(10, -24 / 20.0), within(1e-4));
  }

  @Test
  void theLevelRisesByTwelveDecibelsASecondAndIsMutedWithinTwentyMillis() {
    Fader fader = new Fader(Loudness.FIRST);
    fader.to(new Loudness(-6));
    float[] second = ones(Voice.RATE);
    fader.apply(second);
    assertThat(20 * Math.log10(second[Voice.RATE - 1])).isCloseTo(-12, within(0.01));
    float[] next = ones(Voice.RATE);
    fader.apply(next);
    assertThat(20 * Math.log10(next[Voice.RATE - 1])).isCloseTo(-6, within(0.01));
    fader.mute();
    float[] end = ones(Voice.RATE / 50 + 1);
    fader.apply(end);
    assertThat(end[end.length - 1]).isZero();
    assertThat(fader.silent()).isTrue();
  }

  /** What was heard last is back soon; what was set higher in the silence comes slowly. */
  @Test
  void afterASilenceTheLevelIsNoLouderThanItWasAndRisesSlowlyFromThere() {
    Fader fader = new Fader(Loudness.FIRST);
    fader.mute();
    fader.apply(ones(Voice.RATE / 10));
    assertThat(fader.silent()).isTrue();
    fader.to(new Loudness(-6));
    float[] way = ones(2 * Voice.RATE);
    fader.apply(way);
    assertThat(20 * Math.log10(way[Voice.RATE * 15 / 200]))
        .as("half way after 75 ms")
        .isCloseTo(-30, within(0.1));
    assertThat(20 * Math.log10(way[Voice.RATE * 15 / 100]))
        .as("back after 150 ms")
        .isCloseTo(-24, within(0.1));
    assertThat(20 * Math.log10(way[Voice.RATE * 115 / 100]))
        .as("a second later")
        .isCloseTo(-12, within(0.1));
    assertThat(20 * Math.log10(way[way.length - 1])).isCloseTo(-6, within(0.01));

    fader.back(new Loudness(-6));
    float[] again = ones(Voice.RATE);
    fader.apply(again);
    assertThat(again[0]).isLessThan(0.001f);
    assertThat(20 * Math.log10(again[Voice.RATE * 15 / 100])).isCloseTo(-6, within(0.1));
    fader.mute();
    fader.apply(ones(Voice.RATE / 200));
    fader.to(new Loudness(-6));
    float[] soon = ones(Voice.RATE);
    fader.apply(soon);
    assertThat(20 * Math.log10(soon[Voice.RATE * 15 / 100]))
        .as("a silence that was taken back")
        .isCloseTo(-6, within(0.1));
  }

  @Test
  void correctionsPullByHalfAMillisecondABeatAtMost() {
    List<Click> clicks = new ArrayList<>();
    for (int i = 0; i < 9; i++) {
      clicks.add(click(i + 1, 500_000L * i));
    }
    CueReader reader = new CueReader(CueSheet.of(clicks, 500_000));
    reader.placed(reader.frame(micros -> micros * 0.048));
    FrameTimes threeMillisLater = micros -> micros * 0.048 + 144;
    List<Long> spacing = new ArrayList<>();
    long last = 0;
    for (int i = 1; i < 9; i++) {
      long frame = reader.frame(threeMillisLater);
      reader.placed(frame);
      spacing.add(frame - last);
      last = frame;
    }
    assertThat(spacing)
        .containsExactly(24_024L, 24_024L, 24_024L, 24_024L, 24_024L, 24_024L, 24_000L, 24_000L);
  }

  @Test
  void whatIsFarOutIsTakenAtTheBarLine() {
    List<Click> clicks = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      clicks.add(new Click(2 * i, 500_000L * i, 0, i == 4));
    }
    CueReader reader = new CueReader(CueSheet.of(clicks, 500_000));
    reader.placed(reader.frame(micros -> micros * 0.048));
    FrameTimes later = micros -> micros * 0.048 + 2_400;
    List<Long> frames = new ArrayList<>();
    for (int i = 1; i < 6; i++) {
      frames.add(reader.frame(later));
      reader.placed(frames.get(i - 1));
    }
    assertThat(frames).containsExactly(24_024L, 48_048L, 72_072L, 98_400L, 122_400L);
  }

  @ParameterizedTest
  @ValueSource(strings = {"BEAT", "ONE"})
  void aVoiceRisesWithinAMillisecondAndLiesBetweenOneAndFourKilohertz(String name) {
    Voice voice = Voice.valueOf(name);
    assertThat(voice.sample(0)).isZero();
    double loudest = 0;
    int loudestAt = 0;
    for (int i = 0; i < voice.frames(); i++) {
      if (Math.abs(voice.sample(i)) > loudest) {
        loudest = Math.abs(voice.sample(i));
        loudestAt = i;
      }
    }
    assertThat(loudest).isCloseTo(1, within(1e-6));
    assertThat(loudestAt).isBetween(Voice.RATE / 2_000, Voice.RATE / 500);
    assertThat(energy(voice, 1_000, 4_000) / energy(voice, 0, 24_000)).isGreaterThan(0.9);
  }

  @Test
  void theOneLiesAFifthHigher() {
    assertThat(Voice.ONE.hertz() / Voice.BEAT.hertz()).isEqualTo(1.5);
  }

  @Test
  void levelsStayUnderTheCeilingAndOpenSoftly() {
    assertThat(Loudness.nearest(0).dbfs()).isEqualTo(-6);
    assertThat(Loudness.remembered(-6).dbfs()).isEqualTo(-12);
    assertThat(Loudness.remembered(-30).dbfs()).isEqualTo(-30);
    assertThat(Loudness.FIRST.dbfs()).isEqualTo(-24);
  }

  private static double energy(Voice voice, double from, double to) {
    int size = 8_192;
    double sum = 0;
    for (int bin = 0; bin < size / 2; bin++) {
      double hertz = (double) bin * Voice.RATE / size;
      if (hertz < from || hertz >= to) {
        continue;
      }
      double re = 0;
      double im = 0;
      for (int i = 0; i < voice.frames(); i++) {
        double angle = 2 * Math.PI * bin * i / size;
        re += voice.sample(i) * Math.cos(angle);
        im += voice.sample(i) * Math.sin(angle);
      }
      sum += re * re + im * im;
    }
    return sum;
  }

  private static Click click(long step, long micros) {
    return new Click(step, micros, 0, false);
  }

  private static double peak(float[] samples) {
    double peak = 0;
    for (float sample : samples) {
      peak = Math.max(peak, Math.abs(sample));
    }
    return peak;
  }

  private static float[] ones(int frames) {
    float[] ones = new float[frames];
    Arrays.fill(ones, 1);
    return ones;
  }
}
