package thinclick.client.clock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * Holds the follower against every plain estimator on the same exchanges: five lines, after 5 s and
 * 30 s, and drifting clocks after ten minutes. The last line is what is read.
 */
final class ClockBench {
  private static final double MEDIAN_FLOOR = 0.25;
  private static final double P95_FLOOR = 0.6;

  /** What the ratios must not exceed: median and p95 after 5 s, then after 30 s. */
  private static final Map<LineProfile, double[]> BOUNDS =
      Map.of(
          LineProfile.CLEAN, new double[] {1, 1, 1, 1},
          LineProfile.JITTER, new double[] {1.25, 1.25, 1.2, 1.2},
          LineProfile.ASYMMETRIC, new double[] {1.05, 1.1, 1.05, 1.1},
          LineProfile.EXPONENTIAL, new double[] {1.25, 1.25, 1.25, 1.25},
          LineProfile.HEAVY_TAIL, new double[] {1.15, 1.2, 1.15, 1.2});

  private final int runs;
  private double worstRatio;
  private double worstOverBound;
  private int held;
  private int stated;

  private ClockBench(int runs) {
    this.runs = runs;
  }

  public static void main(String[] args) {
    ClockBench bench = new ClockBench(args.length > 0 ? Integer.parseInt(args[0]) : 1_000);
    for (LineProfile profile : LineProfile.values()) {
      bench.line(profile, 5, 0);
      bench.line(profile, 30, 2);
    }
    for (LineProfile profile : LineProfile.values()) {
      bench.drifting(profile);
    }
    print("worst ratio as a share of its bound %.2f%n", bench.worstOverBound);
    print(
        "clock: worst-ratio %.2f coverage %.3f%n",
        bench.worstRatio, (double) bench.held / bench.stated);
  }

  private static Map<String, ToDoubleFunction<Ways>> plain() {
    Map<String, ToDoubleFunction<Ways>> plain = new LinkedHashMap<>();
    plain.put("minima", Ways::byMinima);
    plain.put("lowest quarter", Ways::byLowestQuarter);
    plain.put("medians", Ways::byMedians);
    return plain;
  }

  private void line(LineProfile profile, int seconds, int bound) {
    Map<String, double[]> errors = new LinkedHashMap<>();
    plain().keySet().forEach(name -> errors.put(name, new double[runs]));
    errors.put("shortest trip", new double[runs]);
    double[] ours = new double[runs];
    double[] statedMillis = new double[runs];
    double[] sharpMillis = new double[runs];
    for (int run = 0; run < runs; run++) {
      SimulatedLine line = profile.line(1_000L * seconds + run);
      List<Exchange> exchanges = new ArrayList<>();
      FollowedLine followed = new FollowedLine(line.recording(exchanges), run).until(seconds);
      exchanges.removeIf(e -> e.arrivedNanos() > followed.nanos());
      double truth = line.trueOffset(followed.nanos());
      Ways ways = Ways.of(exchanges, followed.nanos(), 0);
      for (Map.Entry<String, ToDoubleFunction<Ways>> rule : plain().entrySet()) {
        errors.get(rule.getKey())[run] = (rule.getValue().applyAsDouble(ways) - truth) / 1e3;
      }
      Exchange shortest =
          exchanges.stream().min(Comparator.comparingDouble(Exchange::delayMicros)).orElseThrow();
      errors.get("shortest trip")[run] = (shortest.offsetMicros() - truth) / 1e3;
      ours[run] = followed.errorMillis();
      statedMillis[run] = followed.view().uncertaintyMicros() / 1e3;
      double ageing = Skew.USUAL_PPM * seconds / 1e3;
      sharpMillis[run] = 1.1 * shortest.delayMicros() / 2e3 + 0.1 + ageing;
      stated++;
      held += Math.abs(ours[run]) <= statedMillis[run] ? 1 : 0;
    }
    double bestMedian = errors.values().stream().mapToDouble(e -> at(e, 0.5)).min().orElseThrow();
    double bestP95 = errors.values().stream().mapToDouble(e -> at(e, 0.95)).min().orElseThrow();
    double median = at(ours, 0.5) / Math.max(MEDIAN_FLOOR, bestMedian);
    double p95 = at(ours, 0.95) / Math.max(P95_FLOOR, bestP95);
    double[] bounds = BOUNDS.get(profile);
    worstRatio = Math.max(worstRatio, Math.max(median, p95));
    worstOverBound =
        Math.max(worstOverBound, Math.max(median / bounds[bound], p95 / bounds[bound + 1]));
    print(
        "%-11s %3d s  ours %6.3f / %6.3f ms  best plain %6.3f / %6.3f ms  ratio %.2f / %.2f"
            + " (at most %.2f / %.2f)  stated %5.2f ms (sharp: at most %5.2f)%n",
        profile,
        seconds,
        at(ours, 0.5),
        at(ours, 0.95),
        bestMedian,
        bestP95,
        median,
        p95,
        bounds[bound],
        bounds[bound + 1],
        at(statedMillis, 0.5),
        at(sharpMillis, 0.5));
  }

  private void drifting(LineProfile profile) {
    int few = Math.max(20, runs / 10);
    double[] ours = new double[few];
    for (int run = 0; run < few; run++) {
      SimulatedLine line = profile.line(77_000L + run).skew(80).wander(0.02);
      FollowedLine followed = new FollowedLine(line, run).until(600);
      ours[run] = followed.errorMillis();
      stated++;
      held += Math.abs(ours[run]) * 1e3 <= followed.view().uncertaintyMicros() ? 1 : 0;
    }
    print(
        "%-11s 600 s  80 ppm and wander: %6.3f / %6.3f ms%n",
        profile, at(ours, 0.5), at(ours, 0.95));
  }

  /** A quantile of the absolute values. */
  private static double at(double[] values, double quantile) {
    double[] sorted = Arrays.stream(values).map(Math::abs).sorted().toArray();
    return sorted[(int) Math.min(sorted.length - 1, Math.floor(quantile * sorted.length))];
  }

  private static void print(String format, Object... values) {
    System.out.printf(Locale.ROOT, format, values);
  }
}
