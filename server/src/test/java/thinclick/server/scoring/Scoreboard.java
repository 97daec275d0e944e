package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Compares reviews with the truth of simulated takes. */
final class Scoreboard {
  int hits;
  int missed;
  int invented;
  final List<Double> lean = new ArrayList<>();
  final List<Double> spread = new ArrayList<>();
  final List<Double> drift = new ArrayList<>();

  /** Of stages of at least eight bars. */
  final List<Double> longDrift = new ArrayList<>();

  final List<Double> hold = new ArrayList<>();
  final List<Double> dropped = new ArrayList<>();
  final List<Double> added = new ArrayList<>();
  final List<String> worst = new ArrayList<>();

  void add(Truth truth) {
    Review review = Scorer.review(truth.take());
    Sheet sheet = new Sheet(truth.take());
    StringBuilder off = new StringBuilder();
    for (int i = 0; i < truth.players().size(); i++) {
      Truth.Player real = truth.players().get(i);
      PlayerReview found = review.players().get(i);
      Set<Integer> bars = new HashSet<>();
      for (Displacement one : found.displacements()) {
        for (int bar = one.fromBar(); bar < one.toBar(); bar++) {
          bars.add(bar);
        }
      }
      Set<Integer> both = new HashSet<>(bars);
      both.retainAll(real.displacedBars());
      hits += both.size();
      missed += real.displacedBars().size() - both.size();
      invented += bars.size() - both.size();
      if (!bars.equals(real.displacedBars())) {
        off.append(
            "\n    "
                + found.player()
                + " really "
                + real.displacedBars()
                + " found "
                + found.displacements()
                + " period "
                + found.shiftPeriodSteps()
                + " steps "
                + truth.take().parts().get(i).attackSteps().stream().limit(16).toList());
      }
      if (found.leanMillis().known() && real.written() > 0) {
        note(lean, found.leanMillis().get() - real.leanMillis(), 2, "lean", found, off);
        if (real.spreadMillis() > 0) {
          note(
              spread,
              100 * (found.spreadMillis().get() / real.spreadMillis() - 1),
              10,
              "spread %",
              found,
              off);
        }
      }
      note(
          dropped,
          100.0 * (found.dropped() - real.dropped()) / real.written(),
          1.5,
          "dropped %",
          found,
          off);
      note(
          added, 100.0 * (found.added() - real.added()) / real.written(), 3, "added %", found, off);
      if (found.hold().known()) {
        note(
            hold,
            found.hold().get() - 100.0 * real.placed() / real.written(),
            5,
            "hold",
            found,
            off);
      }
    }
    for (int s = 0; s < review.stages().size(); s++) {
      StageReview stage = review.stages().get(s);
      if (stage.driftPercent().known()) {
        double real =
            truth.driftPercent(sheet.stageFrom[s], sheet.stageFrom[s + 1], sheet.stepMillis, sheet);
        double error = stage.driftPercent().get() - real;
        drift.add(Math.abs(error));
        if (stage.toBar() - stage.fromBar() >= 8) {
          longDrift.add(Math.abs(error));
        }
        if (Math.abs(error) > 0.12) {
          off.append(
              String.format(Locale.ROOT, "\n    stage %d drift %.3f off %.3f", s, real, error));
        }
      }
    }
    if (off.length() > 0) {
      worst.add(
          truth.story()
              + " "
              + truth.take().meter()
              + " x"
              + truth.take().stepsPerBeat()
              + " tempo "
              + truth.take().tempo()
              + " bars "
              + sheet.steps / sheet.stepsPerBar
              + off);
    }
  }

  private static void note(
      List<Double> list,
      double error,
      double allowed,
      String what,
      PlayerReview player,
      StringBuilder off) {
    list.add(Math.abs(error));
    if (Math.abs(error) > allowed) {
      off.append(
          String.format(Locale.ROOT, "\n    %s %s off by %.2f", player.player(), what, error));
    }
  }

  double f1() {
    return hits + missed + invented == 0 ? 1 : 2.0 * hits / (2 * hits + missed + invented);
  }

  static double quantile(List<Double> values, double share) {
    if (values.isEmpty()) {
      return 0;
    }
    List<Double> sorted = new ArrayList<>(values);
    Collections.sort(sorted);
    return sorted.get((int) Math.min(sorted.size() - 1, Math.ceil(share * sorted.size()) - 1));
  }

  String summary() {
    return String.format(
        Locale.ROOT,
        "F1 %.4f (hits %d missed %d invented %d), 95th percentiles: lean %.2f ms, spread %.1f %%,"
            + " drift %.3f %% (eight bars %.3f %%), hold %.2f, dropped %.2f %%, added %.2f %%",
        f1(),
        hits,
        missed,
        invented,
        quantile(lean, 0.95),
        quantile(spread, 0.95),
        quantile(drift, 0.95),
        quantile(longDrift, 0.95),
        quantile(hold, 0.95),
        quantile(dropped, 0.95),
        quantile(added, 0.95));
  }

  /** Prints the figures of many seeds, for work on the decoder. */
  public static void main(String[] args) {
    int from = Integer.parseInt(args[0]);
    int to = Integer.parseInt(args[1]);
    boolean stock = args.length > 2 && args[2].equals("stock");
    Scoreboard board = new Scoreboard();
    long before = System.nanoTime();
    for (int seed = from; seed < to; seed++) {
      board.add(stock ? StockBands.of(seed) : Ensembles.of(seed));
    }
    long took = (System.nanoTime() - before) / 1_000_000;
    if (args.length > 3) {
      board.worst.forEach(System.out::println);
    }
    System.out.println(board.summary() + ", " + took + " ms, bad takes " + board.worst.size());
  }
}
