package thinclick.server.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;

/**
 * Players who answer what they hear, in 4/4 at 120 in eighths: each step a player closes half of
 * the distance to a click, and a share of the own to the attack of every other; a timekeeper
 * wanders by 10 ms a beat, a hand by 5.
 */
public final class Followers {
  private static final long START_MICROS = 3_000_000;

  private final Random random;
  private final List<Stage> stages;
  private final List<One> players = new ArrayList<>();

  /**
   * @param every a written attack every so many steps
   * @param follows the share that is closed at each attack of another
   * @param slows ms a beat by which the player slows alone
   * @param heardLate how late the others are heard, ms; 0 for in one room
   */
  private record One(
      String name, int every, int entry, double follows, double slows, double heardLate) {}

  public Followers(long seed, Stage... stages) {
    random = new Random(seed);
    this.stages = List.of(stages);
  }

  public Followers player(String name, int every, int entry, double follows) {
    return player(name, every, entry, follows, 0, 0);
  }

  Followers player(
      String name, int every, int entry, double follows, double slows, double heardLate) {
    players.add(new One(name, every, entry, follows, slows, heardLate));
    return this;
  }

  public Take take() {
    ClickPlan plan = new ClickPlan(stages);
    int steps = plan.bars() * 8;
    Set<Integer> clicks = clicks(plan);
    double[] at = new double[players.size()];
    List<Attack> attacks = new ArrayList<>();
    for (int step = 0; step < steps; step++) {
      double[] played = new double[at.length];
      for (int i = 0; i < at.length; i++) {
        played[i] = writes(players.get(i), step) ? at[i] + 5 * random.nextGaussian() : Double.NaN;
        if (!Double.isNaN(played[i])) {
          long micros = START_MICROS + step * 250_000L + Math.round(1_000 * played[i]);
          attacks.add(Attack.tap(players.get(i).name, micros));
        }
      }
      double[] next = at.clone();
      for (int i = 0; i < at.length; i++) {
        One one = players.get(i);
        double own = Double.isNaN(played[i]) ? at[i] : played[i];
        next[i] -= clicks.contains(step) ? .5 * own : 0;
        for (int j = 0; j < at.length; j++) {
          if (j != i && !Double.isNaN(played[j])) {
            next[i] -= one.follows * (own - played[j] - one.heardLate);
          }
        }
        next[i] += one.slows / 2 + 10 * Math.sqrt(.5) * random.nextGaussian();
      }
      at = next;
    }
    attacks.sort(Comparator.comparingLong(Attack::micros));
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        "Followers",
        Meter.FOUR_FOUR,
        120,
        2,
        Swing.STRAIGHT,
        START_MICROS,
        50.0,
        stages,
        players.stream().map(one -> part(one, steps)).toList(),
        attacks,
        null,
        List.of());
  }

  private static Set<Integer> clicks(ClickPlan plan) {
    Set<Integer> clicks = new HashSet<>();
    for (int i = 0; i < plan.stages().size(); i++) {
      int from = plan.fromBar(i) * 8;
      for (long step : plan.stages().get(i).clickedSteps(Meter.FOUR_FOUR, 2)) {
        clicks.add(from + (int) step);
      }
    }
    return clicks;
  }

  private static boolean writes(One one, int step) {
    return step >= one.entry && (step - one.entry) % one.every == 0;
  }

  private static Part part(One one, int steps) {
    List<Integer> written = new ArrayList<>();
    for (int step = 0; step < steps; step++) {
      if (writes(one, step)) {
        written.add(step);
      }
    }
    return Part.of(one.name, one.entry, written)
        .edited()
        .hearing(one.heardLate == 0 ? null : new Hearing(Hearing.Mode.AS_IT_ARRIVES, one.heardLate))
        .part();
  }
}
