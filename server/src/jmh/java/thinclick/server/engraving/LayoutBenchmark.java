package thinclick.server.engraving;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import thinclick.server.export.PdfFiles;
import thinclick.server.material.WrittenPart;

/** What pages cost: spelling and laying out four bars, and a handout in twelve keys. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class LayoutBenchmark {
  private final WrittenPart threes = Samples.longThrees("tenor saxophone", "Bb");
  private final Reading reading = Reading.once(threes, 4, Cut.BEATS);
  private final List<WrittenPart> keys =
      Stream.of("C", "F", "Bb", "Eb", "Ab", "Db", "Gb", "B", "E", "A", "D", "G")
          .map(key -> Samples.longThrees("alto saxophone", key))
          .toList();

  @Benchmark
  public Object spellFourBars() {
    return reading.part().spelled();
  }

  @Benchmark
  public Object layOutFourBars() {
    return Engraver.systems(reading.part(), reading.plans(), 104);
  }

  @Benchmark
  public Object layOutTwelveKeys() {
    return Pages.handout(keys, Paper.A4, Cut.BEATS);
  }

  @Benchmark
  public void pdfInTwelveKeys() throws IOException {
    PdfFiles.write(
        Pages.handout(keys, Paper.A4, Cut.BEATS), "Long threes", OutputStream.nullOutputStream());
  }
}
