package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;

/**
 * A simulated band, built up by hand or by seed, then played: written parts, a course of the slow
 * position for every player, leans, noise, drops, additions, episodes.
 */
final class Band {
  /** One written attack: what the player made of it. */
  private static final long START_MICROS = 5_000_000;

  Meter meter = Meter.FOUR_FOUR;
  int stepsPerBeat = 2;
  double tempo = 120;
  Swing swing = Swing.STRAIGHT;

  /** The ratio really played. */
  double ratio = 1;

  Double tolerance = null;
  List<Stage> stages = new ArrayList<>();
  final List<Member> members = new ArrayList<>();

  /** The slow position all share, ms from the written grid, by step; filled by {@link #course}. */
  double[] common = {};

  final StringBuilder story = new StringBuilder();

  /** One member of the band. */
  static final class Member {
    String name = "";
    int[] steps = {};
    double lean;
    double noise = 8;
    double drop;
    double add;

    /** Additions fall on other steps, with noise, instead of anywhere in time. */
    boolean addOnGrid;

    /** Own slow wander, ms, by step; null for none. */
    double[] wander;

    /** Displacement by bar. */
    int[] shiftByBar = {};

    double uncertainty;

    /** Second strokes of a flam: share of attacks that get one. */
    double flam;

    /** Nothing is played before this step. */
    int playsFrom;

    /** Extra taps after the end, in beats after the last step. */
    int tapsAfter;
  }

  int bars() {
    return stages.stream().mapToInt(Stage::bars).sum();
  }

  int stepsPerBar() {
    return meter.stepsPerBar(stepsPerBeat);
  }

  int steps() {
    return bars() * stepsPerBar();
  }

  double stepMillis() {
    return 60_000 / (tempo * stepsPerBeat);
  }

  /** A grid place after the swing really played. */
  double place(int step) {
    double late = 2 * ratio / (1 + ratio) - 1;
    return (step + ((step & 1) == 0 ? 0 : late)) * stepMillis();
  }

  private double commonAt(int step) {
    return common.length == 0 ? 0 : common[Math.max(0, Math.min(common.length - 1, step))];
  }

  private static double wanderAt(Member member, int step) {
    return member.wander == null
        ? 0
        : member.wander[Math.max(0, Math.min(member.wander.length - 1, step))];
  }

  Truth play(Random random) {
    int steps = steps();
    double[] pulse = new double[steps];
    for (int s = 0; s < steps; s++) {
      double sum = 0;
      for (Member member : members) {
        sum += member.lean + wanderAt(member, s);
      }
      pulse[s] = place(s) + commonAt(s) + sum / members.size();
    }
    if (members.size() == 1) {
      for (int s = 0; s < steps; s++) {
        pulse[s] = place(s); // a single player is judged against the click
      }
    }
    List<Attack> attacks = new ArrayList<>();
    List<Part> parts = new ArrayList<>();
    List<Truth.Player> players = new ArrayList<>();
    double used = tolerance == null ? toleranceByRule() : tolerance;
    for (Member member : members) {
      players.add(playMember(member, random, pulse, used, attacks));
      List<Integer> written = new ArrayList<>();
      for (int step : member.steps) {
        written.add(step);
      }
      parts.add(
          new Part(
              member.name,
              written.isEmpty() ? 0 : written.get(0),
              member.uncertainty,
              written,
              null,
              null,
              null,
              null,
              null,
              null,
              null,
              false,
              List.of(),
              null));
    }
    Collections.shuffle(attacks, random);
    Take take =
        new Take(
            Take.FORMAT,
            Take.VERSION,
            "Simulated",
            meter,
            tempo,
            stepsPerBeat,
            swing,
            START_MICROS,
            tolerance,
            stages,
            parts,
            attacks,
            null,
            List.of());
    return new Truth(take, players, pulse, story.toString());
  }

  private double toleranceByRule() {
    double least = Double.POSITIVE_INFINITY;
    for (Member member : members) {
      for (int k = 1; k < member.steps.length; k++) {
        least = Math.min(least, place(member.steps[k]) - place(member.steps[k - 1]));
      }
    }
    return Math.min(50, Math.max(20, 0.2 * least));
  }

  private Truth.Player playMember(
      Member member, Random random, double[] pulse, double used, List<Attack> attacks) {
    Set<Integer> displaced = new TreeSet<>();
    int dropped = 0;
    int added = 0;
    int placed = 0;
    List<Double> asynchronies = new ArrayList<>();
    for (int step : member.steps) {
      int bar = step / stepsPerBar();
      int shift = member.shiftByBar.length == 0 ? 0 : member.shiftByBar[bar];
      if (random.nextDouble() < member.drop || step < member.playsFrom) {
        dropped++;
        continue;
      }
      int sounds = step + shift;
      double at =
          place(sounds)
              + commonAt(sounds)
              + member.lean
              + wanderAt(member, sounds)
              + member.noise * random.nextGaussian();
      attacks.add(tap(member.name, at));
      if (random.nextDouble() < member.flam) {
        attacks.add(tap(member.name, at + 4 + 20 * random.nextDouble()));
      }
      if (shift == 0) {
        double asynchrony = at - pulse[step];
        asynchronies.add(asynchrony);
      } else {
        displaced.add(bar);
      }
    }
    int additions = (int) Math.round(member.add * member.steps.length);
    Set<Integer> written = new TreeSet<>();
    for (int step : member.steps) {
      written.add(
          step + (member.shiftByBar.length == 0 ? 0 : member.shiftByBar[step / stepsPerBar()]));
    }
    for (int i = 0; i < additions; i++) {
      double at = random.nextDouble() * steps() * stepMillis();
      if (member.addOnGrid) {
        int step = random.nextInt(steps());
        if (written.contains(step)) {
          continue;
        }
        at = place(step) + commonAt(step) + member.lean + member.noise * random.nextGaussian();
      }
      if (apart(attacks, member.name, at)) {
        attacks.add(tap(member.name, at));
        added++;
      }
    }
    for (int i = 1; i <= member.tapsAfter; i++) {
      attacks.add(
          tap(
              member.name,
              place(steps()) + commonAt(steps() - 1) + (i - 1) * stepMillis() * stepsPerBeat));
      added++;
    }
    double mean = asynchronies.stream().mapToDouble(a -> a).average().orElse(0);
    double squares = asynchronies.stream().mapToDouble(a -> (a - mean) * (a - mean)).sum();
    double spread = asynchronies.size() < 2 ? 0 : Math.sqrt(squares / (asynchronies.size() - 1));
    double allowed = Math.max(member.uncertainty, members.size() == 1 ? 80 : 0);
    double removed = Math.max(-allowed, Math.min(allowed, mean));
    for (double one : asynchronies) {
      placed += Math.abs(one - removed) <= used ? 1 : 0;
    }
    return new Truth.Player(
        fill(displaced, member), member.steps.length, dropped, added, mean, spread, placed);
  }

  /** An addition closer than this to another attack of the player would be a double trigger. */
  private static boolean apart(List<Attack> attacks, String name, double at) {
    return attacks.stream()
        .filter(attack -> attack.player().equals(name))
        .allMatch(attack -> Math.abs(attack.micros() - tap(name, at).micros()) > 40_000);
  }

  /** Bars between displaced bars in which nothing was played belong to the episode. */
  private static Set<Integer> fill(Set<Integer> displaced, Member member) {
    Set<Integer> filled = new TreeSet<>(displaced);
    Integer before = null;
    for (int bar : displaced) {
      if (before != null) {
        boolean same = true;
        for (int b = before; b <= bar; b++) {
          same &= member.shiftByBar[b] == member.shiftByBar[bar];
        }
        for (int b = before + 1; same && b < bar; b++) {
          filled.add(b);
        }
      }
      before = bar;
    }
    return filled;
  }

  static Attack tap(String name, double millis) {
    return Attack.tap(name, START_MICROS + Math.round(millis * 1000));
  }
}
