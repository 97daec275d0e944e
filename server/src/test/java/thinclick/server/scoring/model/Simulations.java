package thinclick.server.scoring.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.Function;
import java.util.function.IntPredicate;

/**
 * Simulated takes and how often the estimator's intervals hold the truth. Seeds run from 0; {@code
 * main} makes the full counts and prints the figures.
 */
final class Simulations {
  static final double TIMEKEEPER = 10;
  static final double MOTOR = 5;
  static final double GAIN = .5;

  static final IntPredicate FULL = s -> s % 2 == 0;
  static final IntPredicate OFFBEATS = s -> s % 2 == 1;
  static final IntPredicate CELL = s -> s % 16 != 0 && s % 16 % 3 == 0;

  /** All beats, then one and three, then one, then the one of every second bar; 16 bars each. */
  static final IntPredicate THINNING =
      s -> {
        int bar = s / 8;
        int in = s % 8;
        return bar < 16
            ? in % 2 == 0
            : bar < 32 ? in % 4 == 0 : in == 0 && (bar < 48 || bar % 2 == 0);
      };

  private static final IntPredicate[] HOCKET = {
    s -> s % 8 == 0 || s % 8 == 3 || s % 8 == 6,
    s -> s % 8 == 2 || s % 8 == 5 || s % 8 == 7,
    s -> s % 8 == 1 || s % 8 == 4 || s % 8 == 6,
    s -> s % 8 == 3 || s % 8 == 7
  };

  private static final double[][][] GAINS = {
    {{0, .3}, {.1, 0}},
    {{0, .2, .1}, {.1, 0, .2}, {.05, .25, 0}},
    {{0, .15, .1, .05}, {.2, 0, .05, .1}, {.1, .1, 0, .15}, {.05, .2, .1, 0}}
  };

  private Simulations() {}

  /** Shares of 90 % intervals that hold the truth. */
  record Solo(double gainMean, double gain, double timekeeper, double motor) {}

  static Solo solo(int runs, int bars, IntPredicate click, CoupledPlayers.Member player) {
    return solo(runs, bars, click, player, take -> take, true, GAIN, TIMEKEEPER);
  }

  static Solo solo(
      int runs,
      int bars,
      IntPredicate click,
      CoupledPlayers.Member player,
      Function<Performance, Performance> spoil,
      boolean screened,
      double gain,
      double timekeeper) {
    double mean = 0;
    int holdGain = 0;
    int holdTimekeeper = 0;
    int holdMotor = 0;
    for (int seed = 0; seed < runs; seed++) {
      Performance take =
          spoil.apply(
              new CoupledPlayers(500, 2)
                  .with(player)
                  .click(click)
                  .play(8 * bars, new Random(seed)));
      Tracks tracks = new Tracks(take);
      if (!screened) {
        Arrays.fill(tracks.screened(0).slip, false);
      }
      Track track = tracks.of(0, new int[0], Track.Before.LISTENED);
      Sweep sweep = Sweep.of(Fit.of(new Likelihood(track, Likelihood.Kind.RESTRICTED)));
      mean += sweep.gain(0) / runs;
      holdGain += sweep.gain(0, Normal.Z90).contains(gain) ? 1 : 0;
      holdTimekeeper += holds(sweep.timekeeperSd(.05, .95), timekeeper);
      holdMotor += holds(sweep.motorSd(.05, .95), MOTOR);
    }
    return new Solo(
        mean, (double) holdGain / runs, (double) holdTimekeeper / runs, (double) holdMotor / runs);
  }

  private static int holds(double[] interval, double truth) {
    return interval[0] <= truth && truth <= interval[1] ? 1 : 0;
  }

  static CoupledPlayers.Member player(IntPredicate part) {
    return new CoupledPlayers.Member(part).noise(TIMEKEEPER, MOTOR).followsClick(GAIN);
  }

  /** 3 % of the attacks moved by 80 ms, as a bad pad records them. */
  static Performance spoiled(Performance take) {
    Random random = new Random(Double.hashCode(take.voices().get(0).attacks().get(0).millis()));
    List<GridAttack> attacks = new ArrayList<>();
    for (GridAttack attack : take.voices().get(0).attacks()) {
      double off = random.nextDouble() < .03 ? (random.nextBoolean() ? 80 : -80) : 0;
      attacks.add(new GridAttack(attack.step(), attack.millis() + off));
    }
    return new Performance(
        take.beatMillis(),
        take.stepsPerBeat(),
        1,
        take.clickSteps(),
        List.of(Voice.inTheRoom("P0", attacks)));
  }

  /** Largest mean error of a gain, coverage of all 90 % intervals, takes that name a leader. */
  record Coupled(double worstBias, double meanBias, double gain, double named) {}

  static Coupled coupled(
      int runs, int players, boolean follow, IntPredicate click, double... means) {
    double[][] gains = GAINS[players - 2];
    double[][] errors = new double[players][players];
    int holds = 0;
    int count = 0;
    int named = 0;
    double sum = 0;
    for (int seed = 0; seed < runs; seed++) {
      CoupledPlayers band = new CoupledPlayers(500, 2).click(click);
      for (int i = 0; i < players; i++) {
        band.with(
            player(HOCKET[i])
                .followsClick(.4)
                .follows(follow ? gains[i] : new double[players])
                .means(means.length == 0 ? new double[] {0} : means));
      }
      Performance take = band.play(512, new Random(seed));
      Tracks tracks = new Tracks(take);
      for (int i = 0; i < players; i++) {
        int[] others = new int[players - 1];
        for (int j = 0, k = 0; j < players; j++) {
          if (j != i) {
            others[k++] = j;
          }
        }
        Track track = tracks.of(i, others, Track.Before.LISTENED);
        Sweep sweep = Sweep.of(Fit.of(new Likelihood(track, Likelihood.Kind.RESTRICTED)));
        for (int k = 0; k < others.length; k++) {
          int at = k + (track.clickGain >= 0 ? 1 : 0);
          double truth = follow ? gains[i][others[k]] : 0;
          errors[i][others[k]] += (sweep.gain(at) - truth) / runs;
          sum += sweep.gain(at) - truth;
          holds += sweep.gain(at, Normal.Z90).contains(truth) ? 1 : 0;
          count++;
        }
      }
      if (!follow) {
        boolean any =
            TimingModel.fit(take).coupling().pairs().stream()
                .anyMatch(pair -> pair.leader() != null);
        named += any ? 1 : 0;
      }
    }
    double worst = 0;
    for (double[] row : errors) {
      for (double error : row) {
        worst = Math.max(worst, Math.abs(error));
      }
    }
    return new Coupled(worst, sum / count, (double) holds / count, (double) named / runs);
  }

  /** Share of realised spreads inside 90 % intervals, and the intervals' mean width. */
  record Foretold(double inside, double width, int attacks) {}

  static Foretold foretold(int runs, int bars, int ahead, IntPredicate part, int every) {
    int inside = 0;
    double width = 0;
    int attacks = 0;
    int split = 8 * bars;
    IntPredicate next = s -> s % (8 * every) == 0;
    for (int seed = 0; seed < runs; seed++) {
      Performance all =
          new CoupledPlayers(500, 2)
              .with(player(part))
              .click(s -> s < split ? FULL.test(s) : next.test(s - split))
              .play(split + 8 * ahead, new Random(seed));
      List<GridAttack> played = new ArrayList<>();
      List<GridAttack> then = new ArrayList<>();
      for (GridAttack attack : all.voices().get(0).attacks()) {
        (attack.step() < split ? played : then).add(attack);
      }
      attacks = played.size();
      Performance take =
          new Performance(
              500,
              2,
              1,
              all.clickSteps().stream().filter(s -> s < split).toList(),
              List.of(Voice.inTheRoom("P0", played)));
      Track track = new Tracks(take).of(0, new int[0], Track.Before.LISTENED);
      Fit fit = Fit.of(new Likelihood(track, Likelihood.Kind.RESTRICTED));
      ThinnerClick plan =
          ThinnerClick.clicking(
              "thinner",
              then.stream().map(attack -> attack.step() - split).toList(),
              all.clickSteps().stream().filter(s -> s >= split).map(s -> s - split).toList());
      double[] found = new Forecaster(take, fit, Sweep.of(fit)).spread(plan, .05, .95);
      double mean = then.stream().mapToDouble(GridAttack::millis).average().orElseThrow();
      double squares = 0;
      for (GridAttack attack : then) {
        squares += (attack.millis() - mean) * (attack.millis() - mean);
      }
      double realised = Math.sqrt(squares / (then.size() - 1));
      inside += found[1] <= realised && realised <= found[2] ? 1 : 0;
      width += (found[2] - found[1]) / runs;
    }
    return new Foretold((double) inside / runs, width, attacks);
  }

  /** The players' own part of the drag: its mean, and how often 90 % and 95 % hold 0. */
  record Delayed(double own, double in90, double in95, double toldApart) {}

  static Delayed delayed(int runs, double late, boolean alternating) {
    double own = 0;
    int in90 = 0;
    int in95 = 0;
    int apart = 0;
    for (int seed = 0; seed < runs; seed++) {
      Performance take =
          new CoupledPlayers(500, 2)
              .with(
                  new CoupledPlayers.Member(FULL)
                      .noise(TIMEKEEPER, MOTOR)
                      .follows(0, .3)
                      .hears(late),
                  new CoupledPlayers.Member(alternating ? OFFBEATS : FULL)
                      .noise(TIMEKEEPER, MOTOR)
                      .follows(.1, 0)
                      .hears(late))
              .play(512, new Random(seed));
      DelayAccount account = TimingModel.fit(take).delay();
      double value = account.remainder().value();
      double half = account.remainder().interval().width() / 2;
      own += value / runs;
      in95 += Math.abs(value) <= half ? 1 : 0;
      in90 += Math.abs(value) <= half * Normal.Z90 / Normal.Z95 ? 1 : 0;
      apart += account.toldApart() ? 1 : 0;
    }
    return new Delayed(own, (double) in90 / runs, (double) in95 / runs, (double) apart / runs);
  }

  public static void main(String[] args) {
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : 400;
    print("offbeats, full click, 32 bars", solo(runs, 32, FULL, player(OFFBEATS)));
    print("beats, full click, 32 bars", solo(runs, 32, FULL, player(FULL)));
    print("cell, thinning, 64 bars", solo(runs, 64, THINNING, player(CELL)));
    for (boolean screened : new boolean[] {true, false}) {
      print(
          "cell, 3 % slips of 80 ms, " + (screened ? "screened" : "not screened"),
          solo(runs, 64, THINNING, player(CELL), Simulations::spoiled, screened, GAIN, TIMEKEEPER));
    }
    print("cell, swing 42 ms", solo(runs, 64, THINNING, player(CELL).means(0, 42)));
    print("cell, a tenth dropped", solo(runs, 64, THINNING, player(CELL).drops(.1)));
    print("cell, gain .3 to .7", solo(runs, 64, THINNING, player(CELL).followsClick(.3, .7)));
    print("forecast, 64 played, 16 bars, one", foretold(runs, 16, 16, OFFBEATS, 1));
    print("forecast, cell 80 played, one", foretold(runs, 32, 16, CELL, 1));
    print("forecast, cell 80, every second bar", foretold(runs, 32, 16, CELL, 2));
    print("forecast, cell 80, every fourth bar", foretold(runs, 32, 16, CELL, 4));
    print("forecast, cell 40, every second bar", foretold(runs, 16, 16, CELL, 2));
    for (int n = 2; n <= 4; n++) {
      print("gains, " + n + ", silence", coupled(runs, n, true, s -> false));
      print("gains, " + n + ", thinning", coupled(runs, n, true, THINNING));
    }
    print("gains, 2, swing 42 ms", coupled(runs, 2, true, THINNING, 0, 42));
    print("no coupling, silence", coupled(runs, 2, false, s -> false));
    print("no coupling, thinning", coupled(runs, 2, false, THINNING));
    print("no coupling, full click", coupled(runs, 2, false, FULL));
    for (double late : new double[] {10, 30, 60}) {
      print("heard " + late + " ms late, together", delayed(runs, late, false));
      print("heard " + late + " ms late, alternating", delayed(runs, late, true));
    }
  }

  private static void print(String what, Record figures) {
    System.out.printf(Locale.ROOT, "%-44s %s%n", what, figures);
  }
}
