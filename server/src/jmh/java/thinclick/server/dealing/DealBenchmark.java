package thinclick.server.dealing;

import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.server.material.Composition;
import thinclick.server.material.Demo;
import thinclick.server.material.Stock;

/** What it costs to deal four bars of sixteenths to a class of 24, in every way of dealing. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class DealBenchmark {
  @Param({"UNISON", "CANON", "HOCKET", "LAYERS", "CALL_AND_ANSWER", "TRADING", "ROLES"})
  private DealKind way;

  @Benchmark
  public Object twentyFourChairsOverFourBars() {
    Drill drill =
        Composition.from(Stock.find("Sixteenth threes")).period(4).stageBars(4).deal(way).drill();
    return Dealer.deal(
        drill, Demo.TUESDAY_CLASS, 7, drill.tempo().start(), List.of(drill.stages().get(0)), Map.of());
  }
}
