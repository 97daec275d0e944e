package thinclick.server.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntPredicate;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Feel;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Span;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;

/**
 * A band that plays as a test tells it: who plays what, and what goes wrong. Times are ms from bar
 * 1; noise is drawn from the seed, so that a take is the same at every run.
 */
public final class Band {
  static final long START_MICROS = 3_000_000;

  private final String title;
  private final double tempo;
  private final List<Stage> stages;
  private final Random random;
  private final List<Part> parts = new ArrayList<>();
  private final List<Attack> attacks = new ArrayList<>();
  private DoubleUnaryOperator warp = step -> 0;

  Band(String title, double tempo, long seed, Stage... stages) {
    this.title = title;
    this.tempo = tempo;
    this.stages = List.of(stages);
    random = new Random(seed);
  }

  /** The whole band is so many ms later at a step than the grid. */
  Band drifts(DoubleUnaryOperator millisAtStep) {
    warp = millisAtStep;
    return this;
  }

  /** One player of the band and what they do. */
  final class Player {
    private final Part part;
    private double spread = 8;
    private DoubleUnaryOperator lean = step -> 0;
    private IntUnaryOperator shift = step -> 0;
    private IntPredicate drops = step -> false;
    private List<Integer> played;

    Player(Part part) {
      this.part = part;
      played = part.attackSteps();
    }

    Player spread(double millis) {
      spread = millis;
      return this;
    }

    Player leans(DoubleUnaryOperator millisAtStep) {
      lean = millisAtStep;
      return this;
    }

    Player leans(double millis) {
      return leans(step -> millis);
    }

    /** Off by whole steps in bars from..to, to exclusive, counted from 0. */
    Player shifted(int steps, int fromBar, int toBar) {
      shift = step -> step / 8 >= fromBar && step / 8 < toBar ? steps : 0;
      return this;
    }

    Player drops(IntPredicate at) {
      drops = at;
      return this;
    }

    /** Plays other steps than those written. */
    Player playsInstead(List<Integer> steps) {
      played = steps;
      return this;
    }

    /** An attack nobody wrote, at so many steps, which may be a fraction. */
    Player adds(double atStep, int velocity) {
      attack(part.player(), millis(atStep) + random.nextGaussian() * spread, velocity);
      return this;
    }

    /** Plays; the last word on a player. */
    Band plays() {
      for (int step : played) {
        if (!drops.test(step)) {
          double at = millis(step + shift.applyAsInt(step)) + lean.applyAsDouble(step);
          attack(part.player(), at + random.nextGaussian() * spread, 80 + random.nextInt(20));
        }
      }
      return Band.this;
    }
  }

  Player player(String name, Integer... cell) {
    return player(Part.of(name, 0, over(8, List.of(cell))));
  }

  Player player(Part part) {
    parts.add(part);
    return new Player(part);
  }

  /** A cell repeated to the end of the take. */
  List<Integer> over(int steps, List<Integer> cell) {
    int end = 8 * stages.stream().mapToInt(Stage::bars).sum();
    return IntStream.range(0, end).filter(step -> cell.contains(step % steps)).boxed().toList();
  }

  static Part withFeel(Part part, double onbeat, double offbeat) {
    return part.edited().feelMillis(new Feel(onbeat, offbeat)).role("comping").part();
  }

  static Part withUncertainty(Part part, double millis) {
    return part.edited().uncertaintyMillis(millis).part();
  }

  Part away(Part part, int fromBar, int toBar) {
    double bar = 4 * 60e6 / tempo;
    return part.edited()
        .away(
            List.of(
                new Span(
                    START_MICROS + Math.round(fromBar * bar) - 50_000,
                    START_MICROS + Math.round(toBar * bar) - 50_000)))
        .part();
  }

  Take take() {
    attacks.sort(Comparator.comparingLong(Attack::micros));
    StepGrid grid = new StepGrid(Meter.FOUR_FOUR, 2, tempo, Swing.STRAIGHT, START_MICROS);
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        title,
        grid.meter(),
        tempo,
        2,
        Swing.STRAIGHT,
        START_MICROS,
        null,
        new ClickPlan(stages).stages(),
        parts,
        attacks,
        null,
        List.of());
  }

  private double millis(double step) {
    return step * 30_000 / tempo + warp.applyAsDouble(step);
  }

  private void attack(String player, double millis, int velocity) {
    long micros = START_MICROS + Math.round(millis * 1_000);
    attacks.add(new Attack(player, micros, velocity, null, null, null, false, false));
  }
}
