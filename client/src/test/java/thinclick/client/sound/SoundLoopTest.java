package thinclick.client.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;
import thinclick.protocol.time.VirtualTime;

/** The sounding thread's turns against outputs by script, on a clock that the test moves. */
class SoundLoopTest {
  private static final long SECOND = 1_000_000_000L;
  private static final long START = 77 * SECOND;

  private final VirtualTime time = new VirtualTime(START);
  private final Deque<ScriptedLine> lines = new ArrayDeque<>();
  private final List<String> told = new ArrayList<>();
  private final List<long[]> interrupted = new ArrayList<>();
  private final Random late = new Random(5);
  private final Set<String> pulledOut = new HashSet<>();
  private SoundLoop loop = new SoundLoop(new Scripted(), time, new Ear(), "", Loudness.FIRST);

  /** Room time runs with the test's clock and began when the test did. */
  private final RoomTimes room =
      new RoomTimes() {
        @Override
        public long nanosOf(long micros) {
          return START + micros * 1_000;
        }

        @Override
        public long roomMicros(long nanos) {
          return (nanos - START) / 1_000;
        }
      };

  @ParameterizedTest
  @CsvSource({
    "0,160",
    "0,1280",
    "500,160",
    "500,1280",
    "-500,160",
    "-500,1280",
    "80,441",
    "-80,1024"
  })
  void clicksAreHeardWithinHalfAMillisecondAfterTwoSeconds(double ppm, int lump) {
    ScriptedLine line = line(ppm, lump);
    CueSheet cues = beats(120, 2_500_000, 120);
    loop.play(cues, room);
    runUntil(START + 64 * SECOND);

    List<Long> onsets = Onsets.in(line.heard());
    assertThat(onsets).hasSize(cues.size());
    for (int i = 0; i < onsets.size(); i++) {
      double offMillis = (line.heardNanos(onsets.get(i)) - room.nanosOf(cues.micros(i))) / 1e6;
      assertThat(offMillis)
          .as("click %d at %+.0f ppm, lumps of %d, seed 5", i, ppm, lump)
          .isCloseTo(0, within(0.5));
    }
    assertThat(interrupted).isEmpty();
  }

  @Test
  void nothingIsPlayedTwiceWhereTheTakeIsAnnouncedAnew() {
    ScriptedLine line = line(0, 160);
    CueSheet cues = beats(120, 1_000_000, 8);
    loop.play(cues, room);
    runUntil(START + 3 * SECOND + SECOND / 4);
    loop.play(cues, room);
    runUntil(START + 6 * SECOND);
    assertThat(Onsets.in(line.heard())).hasSize(8);
  }

  @Test
  void anOutputThatRanDryIsNoticedAndTheClickIsBackInTime() {
    ScriptedLine line = line(0, 160);
    CueSheet cues = beats(120, 1_000_000, 20);
    loop.play(cues, room);
    runUntil(START + 4 * SECOND);
    time.advanceTo(time.nanos() + 300_000_000L); // the thread did not run for 300 ms
    runUntil(START + 12 * SECOND);

    assertThat(interrupted).hasSize(1);
    assertThat(interrupted.get(0)[0]).isBetween(4_000_000L, 4_250_000L);
    assertThat(interrupted.get(0)[1]).isBetween(4_290_000L, 4_350_000L);
    List<Long> onsets = Onsets.in(line.heard());
    assertThat(onsets.size()).isBetween(18, 20);
    double lastMillis = line.heardNanos(onsets.get(onsets.size() - 1)) / 1e6;
    assertThat(lastMillis).isCloseTo(room.nanosOf(cues.micros(19)) / 1e6, within(0.5));
  }

  /** PulseAudio's way: the first buffer is gone at once, and nothing ran dry. */
  @Test
  void anOutputWhoseServerTakesTheFirstBufferAtOnceHasNotRunDry() {
    ScriptedLine line =
        new ScriptedLine(time, 80, 960, SoundLoop.BUFFER).takenAhead(SoundLoop.BUFFER);
    lines.add(line);
    CueSheet cues = beats(120, 2_500_000, 40);
    loop.play(cues, room);
    runUntil(START + 24 * SECOND);
    assertThat(interrupted).isEmpty();
    List<Long> onsets = Onsets.in(line.heard());
    assertThat(onsets).hasSize(cues.size());
    double ahead = SoundLoop.BUFFER * 1e3 / Voice.RATE; // a delay like any other, to be measured
    for (int i = 0; i < onsets.size(); i++) {
      double offMillis = (line.heardNanos(onsets.get(i)) - room.nanosOf(cues.micros(i))) / 1e6;
      assertThat(offMillis).as("click %d, seed 5", i).isCloseTo(ahead, within(0.5));
    }
  }

  @Test
  void aDeviceThatIsGoneIsReplacedWithinTwoSecondsAndComesBackAtABarLine() {
    ScriptedLine first = line(0, 160);
    ScriptedLine second = line(40, 320);
    CueSheet cues = beats(120, 1_000_000, 40);
    loop.play(cues, room);
    runUntil(START + 5 * SECOND + SECOND / 5);
    first.unplug();
    runUntil(START + 20 * SECOND);

    assertThat(told).containsExactly("SOUNDING ", "LOST ", "SOUNDING ");
    assertThat(second.heard()).isNotEmpty();
    assertThat(interrupted).hasSize(1);
    List<Long> onsets = Onsets.in(second.heard());
    double firstMicros = (second.heardNanos(onsets.get(0)) - START) / 1e3;
    // Bars are 2 s long and begin at 1 s: the first bar line after the loss at 5.2 s is at 7 s.
    assertThat(firstMicros).isCloseTo(7_000_000, within(1_000.0));
  }

  /** Nobody knows how loud the other one is, so it begins as any that was never used. */
  @Test
  void aNamedOutputThatIsGoneGivesWayToTheSystemsOwnSoftly() {
    ScriptedLine headset = line(0, 160);
    ScriptedLine systems = line(0, 160);
    loop = new SoundLoop(new Scripted(), time, new Ear(), "headset", new Loudness(-8));
    loop.play(beats(120, 1_000_000, 40), room);
    runUntil(START + 5 * SECOND + SECOND / 5);
    assertThat(decibels(peak(headset.heard(), 0, headset.heard().length)))
        .isCloseTo(-8, within(0.1));
    pulledOut.add("headset");
    headset.unplug();
    runUntil(START + 20 * SECOND);

    assertThat(told).containsExactly("SOUNDING headset", "LOST headset", "SOUNDING ");
    float[] heard = systems.heard();
    List<Long> onsets = Onsets.in(heard);
    double opened = systems.heardNanos(0);
    for (long onset : onsets) {
      double seconds = (systems.heardNanos(onset) - opened) / 1e9;
      assertThat(decibels(peak(heard, (int) onset, (int) onset + 2_000)))
          .as("the click %.2f s after the system's own was opened", seconds)
          .isLessThanOrEqualTo(Loudness.FIRST_DBFS + 12 * seconds + 0.6);
    }
    int last = onsets.get(onsets.size() - 1).intValue();
    assertThat(decibels(peak(heard, last, heard.length)))
        .as("as loud as it was set in the end")
        .isCloseTo(-8, within(0.1));
  }

  /** The position falls behind by 8 ms at once, without the buffer being seen empty. */
  @Test
  void anOutputThatFallsBehindIsNoticedWithinFiftyMillis() {
    ScriptedLine line = line(0, 160);
    CueSheet cues = beats(120, 1_000_000, 20);
    loop.play(cues, room);
    runUntil(START + 4 * SECOND + SECOND / 10);
    long before = time.nanos();
    line.stall(8_000_000);
    runUntil(before + 50_000_000);
    assertThat(interrupted).hasSize(1);
    runUntil(START + 12 * SECOND);
    assertThat(interrupted).as("once").hasSize(1);
    List<Long> onsets = Onsets.in(line.heard());
    double lastMillis = line.heardNanos(onsets.get(onsets.size() - 1)) / 1e6;
    assertThat(lastMillis).isCloseTo(room.nanosOf(cues.micros(19)) / 1e6, within(0.5));
  }

  /** What the thread that sounds throws away, a collector would come and fetch, in the beat. */
  @Test
  void aTurnAllocatesNothing() {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    assumeTrue(threads.isThreadAllocatedMemorySupported(), "Not tried: this Java does not count.");
    lines.add(new ScriptedLine(time, 80, 160, SoundLoop.BUFFER).roomFor(30));
    loop.play(beats(120, 1_000_000, 60), room);
    runUntil(START + 12 * SECOND);
    long self = Thread.currentThread().getId();
    long before = threads.getThreadAllocatedBytes(self);
    runUntil(START + 22 * SECOND);
    long bytes = threads.getThreadAllocatedBytes(self) - before;
    assertThat(bytes).as("bytes in ten seconds").isLessThan(2_048);
  }

  @Test
  void aTurnThatSpeaksAllocatesNothing() {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    assumeTrue(threads.isThreadAllocatedMemorySupported(), "Not tried: this Java does not count.");
    lines.add(new ScriptedLine(time, 80, 160, SoundLoop.BUFFER).roomFor(30));
    StepGrid grid = new StepGrid(Meter.FOUR_FOUR, 2, 50, Swing.STRAIGHT, 21_000_000);
    ClickPlan plan = new ClickPlan(List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4)));
    loop.play(CueSheet.ofTake(grid, 4, CountIn.SPOKEN, plan), room); // spoken from 1.8 to 20 s
    runUntil(START + 10 * SECOND);
    long self = Thread.currentThread().getId();
    long before = threads.getThreadAllocatedBytes(self);
    runUntil(START + 20 * SECOND);
    long bytes = threads.getThreadAllocatedBytes(self) - before;
    assertThat(bytes).as("bytes in ten seconds").isLessThan(2_048);
  }

  /** What began before an output ran dry is not gone on with; the next word is whole again. */
  @Test
  void afterAGapNoHalfWordIsHeard() {
    ScriptedLine line = line(0, 160);
    StepGrid grid = new StepGrid(Meter.FOUR_FOUR, 2, 60, Swing.STRAIGHT, 9_000_000);
    ClickPlan plan = new ClickPlan(List.of(Stage.ofBeats(1, 1, 1)));
    loop.play(CueSheet.ofTake(grid, 2, CountIn.SPOKEN, plan), room); // two is at 2 s
    runUntil(START + 2 * SECOND);
    time.advanceTo(time.nanos() + 400_000_000L); // the thread did not run, inside "two"
    runUntil(START + 8 * SECOND);

    assertThat(interrupted).hasSize(1);
    float[] heard = line.heard();
    double three = START + 3e9; // its word begins .163 s before, by its own vowel
    int lead = SpokenNumber.of(3, SpokenNumber.Length.USUAL).lead();
    int back = 0;
    while (line.heardNanos(back) < START + 2.45e9) {
      back++;
    }
    int begins = back;
    while (heard[begins] == 0) {
      begins++;
    }
    assertThat(line.heardNanos(begins + lead))
        .as("what is heard first is the whole word three")
        .isCloseTo(three, within(2e6));
  }

  private static double decibels(double peak) {
    return 20 * Math.log10(peak);
  }

  private static double peak(float[] samples, int from, int to) {
    double peak = 0;
    for (int i = from; i < Math.min(to, samples.length); i++) {
      peak = Math.max(peak, Math.abs(samples[i]));
    }
    return peak;
  }

  @Test
  void aComputerWithoutSoundIsToldOnceAndTheClickWaits() {
    loop.play(beats(120, 1_000_000, 8), room);
    runUntil(START + 4 * SECOND);
    assertThat(told).containsExactly("NONE ");
  }

  @Test
  void anOutputPluggedInLaterSounds() {
    runUntil(START + 2 * SECOND);
    ScriptedLine line = new ScriptedLine(time, 0, 160, SoundLoop.BUFFER);
    lines.add(line);
    runUntil(START + 4 * SECOND);
    assertThat(told).containsExactly("NONE ", "SOUNDING ");
  }

  private ScriptedLine line(double ppm, int lump) {
    ScriptedLine line = new ScriptedLine(time, ppm, lump, SoundLoop.BUFFER);
    lines.add(line);
    return line;
  }

  private static CueSheet beats(double tempo, long startMicros, int beats) {
    StepGrid grid = new StepGrid(Meter.FOUR_FOUR, 2, tempo, Swing.STRAIGHT, startMicros);
    ClickPlan plan = new ClickPlan(List.of(Stage.ofBeats(beats / 4, 1, 1, 2, 3, 4)));
    return CueSheet.of(plan.clicks(grid), grid.beatMicros());
  }

  /** The thread wakes a little late each time, as threads do. */
  private void runUntil(long nanos) {
    while (time.nanos() < nanos) {
      long wanted = loop.turn();
      time.advanceTo(Math.max(time.nanos() + 1, wanted) + late.nextInt(800_000));
    }
  }

  private final class Scripted implements Outputs {
    @Override
    public List<String> names() {
      return List.of("scripted");
    }

    @Override
    public OutputLine open(String name, int bufferFrames) throws NoOutput {
      ScriptedLine line = pulledOut.contains(name) ? null : lines.poll();
      if (line == null) {
        throw new NoOutput("nothing is plugged in");
      }
      return line.restarted();
    }
  }

  private final class Ear implements SoundEar {
    @Override
    public void soundChanged(SoundState state, String output) {
      told.add(state + " " + output);
    }

    @Override
    public void clickInterrupted(long fromMicros, long toMicros) {
      interrupted.add(new long[] {fromMicros, toMicros});
    }
  }
}
