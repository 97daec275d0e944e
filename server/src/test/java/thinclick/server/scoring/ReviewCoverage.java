package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import thinclick.protocol.music.Stage;

/**
 * How often the review's 95 % intervals hold the truth, from simulated attacks through decoding to
 * the figure. What a take's truth is meant to be an instance of (lean, spread, hold, gains, noises)
 * is held against the mean truth of all runs, what belongs to one take (drift, return, a forecast)
 * against that take's. Seeds run from 0.
 */
final class ReviewCoverage {
  private static final IntPredicate CELL = s -> s % 16 != 0 && s % 16 % 3 == 0;
  private static final IntPredicate[] HOCKET = {
    s -> s % 8 == 0 || s % 8 == 3 || s % 8 == 6,
    s -> s % 8 == 2 || s % 8 == 5 || s % 8 == 7,
    s -> s % 8 == 1 || s % 8 == 4 || s % 8 == 6,
    s -> s % 8 == 3 || s % 8 == 7
  };
  private static final Stage[] THINNING = {
    Stage.ofBeats(16, 1, 1, 2, 3, 4),
    Stage.ofBeats(16, 1, 1, 3),
    Stage.ofBeats(16, 1, 1),
    Stage.ofBeats(16, 2, 1)
  };

  private final Map<String, int[]> held = new TreeMap<>();
  private final Map<String, List<Pending>> pending = new LinkedHashMap<>();

  /** An interval that waits for the mean truth of all runs. */
  private record Pending(Interval interval, double truth) {}

  /** A figure whose interval shall hold this take's own truth. */
  private void own(String figure, Figure found, double truth) {
    if (found.interval() != null) {
      count(figure, found.interval().contains(truth));
    }
  }

  /** A figure whose interval shall hold what all takes have in common. */
  private void common(String figure, Object whose, Figure found, double truth) {
    if (found.interval() != null) {
      pending
          .computeIfAbsent(figure + "\t" + whose, missing -> new ArrayList<>())
          .add(new Pending(found.interval(), truth));
    }
  }

  private void count(String figure, boolean holds) {
    int[] counts = held.computeIfAbsent(figure, missing -> new int[2]);
    counts[0] += holds ? 1 : 0;
    counts[1]++;
  }

  private void settle(boolean squares) {
    pending.forEach(
        (name, all) -> {
          String figure = name.substring(0, name.indexOf('\t'));
          boolean root = squares && figure.equals("spread");
          double mean =
              all.stream()
                  .mapToDouble(one -> root ? one.truth * one.truth : one.truth)
                  .average()
                  .orElseThrow();
          double truth = root ? Math.sqrt(mean) : mean;
          all.forEach(one -> count(figure, one.interval.contains(truth)));
        });
    pending.clear();
  }

  /** The share of intervals that held the truth. */
  double of(String figure) {
    int[] counts = held.getOrDefault(figure, new int[2]);
    return counts[1] == 0 ? Double.NaN : (double) counts[0] / counts[1];
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder();
    held.forEach(
        (figure, counts) ->
            text.append(
                String.format(
                    Locale.ROOT,
                    " %s %.3f (%d)",
                    figure,
                    (double) counts[0] / counts[1],
                    counts[1])));
    return text.toString();
  }

  static ModelBand solo() {
    ModelBand band = new ModelBand(THINNING);
    ModelBand.Member ana = new ModelBand.Member("Ana", CELL);
    ana.lean = -12;
    return band.with(ana);
  }

  static ModelBand band(int players, double toClick, double toOthers, double drop, Stage... plan) {
    ModelBand band = new ModelBand(plan.length == 0 ? THINNING : plan);
    for (int i = 0; i < players; i++) {
      ModelBand.Member member = new ModelBand.Member("P" + i, HOCKET[i]);
      member.lean = 10 * (i % 2 == 0 ? -1 : 1) + 3 * i;
      member.toClick = toClick;
      member.toOthers = toOthers;
      member.drop = drop;
      band.with(member);
    }
    return band;
  }

  /** Plays and reviews one band so many times. */
  static ReviewCoverage of(ModelBand band, int runs) {
    ReviewCoverage coverage = new ReviewCoverage();
    for (int seed = 0; seed < runs; seed++) {
      ModelBand.Played played = band.play(new Random(seed));
      coverage.add(band, played, Scorer.review(played.take()));
    }
    coverage.settle(true);
    return coverage;
  }

  private void add(ModelBand band, ModelBand.Played played, Review review) {
    int n = band.members.size();
    for (int i = 0; i < n; i++) {
      PlayerReview player = review.players().get(i);
      ModelBand.Member member = band.members.get(i);
      common("lean", i, player.leanMillis(), played.leanMillis()[i]);
      common("spread", i, player.spreadMillis(), played.spreadMillis()[i]);
      common("hold", i, player.hold(), played.holdPercent()[i]);
      common("timekeeper", i, player.timekeeperMillis(), member.timekeeper);
      common("motor", i, player.motorMillis(), member.motor);
      common("clickGain", i, player.clickGain(), member.toClick);
      common("contrast", i, player.offbeatMinusOnbeatMillis(), 0);
      for (int j = 0; j < n; j++) {
        if (i != j && review.ensemble().gainsInterval() != null) {
          Interval interval = review.ensemble().gainsInterval().get(i).get(j);
          if (interval != null) {
            count("gains", interval.contains(member.toOthers));
          }
        }
      }
    }
    for (PairReview pair : review.ensemble().pairs()) {
      if (pair.difference().known()) {
        count("leaderNamed", pair.leader() != null);
      }
    }
    int from = 0;
    for (StageReview stage : review.stages()) {
      int to = from + 8 * (stage.toBar() - stage.fromBar());
      own("drift", stage.driftPercent(), played.driftPercent(from, to));
      from = to;
    }
    if (n > 1) {
      double[] pulse = played.pulseMillis();
      double sum = 0;
      int[] clicks = new Sheet(played.take()).clickSteps;
      for (int click : clicks) {
        sum += pulse[click];
      }
      if (clicks.length > 0) {
        common("offClick", 0, review.ensemble().offClickMillis(), sum / clicks.length);
      }
      for (Return back : review.ensemble().returns()) {
        own("return", back.errorMillis(), pulse[back.step()]);
      }
    }
  }

  /** Forecasts of a stage that is then played, from all that came before it. */
  static ReviewCoverage foretold(int runs, int every) {
    ReviewCoverage coverage = new ReviewCoverage();
    Stage played = Stage.ofBeats(16, 1, 1, 2, 3, 4);
    Stage half = Stage.ofBeats(16, 1, 1, 3);
    Stage ahead = Stage.ofBeats(16, every, 1);
    for (int seed = 0; seed < runs; seed++) {
      ModelBand band = new ModelBand(played, half, ahead);
      band.with(new ModelBand.Member("Ana", CELL));
      ModelBand.Played all = band.play(new Random(seed));
      Analysis whole = Scorer.analyse(all.take());
      long split = all.take().startMicros() + 256 * 250_000L - 125_000;
      ModelBand before = new ModelBand(played, half);
      before.with(new ModelBand.Member("Ana", s -> CELL.test(s)));
      thinclick.protocol.file.Take cut = before.play(new Random(seed)).take();
      cut =
          cut.withAttacks(
              all.take().attacks().stream().filter(one -> one.micros() < split).toList());
      double real = whole.review().players().get(0).stages().get(2).spreadMillis().orElse(0);
      for (ForecastReview forecast : Scorer.review(cut).players().get(0).forecasts()) {
        if (forecast.stage().equals(ahead)) {
          coverage.own("forecast", forecast.spreadMillis(), real);
        }
      }
    }
    return coverage;
  }

  public static void main(String[] args) {
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : 200;
    Stage silent = Stage.ofBeats(64, 1);
    Stage full = Stage.ofBeats(8, 1, 1, 2, 3, 4);
    print("one, thinning", of(solo(), runs));
    print("two, thinning", of(band(2, .4, .1, 0), runs));
    print("four, thinning", of(band(4, .4, .1, 0), runs));
    print("four, thinning, 5 % dropped", of(band(4, .4, .1, .05), runs));
    print("two, silence, coupled", of(band(2, .4, .15, 0, silent), runs));
    print("two, silence, uncoupled", of(band(2, .4, 0, 0, silent), runs));
    print("three, silence, uncoupled", of(band(3, .4, 0, 0, silent), runs));
    print(
        "four, click returns",
        of(band(4, .4, .1, 0, full, Stage.ofBeats(4, 1), full, Stage.ofBeats(4, 1), full), runs));
    print("forecast, one", foretold(runs, 1));
    print("forecast, every second bar", foretold(runs, 2));
    print("forecast, every fourth bar", foretold(runs, 4));
  }

  private static void print(String what, ReviewCoverage coverage) {
    System.out.println(String.format(Locale.ROOT, "%-30s", what) + coverage);
  }
}
