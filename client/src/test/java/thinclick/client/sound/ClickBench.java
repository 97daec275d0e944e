package thinclick.client.sound;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;
import thinclick.protocol.time.VirtualTime;

/**
 * How exactly clicks come out: offline over ninety minutes in samples, against outputs by script in
 * milliseconds, and on a null sink where there is one. The last line is what is read.
 */
final class ClickBench {
  private static final double[] CRYSTALS = {-500, 0, 500};
  private static final int[] LUMPS = {160, 441, 1_024, 1_280};
  private static final long SECOND = 1_000_000_000L;
  private static final Pattern P99 = Pattern.compile("spacing .*p99 ([\\d.]+).*stumbles (\\d+)");

  private ClickBench() {}

  public static void main(String[] args) throws IOException, InterruptedException {
    double samples = offline();
    double millis = scripted();
    String sink = sink();
    System.out.printf(
        Locale.ROOT,
        "click: offline-samples %.2f line-ms %.3f sink-p99-ms %s%n",
        samples,
        millis,
        sink);
  }

  /** The worst distance of an onset from where its cue belongs, samples. */
  private static double offline() {
    double worst = 0;
    for (double ppm : CRYSTALS) {
      double perMicro = 0.048 * (1 + ppm / 1e6);
      StepGrid grid = new StepGrid(Meter.FOUR_FOUR, 2, 127, Swing.STRAIGHT, 3_000_000);
      CueSheet sheet =
          CueSheet.ofTake(
              grid, 1, new ClickPlan(List.of(Stage.ofBeats(90 * 127 / 4, 1, 1, 2, 3, 4))));
      ClickRenderer renderer = new ClickRenderer(new Fader(Loudness.FIRST));
      CueReader reader = new CueReader(sheet);
      float[] block = new float[SoundLoop.BLOCK];
      long silentSince = -Voice.RATE;
      int click = 0;
      double worstHere = 0;
      for (long first = 0; !reader.done(); first += block.length) {
        renderer.render(first, block, reader, micros -> micros * perMicro);
        for (int i = 0; i < block.length; i++) {
          if (block[i] != 0) {
            if (first + i - silentSince > Voice.RATE / 50) {
              double off = first + i - 1 - sheet.micros(click++) * perMicro;
              worstHere = Math.max(worstHere, Math.abs(off));
            }
            silentSince = first + i;
          }
        }
      }
      System.out.printf(
          Locale.ROOT, "offline %+.0f ppm: %d clicks, worst %.2f samples%n", ppm, click, worstHere);
      worst = Math.max(worst, worstHere);
    }
    return worst;
  }

  /** The worst distance from when a click belongs after the first two seconds, milliseconds. */
  private static double scripted() {
    double worst = 0;
    for (double ppm : CRYSTALS) {
      for (int lump : LUMPS) {
        double here = scripted(ppm, lump);
        System.out.printf(
            Locale.ROOT, "line %+.0f ppm, lumps of %d: worst %.3f ms%n", ppm, lump, here);
        worst = Math.max(worst, here);
      }
    }
    return worst;
  }

  private static double scripted(double ppm, int lump) {
    long start = 77 * SECOND;
    VirtualTime time = new VirtualTime(start);
    ScriptedLine line = new ScriptedLine(time, ppm, lump, SoundLoop.BUFFER);
    Outputs outputs =
        new Outputs() {
          @Override
          public List<String> names() {
            return List.of("script");
          }

          @Override
          public OutputLine open(String name, int bufferFrames) {
            return line.restarted();
          }
        };
    SoundEar deaf =
        new SoundEar() {
          @Override
          public void soundChanged(SoundState state, String output) {}

          @Override
          public void clickInterrupted(long fromMicros, long toMicros) {}
        };
    SoundLoop loop = new SoundLoop(outputs, time, deaf, "", Loudness.FIRST);
    StepGrid grid = new StepGrid(Meter.FOUR_FOUR, 2, 120, Swing.STRAIGHT, 2_500_000);
    CueSheet cues =
        CueSheet.of(
            new ClickPlan(List.of(Stage.ofBeats(30, 1, 1, 2, 3, 4))).clicks(grid),
            grid.beatMicros());
    loop.play(
        cues,
        new RoomTimes() {
          @Override
          public long nanosOf(long micros) {
            return start + micros * 1_000;
          }

          @Override
          public long roomMicros(long nanos) {
            return (nanos - start) / 1_000;
          }
        });
    Random late = new Random(5);
    while (time.nanos() < start + 64 * SECOND) {
      long next = loop.turn();
      time.advanceTo(
          Math.max(next, time.nanos() + 100_000L) + (long) (late.nextDouble() * 400_000));
    }
    List<Long> onsets = Onsets.in(line.heard());
    double worst = onsets.size() == cues.size() ? 0 : Double.NaN;
    for (int i = 0; i < Math.min(onsets.size(), cues.size()); i++) {
      double off = (line.heardNanos(onsets.get(i)) - start - cues.micros(i) * 1e3) / 1e6;
      worst = Math.max(worst, Math.abs(off));
    }
    return worst;
  }

  private static String sink() throws IOException, InterruptedException {
    String missing = NullSink.missing();
    if (!missing.isEmpty()) {
      System.out.println(missing);
      return "none";
    }
    Path folder = Files.createTempDirectory("sink");
    try (NullSink sink = NullSink.start(folder)) {
      List<String> said = new ArrayList<>(sink.run(SinkProbe.class, "150"));
      said.forEach(System.out::println);
      return said.stream()
          .map(P99::matcher)
          .filter(Matcher::find)
          .findFirst()
          .map(found -> found.group(1))
          .orElse("none");
    } finally {
      try (Stream<Path> inside = Files.walk(folder)) {
        Path[] all = inside.sorted(Comparator.reverseOrder()).toArray(Path[]::new);
        for (Path each : Arrays.asList(all)) {
          Files.deleteIfExists(each);
        }
      }
    }
  }
}
