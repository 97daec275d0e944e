package thinclick.server.scoring.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;

/**
 * A simulated band for tests: each player's hidden position moves by the timekeeper, is blurred by
 * the hand, and is corrected at clicks and at others' attacks. Its options break the estimator's
 * assumptions on purpose.
 */
final class CoupledPlayers {
  private final double beatMillis;
  private final int stepsPerBeat;
  private final List<Member> members = new ArrayList<>();
  private IntPredicate click = step -> false;
  private double noiseGrowth = 1;

  CoupledPlayers(double beatMillis, int stepsPerBeat) {
    this.beatMillis = beatMillis;
    this.stepsPerBeat = stepsPerBeat;
  }

  /** One simulated player. */
  static final class Member {
    private final IntPredicate part;
    private double timekeeper = 10;
    private double motor = 5;
    private double clickGain;
    private double laterClickGain = Double.NaN;
    private double[] gains = {};
    private double[] means = {0};
    private double tendency;
    private double heardLate;
    private double slipShare;
    private double slipMillis;
    private double dropShare;

    Member(IntPredicate part) {
      this.part = part;
    }

    Member noise(double timekeeperSd, double motorSd) {
      timekeeper = timekeeperSd;
      motor = motorSd;
      return this;
    }

    Member followsClick(double gain) {
      clickGain = gain;
      return this;
    }

    /** The gain to the click moves in a straight line from the first to the last step. */
    Member followsClick(double first, double last) {
      clickGain = first;
      laterClickGain = last;
      return this;
    }

    Member follows(double... others) {
      gains = others;
      return this;
    }

    Member means(double... byPlace) {
      means = byPlace;
      return this;
    }

    Member tendency(double millisPerBeat) {
      tendency = millisPerBeat;
      return this;
    }

    Member hears(double lateMillis) {
      heardLate = lateMillis;
      return this;
    }

    Member slips(double share, double millis) {
      slipShare = share;
      slipMillis = millis;
      return this;
    }

    Member drops(double share) {
      dropShare = share;
      return this;
    }

    private double gainTo(int other) {
      return other < gains.length ? gains[other] : 0;
    }

    private double clickGainAt(double progress) {
      return Double.isNaN(laterClickGain)
          ? clickGain
          : clickGain + progress * (laterClickGain - clickGain);
    }
  }

  CoupledPlayers with(Member... players) {
    members.addAll(List.of(players));
    return this;
  }

  CoupledPlayers click(IntPredicate sounds) {
    click = sounds;
    return this;
  }

  /** Timekeeper variance of a step of D beats is Vc D^growth; 1 is the model's own. */
  CoupledPlayers noiseGrowth(double exponent) {
    noiseGrowth = exponent;
    return this;
  }

  /** Plays steps 0 to {@code steps}, after sixteen beats of count-in. */
  Performance play(int steps, Random random) {
    int n = members.size();
    double[] x = new double[n];
    double beat = 1.0 / stepsPerBeat;
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < 16; k++) {
        x[i] = (1 - members.get(i).clickGainAt(0)) * x[i];
        x[i] +=
            members.get(i).clickGainAt(0) == 0
                ? 0
                : members.get(i).timekeeper * random.nextGaussian();
      }
    }
    double[] attack = new double[n];
    List<List<GridAttack>> attacks = new ArrayList<>();
    List<Integer> clicks = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      attacks.add(new ArrayList<>());
    }
    for (int step = 0; step < steps; step++) {
      boolean clicked = click.test(step);
      if (clicked) {
        clicks.add(step);
      }
      for (int i = 0; i < n; i++) {
        Member member = members.get(i);
        attack[i] = Double.NaN;
        if (member.part.test(step) && random.nextDouble() >= member.dropShare) {
          // What the player and the others hear: the attack with its mean removed.
          attack[i] = x[i] + member.motor * random.nextGaussian();
          if (random.nextDouble() < member.slipShare) {
            attack[i] += random.nextBoolean() ? member.slipMillis : -member.slipMillis;
          }
          double mean = member.means[Math.floorMod(step, member.means.length)];
          attacks.get(i).add(new GridAttack(step, attack[i] + mean));
        }
      }
      for (int i = 0; i < n; i++) {
        Member member = members.get(i);
        double r = Double.isNaN(attack[i]) ? x[i] : attack[i];
        double moved = clicked ? -member.clickGainAt((double) step / steps) * r : 0;
        for (int j = 0; j < n; j++) {
          if (j != i && !Double.isNaN(attack[j])) {
            moved -= member.gainTo(j) * (r - attack[j] - member.heardLate);
          }
        }
        x[i] += moved + member.tendency * beat;
        x[i] += member.timekeeper * Math.sqrt(Math.pow(beat, noiseGrowth)) * random.nextGaussian();
      }
    }
    List<Voice> voices = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      voices.add(
          new Voice(
              "P" + i,
              attacks.get(i).size(),
              attacks.get(i),
              true,
              members.get(i).heardLate,
              List.of()));
    }
    return new Performance(beatMillis, stepsPerBeat, 1, clicks, voices);
  }
}
