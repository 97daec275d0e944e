package thinclick.server.scoring;

import java.util.Collection;
import java.util.Locale;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Runs {@link ScoreBenchmark} once and prints its ratios; started by {@code
 * server/src/bench/score.sh}. Of each the fastest run counts: what else the machine does comes on top.
 */
final class ScoreRatios {
  private ScoreRatios() {}

  public static void main(String[] args) throws RunnerException {
    Collection<RunResult> results =
        new Runner(
                new OptionsBuilder()
                    .include(ScoreBenchmark.class.getSimpleName())
                    .jvmArgsAppend("-Xmx3g")
                    .shouldFailOnError(true)
                    .verbosity(VerboseMode.SILENT)
                    .build())
            .run();
    double small = fastest(results, "reviewOfTwoThousand");
    double large = fastest(results, "reviewOfTwentyThousand");
    double dense = fastest(results, "denseAssignment");
    double judgement = fastest(results, "judgementDuringATake");
    line("review of %,d attacks: %.1f ms", ScoreBenchmark.SMALL, small / 1e3);
    line("review of %,d attacks: %.1f ms", ScoreBenchmark.LARGE, large / 1e3);
    line("dense assignment of %,d attacks: %.0f ms", ScoreBenchmark.SMALL, dense / 1e3);
    line("judgement, %d players: %.2f microseconds", ScoreBenchmark.PLAYERS, judgement);
    double growth = large / ScoreBenchmark.LARGE / (small / ScoreBenchmark.SMALL);
    line("score: ratio %.1f growth %.2f", dense / small, growth);
  }

  private static double fastest(Collection<RunResult> results, String benchmark) {
    return result(results, benchmark).getStatistics().getMin();
  }

  private static Result<?> result(Collection<RunResult> results, String benchmark) {
    return results.stream()
        .filter(run -> run.getParams().getBenchmark().contains("." + benchmark))
        .findFirst()
        .orElseThrow()
        .getPrimaryResult();
  }

  private static void line(String format, Object... values) {
    System.out.println(String.format(Locale.ROOT, format, values));
  }
}
