package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;

/**
 * Seeded ensembles: 2 to 6 players, 4 to 14 ms of noise, up to 12 % dropped and 10 % added, drift
 * to 2 % in silence, swing, one or two displaced at once by one or two steps, clicks that return.
 */
final class Ensembles {
  private static final int[][] EIGHTHS = {
    {8, 0, 3},
    {8, 1, 4},
    {8, 3, 7},
    {8, 0, 3, 6},
    {8, 0, 2, 3, 5, 6},
    {8, 1, 3, 7},
    {8, 1, 3, 5, 7},
    {8, 0, 2, 4, 6},
    {8, 1, 2, 4, 7},
    {16, 0, 3, 6, 9, 12, 15},
    {16, 0, 3, 5, 8, 10, 13, 15},
    {16, 0, 3, 6, 10, 12},
    {16, 2, 4, 8, 11, 14},
    {16, 0, 3, 6, 10, 13},
    {16, 3, 7, 10, 15},
    {16, 1, 2, 3, 5, 7, 9, 11, 13},
    {32, 0, 3, 6, 9, 12, 15, 18, 21, 24, 27, 29, 31},
    {32, 0, 5, 10, 15, 20, 25, 30},
    {32, 0, 7, 14, 21, 28, 31},
    {8, 1, 2, 3, 5, 6, 7}
  };
  private static final int[][] THREE_FOUR = {
    {6, 0, 3}, {6, 1, 2, 4}, {12, 0, 4, 8}, {24, 0, 5, 10, 15, 20, 22}, {6, 0, 2, 3}
  };
  private static final int[][] SIX_EIGHT = {
    {6, 0, 2, 4}, {6, 1, 4}, {6, 2, 3, 5}, {24, 0, 5, 10, 15, 20, 22}, {6, 0, 3, 5}
  };
  private static final int[][] SIXTEENTHS = {
    {16, 0, 3, 6, 9, 12, 14},
    {16, 1, 4, 7, 11, 13},
    {16, 3, 6, 9, 13, 15},
    {16, 0, 3, 6, 10, 12},
    {16, 2, 6, 10, 14},
    {16, 0, 4, 7, 8, 12}
  };
  private static final int[][] TRIPLETS = {
    {12, 0, 2, 4, 6, 8, 10},
    {12, 0, 4, 8},
    {12, 1, 4, 7, 10},
    {12, 0, 2, 4, 5, 7, 9, 11},
    {12, 0, 3, 5, 6, 9, 11}
  };

  private Ensembles() {}

  static Truth of(long seed) {
    Random random = new Random(seed * 7919 + 17);
    Band band = new Band();
    int[][] cells = grid(band, random);
    band.stages = stages(band, random);
    int bars = band.bars();
    int players = 2 + random.nextInt(5);
    double drop = 0.12 * random.nextDouble();
    double add = 0.10 * random.nextDouble();
    double drift = (random.nextBoolean() ? 1 : -1) * 2 * random.nextDouble();
    boolean wanders = random.nextInt(3) == 0;
    band.story.append("seed ").append(seed);
    course(band, drift, random);
    for (int i = 0; i < players; i++) {
      Band.Member member = new Band.Member();
      member.name = "P" + (i + 1);
      member.steps = part(cells[random.nextInt(cells.length)], band, random);
      member.lean = 10 * random.nextGaussian();
      member.noise = 4 + 10 * random.nextDouble();
      member.drop = drop;
      member.add = add;
      member.addOnGrid = random.nextInt(3) == 0;
      member.shiftByBar = new int[bars];
      if (wanders) {
        member.wander = wander(band.steps(), 1 + 2 * random.nextDouble(), random);
      }
      band.members.add(member);
    }
    int episodes = random.nextInt(4);
    for (int e = 0; e < episodes; e++) {
      int length = 3 + random.nextInt(4);
      int from = random.nextInt(Math.max(1, bars - length));
      int together = 1 + random.nextInt(Math.min(2, Math.max(1, players - 1)));
      for (int t = 0; t < together; t++) {
        Band.Member member = band.members.get(random.nextInt(players));
        int shift = (random.nextBoolean() ? 1 : -1) * (1 + random.nextInt(2));
        Integer period = Shifts.of(member.steps, band.stepsPerBar()).period();
        if (period != null && Math.floorMod(shift, period) == 0) {
          continue;
        }
        boolean free = true;
        for (int b = Math.max(0, from - 1); b < Math.min(bars, from + length + 1); b++) {
          free &= member.shiftByBar[b] == 0;
        }
        if (free) {
          Arrays.fill(member.shiftByBar, from, Math.min(bars, from + length), shift);
          band.story.append(
              "; " + member.name + " by " + shift + " bars " + from + "-" + (from + length));
        }
      }
    }
    return band.play(random);
  }

  private static int[][] grid(Band band, Random random) {
    switch (random.nextInt(8)) {
      case 0 -> {
        band.meter = Meter.parse("3/4");
        band.tempo = 80 + random.nextInt(100);
        return THREE_FOUR;
      }
      case 1 -> {
        band.meter = Meter.parse("6/8");
        band.stepsPerBeat = 3;
        band.tempo = 50 + random.nextInt(50);
        return SIX_EIGHT;
      }
      case 2 -> {
        band.stepsPerBeat = 4;
        band.tempo = 50 + random.nextInt(50);
        return SIXTEENTHS;
      }
      case 3 -> {
        band.stepsPerBeat = 3;
        band.tempo = 60 + random.nextInt(70);
        return TRIPLETS;
      }
      default -> {
        band.tempo = 80 + random.nextInt(110);
        if (random.nextInt(3) == 0) {
          band.ratio = random.nextBoolean() ? 1.5 : 2.0;
          band.swing = random.nextBoolean() ? Swing.of(band.ratio) : Swing.BAND;
        }
        return EIGHTHS;
      }
    }
  }

  private static List<Stage> stages(Band band, Random random) {
    int beats = band.meter.beatsPerBar();
    List<Stage> stages = new ArrayList<>();
    Integer[] all = new Integer[beats];
    Arrays.setAll(all, i -> i + 1);
    int bars = random.nextBoolean() ? 4 : 8;
    stages.add(Stage.ofBeats(bars, 1, all));
    int more = 2 + random.nextInt(3);
    for (int i = 0; i < more; i++) {
      bars = random.nextBoolean() ? 4 : 8;
      switch (random.nextInt(6)) {
        case 0 -> stages.add(Stage.ofBeats(bars, 1, 1));
        case 1 -> stages.add(Stage.ofBeats(bars, 2, 1));
        case 2 -> stages.add(Stage.ofBeats(bars, 4, 1));
        case 3, 4 -> stages.add(Stage.ofBeats(bars, 1));
        default -> stages.add(Stage.ofBeats(bars, 1, beats));
      }
    }
    if (random.nextBoolean()) {
      stages.add(Stage.ofBeats(4, 1, all)); // the click returns
    }
    return stages;
  }

  /** In silence the tempo is off by the drift; a click draws the band back. */
  static void course(Band band, double driftPercent, Random random) {
    StepGrid grid = new StepGrid(band.meter, band.stepsPerBeat, band.tempo, Swing.STRAIGHT, 0);
    TreeSet<Long> clicks = new TreeSet<>();
    new ClickPlan(band.stages).clicks(grid).forEach(click -> clicks.add(click.step()));
    boolean ramp = random.nextBoolean();
    double draw = 0.15 + 0.35 * random.nextDouble();
    band.common = new double[band.steps()];
    double x = 0;
    for (int s = 0; s < band.common.length; s++) {
      band.common[s] = x;
      if (clicks.contains((long) s)) {
        x -= draw * x; // heard, then followed
      }
      Long last = clicks.floor((long) s);
      double silent = last == null ? s : s - last;
      double full = Math.min(1, silent / band.stepsPerBar());
      x += driftPercent / 100 * band.stepMillis() * (ramp ? full : silent >= 1 ? 1 : 0);
    }
  }

  /** A slow wander that is drawn back to nothing. */
  static double[] wander(int steps, double perStep, Random random) {
    return wander(steps, perStep, random, 0.08);
  }

  static double[] wander(int steps, double perStep, Random random, double back) {
    double[] wander = new double[steps];
    double x = 0;
    for (int s = 0; s < steps; s++) {
      x += -back * x + perStep * random.nextGaussian();
      wander[s] = x;
    }
    return wander;
  }

  static int[] part(int[] cell, Band band, Random random) {
    int cycle = cell[0];
    int entry = random.nextBoolean() ? 0 : random.nextInt(band.stepsPerBar());
    TreeSet<Integer> steps = new TreeSet<>();
    for (int start = entry; start < band.steps(); start += cycle) {
      for (int i = 1; i < cell.length; i++) {
        if (start + cell[i] < band.steps()) {
          steps.add(start + cell[i]);
        }
      }
    }
    return steps.stream().mapToInt(Integer::intValue).toArray();
  }
}
