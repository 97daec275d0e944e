package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;

/**
 * Players on the published timing model (a timekeeper, a motor, gains to the click and to each
 * other), recorded as a take of eighths at 120 with what was true of it.
 */
final class ModelBand {
  private static final long START = 3_000_000;
  private static final double STEP = 250;

  /** One player. */
  static final class Member {
    final String name;
    final IntPredicate part;
    double timekeeper = 10;
    double motor = 5;
    double toClick = 0.5;
    double toOthers;
    double lean;
    double drop;
    Hearing hearing;

    Member(String name, IntPredicate part) {
      this.name = name;
      this.part = part;
    }
  }

  /**
   * A take and its truth, by player.
   *
   * @param leanMillis mean distance of what was played from the true pulse
   * @param spreadMillis standard deviation of the same
   * @param holdPercent share of what is written that was played within 50 ms of it
   * @param pulseMillis the true pulse at each step, from the written place: the mean of the hidden
   *     positions, leans included; the click where one player is alone
   */
  record Played(
      Take take,
      double[] leanMillis,
      double[] spreadMillis,
      double[] holdPercent,
      double[] pulseMillis) {
    /** Least-squares slope of the pulse over steps, percent. */
    double driftPercent(int from, int to) {
      double middle = (from + to - 1) / 2.0;
      double products = 0;
      double squares = 0;
      for (int step = from; step < to; step++) {
        products += (step - middle) * pulseMillis[step];
        squares += (step - middle) * (step - middle);
      }
      return 100 * products / squares / STEP;
    }
  }

  final List<Member> members = new ArrayList<>();
  List<Stage> stages = List.of();

  ModelBand(Stage... stages) {
    this.stages = List.of(stages);
  }

  ModelBand with(Member member) {
    members.add(member);
    return this;
  }

  Played play(Random random) {
    int steps = 8 * stages.stream().mapToInt(Stage::bars).sum();
    TreeSet<Integer> clicks = new TreeSet<>();
    int first = 0;
    for (Stage stage : stages) {
      for (long step : stage.clickedSteps(Meter.FOUR_FOUR, 2)) {
        clicks.add(first + (int) step);
      }
      first += stage.bars() * 8;
    }
    int n = members.size();
    double[] x = new double[n];
    double[] attack = new double[n];
    double[] pulse = new double[steps];
    double[][] played = new double[n][steps];
    List<List<Integer>> written = new ArrayList<>();
    members.forEach(member -> written.add(new ArrayList<>()));
    List<Attack> attacks = new ArrayList<>();
    for (int step = 0; step < steps; step++) {
      for (int i = 0; i < n; i++) {
        Member member = members.get(i);
        pulse[step] += n == 1 ? 0 : (x[i] + member.lean) / n;
        attack[i] = Double.NaN;
        if (member.part.test(step)) {
          written.get(i).add(step);
          double at = x[i] + member.motor * random.nextGaussian();
          if (random.nextDouble() >= member.drop) {
            attack[i] = at;
            double micros = 1000 * (step * STEP + at + member.lean);
            attacks.add(Attack.tap(member.name, START + Math.round(micros)));
          }
        }
        played[i][step] = attack[i] + member.lean;
      }
      move(x, attack, clicks.contains(step), random);
    }
    return new Played(
        take(written, attacks),
        figures(played, pulse, written, 0),
        figures(played, pulse, written, 1),
        figures(played, pulse, written, 2),
        pulse);
  }

  private void move(double[] x, double[] attack, boolean click, Random random) {
    double[] moved = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      Member member = members.get(i);
      double r = Double.isNaN(attack[i]) ? x[i] : attack[i];
      moved[i] = click ? -member.toClick * r : 0;
      for (int j = 0; j < x.length; j++) {
        if (j != i && !Double.isNaN(attack[j])) {
          double late = member.hearing == null ? 0 : member.hearing.delayMillis();
          moved[i] -= member.toOthers * (r - attack[j] - late);
        }
      }
    }
    for (int i = 0; i < x.length; i++) {
      x[i] += moved[i] + members.get(i).timekeeper * Math.sqrt(.5) * random.nextGaussian();
    }
  }

  /** Of each player the mean (0), the standard deviation (1) or the hold (2). */
  private static double[] figures(
      double[][] played, double[] pulse, List<List<Integer>> written, int which) {
    double[] found = new double[played.length];
    for (int i = 0; i < found.length; i++) {
      double sum = 0;
      double squares = 0;
      int count = 0;
      List<Double> off = new ArrayList<>();
      for (int step : written.get(i)) {
        if (!Double.isNaN(played[i][step])) {
          double one = played[i][step] - pulse[step];
          off.add(one);
          sum += one;
          squares += one * one;
          count++;
        }
      }
      double mean = sum / count;
      double removed = played.length == 1 ? Math.max(-80, Math.min(80, mean)) : 0;
      long within = off.stream().filter(one -> Math.abs(one - removed) <= 50).count();
      found[i] =
          switch (which) {
            case 0 -> mean;
            case 1 -> Math.sqrt((squares - count * mean * mean) / (count - 1));
            default -> 100.0 * within / written.get(i).size();
          };
    }
    return found;
  }

  private Take take(List<List<Integer>> written, List<Attack> attacks) {
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < members.size(); i++) {
      parts.add(
          new Part(
              members.get(i).name,
              written.get(i).get(0),
              0,
              written.get(i),
              null,
              null,
              null,
              null,
              null,
              null,
              null,
              false,
              List.of(),
              members.get(i).hearing));
    }
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        "Simulated",
        Meter.FOUR_FOUR,
        120,
        2,
        Swing.STRAIGHT,
        START,
        50.0,
        stages,
        parts,
        attacks,
        null,
        List.of());
  }
}
