package thinclick.server.dealing;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import thinclick.protocol.file.Drill;

/**
 * Seeks figures that interlock: as dense as their roles want, where nobody else of those they keep
 * apart from attacks, on steps that nobody covers yet, off the beat as much as the level asks for.
 *
 * <p>Each figure in turn is improved a step at a time until nothing gets better; the seed settles
 * where it begins.
 */
final class Interlock {
  private static final double DENSITY_COST = 3;
  private static final double COINCIDENCE_COST = 4;
  private static final double COVERED_COST = 0.5;
  private static final double UPBEAT_COST = 1.5;
  private static final double RUN_COST = 2;
  private static final double TURN_COST = 20;
  private static final double CHANCE_COST = 0.6;
  private static final int MOST_COVERED = 4;

  /** The share of attacks off the beat that level 1 asks for, and how much more each level does. */
  private static final double LEAST_UPBEATS = 0.3;

  private static final double UPBEATS_A_LEVEL = 0.06;
  private static final int MOST_SWEEPS = 8;

  private final int steps;
  private final int stepsPerBeat;
  private final int level;
  private final SplittableRandom random;

  /** How many of those who keep apart attack each step, and how many in all. */
  private final int[] apart;

  private final int[] sounding;

  Interlock(DealFrame frame, int steps) {
    this.steps = steps;
    this.stepsPerBeat = frame.drill().stepsPerBeat();
    this.level = frame.drill().level();
    this.random = new SplittableRandom(frame.seed());
    this.apart = new int[steps];
    this.sounding = new int[steps];
  }

  /** A figure that stands, whoever else plays. */
  void stand(Role role, Drill.Cell cell) {
    for (int step : cell.attackSteps()) {
      add(role, step, 1);
    }
  }

  private void add(Role role, int step, int count) {
    sounding[step] += count;
    if (Role.KEEP_APART.contains(role)) {
      apart[step] += count;
    }
  }

  /** A figure for each role. */
  List<Drill.Cell> seek(List<Role> roles) {
    List<Figure> figures = roles.stream().map(Figure::new).toList();
    figures.forEach(Figure::begin);
    boolean better = true;
    for (int sweep = 0; better && sweep < MOST_SWEEPS; sweep++) {
      better = false;
      for (Figure figure : figures) {
        better |= figure.improve();
      }
    }
    return figures.stream().map(Figure::cell).toList();
  }

  /** One figure while it is being sought. */
  private final class Figure {
    private final Role role;
    private final int wanted;
    private final boolean[] attacks = new boolean[steps];

    /** What an attack on each step costs by itself, chance included, so that figures differ. */
    private final double[] costs = new double[steps];

    private final double[] chance = new double[steps];
    private int count;
    private int upbeats;

    Figure(Role role) {
      this.role = role;
      this.wanted = Math.max(1, (int) Math.round(role.density(level) * steps));
      for (int step = 0; step < steps; step++) {
        chance[step] = CHANCE_COST * random.nextDouble();
      }
    }

    void begin() {
      for (int i = 0; i < wanted; i++) {
        int step = random.nextInt(steps);
        if (!attacks[step]) {
          flip(step);
          add(role, step, 1);
        }
      }
    }

    private void flip(int step) {
      attacks[step] ^= true;
      int by = attacks[step] ? 1 : -1;
      count += by;
      upbeats += step % stepsPerBeat == 0 ? 0 : by;
    }

    /** Changes it for the better while the others stand; true where anything was changed. */
    boolean improve() {
      sound(-1);
      for (int step = 0; step < steps; step++) {
        boolean early = role == Role.ANSWER && step < steps / 2;
        costs[step] =
            COINCIDENCE_COST * apart[step]
                + COVERED_COST * Math.min(sounding[step], MOST_COVERED)
                + (early ? TURN_COST : 0)
                + chance[step];
      }
      boolean changed = false;
      while (change()) {
        changed = true;
      }
      sound(1);
      return changed;
    }

    private void sound(int by) {
      for (int step = 0; step < steps; step++) {
        if (attacks[step]) {
          add(role, step, by);
        }
      }
    }

    /** The best single change: an attack more, one less, or one moved anywhere. */
    private boolean change() {
      double now = shape();
      double most = 1e-9;
      int bestOut = -1;
      int bestIn = -1;
      for (int out = -1; out < steps; out++) {
        if (out >= 0 && !attacks[out]) {
          continue;
        }
        double without = out < 0 ? 0 : take(out);
        for (int in = -1; in < steps; in++) {
          if (in >= 0 && (attacks[in] || in == out)) {
            continue;
          }
          double with = in < 0 ? 0 : take(in);
          double gain = now - shape() - without - with;
          if (gain > most) {
            most = gain;
            bestOut = out;
            bestIn = in;
          }
          if (in >= 0) {
            take(in);
          }
        }
        if (out >= 0) {
          take(out);
        }
      }
      if (bestOut >= 0) {
        flip(bestOut);
      }
      if (bestIn >= 0) {
        flip(bestIn);
      }
      return bestOut >= 0 || bestIn >= 0;
    }

    /** Flips a step and answers what its own costs and the runs through it change by. */
    private double take(int step) {
      double before = RUN_COST * runs(step);
      flip(step);
      double after = RUN_COST * runs(step);
      return (attacks[step] ? costs[step] : -costs[step]) + after - before;
    }

    /** Runs of three attacks that a step belongs to. */
    private int runs(int step) {
      int runs = 0;
      for (int first = step - 2; first <= step; first++) {
        runs += at(first) && at(first + 1) && at(first + 2) ? 1 : 0;
      }
      return runs;
    }

    private boolean at(int step) {
      return attacks[Math.floorMod(step, steps)];
    }

    /** What density and upbeats cost; a figure without attacks is out of the question. */
    private double shape() {
      if (count == 0) {
        return 1e9;
      }
      double wantedUpbeats = count * (LEAST_UPBEATS + UPBEATS_A_LEVEL * (level - 1));
      return DENSITY_COST * Math.abs(count - wanted)
          + UPBEAT_COST * Math.max(0, wantedUpbeats - upbeats);
    }

    Drill.Cell cell() {
      List<Integer> at = new ArrayList<>();
      for (int step = 0; step < steps; step++) {
        if (attacks[step]) {
          at.add(step);
        }
      }
      return Drill.Cell.of(steps, at);
    }
  }
}
