package thinclick.client.standin;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Feel;
import thinclick.protocol.file.Part;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.StepGrid;

/**
 * One take through the ears and hands of a stand-in: attacks of others go in with their room time,
 * own attacks come out with theirs. Holds no clock; whoever drives it decides how fast time goes.
 *
 * <p>A hidden position x, in ms from the written grid, follows the model of {@link Timing}: it
 * wanders from step to step; a click at a step moves it by {@code -gain * r}; another's attack
 * moves it by {@code -gain * (r - z)}. Here r is the own attack at that step where there is one and
 * x elsewhere, and z the other's attack less that other's usual lean, learnt while the click
 * sounds.
 */
public final class Player {
  /** Before an attack the hand is under way and hears nothing any more, at most this long. */
  private static final double REACH_MILLIS = 80;

  /** How fast another's usual lean on the click is learnt, a share of the news at each attack. */
  private static final double LEARN = 0.05;

  /** What is played freely has dice of its own, so that the rest stays the same. */
  private static final long FREELY = 1_000_003;

  /** Another's attack further than this from a written one of theirs says nothing, in steps. */
  private static final double NEAR_STEPS = 0.4;

  /**
   * An attack that will be played.
   *
   * @param writtenStep the step it stands for
   * @param micros its room time
   * @param accent true where one is written
   * @param index its place in the part
   */
  public record Move(int writtenStep, long micros, boolean accent, int index) {}

  /** A written attack and the step it will be played at; -1 for the place of one that is not. */
  record Next(int written, int played, int index) {}

  private final Timing timing;
  private final Feel feel;
  private final StepGrid grid;
  private final Random random;
  private final ArrayDeque<Next> ahead = new ArrayDeque<>();
  private final Set<Integer> accents;
  private final Set<Long> clicked = new HashSet<>();
  private final Map<String, Part> others = new HashMap<>();
  private final Map<String, Double> usual = new HashMap<>();
  private final Map<Long, Double> own = new HashMap<>();
  private double x;
  private long at;

  /**
   * @param others the other players' parts, which a player has rehearsed and knows
   * @param clicks all clicks of the take
   * @param seed fixes the noise
   */
  public Player(
      Timing timing,
      Slip slip,
      Part part,
      List<Part> others,
      StepGrid grid,
      List<Click> clicks,
      long seed) {
    this.timing = timing;
    this.feel = part.feel();
    this.grid = grid;
    this.random = new Random(seed);
    this.accents = part.accentSteps() == null ? Set.of() : Set.copyOf(part.accentSteps());
    clicks.forEach(click -> clicked.add(click.step()));
    others.forEach(other -> this.others.put(other.player(), other));
    List<Next> moves = new ArrayList<>();
    for (int i = 0; i < part.attackSteps().size(); i++) {
      int written = part.attackSteps().get(i);
      int played = written + slip.shiftAt(grid.barOf(written));
      boolean dropped = random.nextDouble() < timing.dropShare();
      if (!dropped && played >= 0) {
        moves.add(new Next(written, played, i));
      }
    }
    moves.addAll(Freely.moves(part, grid, new Random(seed + FREELY)));
    moves.sort(Comparator.comparingInt(Next::played));
    moves.forEach(
        move -> {
          if (ahead.isEmpty() || ahead.getLast().played() < move.played()) {
            ahead.add(move); // two written attacks that fall on one place are one movement
          }
        });
    this.at = -1;
  }

  /** The room time at which the next attack must be settled; null when there is none left. */
  public @Nullable Long settleMicros() {
    Next next = ahead.peek();
    if (next == null) {
      return null;
    }
    double gapMillis = grid.stepMicros() / 1e3;
    double reach = Math.min(REACH_MILLIS, gapMillis / 2) + Math.max(0, -x - lean(next));
    return Math.round(grid.microsAt(next.played()) - reach * 1e3);
  }

  /** Settles the next attack; what is heard from now on comes too late for it. */
  public Move settle() {
    Next next = ahead.remove();
    walkTo(next.played());
    double attack = x + random.nextGaussian() * timing.motorMillis();
    own.put((long) next.played(), attack);
    long micros = Math.round(grid.microsAt(next.played()) + (attack + lean(next)) * 1e3);
    return new Move(next.written(), micros, accents.contains(next.written()), next.index());
  }

  /** The own steady lean, and what the part asks for on purpose, ms. */
  private double lean(Next next) {
    boolean asked = next.index() >= 0;
    return timing.leanMillis() + (asked ? feelAt(feel, next.written()) : 0);
  }

  private double feelAt(Feel of, long step) {
    return grid.onbeat(step) ? of.onbeat() : of.offbeat();
  }

  /** Leaves out what would have been played before {@code micros}: a player who comes in late. */
  public void skipTo(long micros) {
    while (!ahead.isEmpty() && grid.microsAt(ahead.element().played()) < micros) {
      ahead.remove();
    }
  }

  /** Another player's attack. */
  public void heard(String player, long micros) {
    Part part = others.get(player);
    if (part == null || timing.peerGain() == 0) {
      return;
    }
    Long step = nearest(part, micros);
    if (step == null) {
      return;
    }
    Next next = ahead.peek();
    walkTo(next == null ? step : Math.min(step, next.played() - 1L)); // x as it is by then
    double z = (micros - grid.microsAt(step)) / 1e3 - feelAt(part.feel(), step);
    double r = own.getOrDefault(step, x);
    double habit = usual.getOrDefault(player, 0.0);
    if (clickedSince(step - grid.stepsPerBar(), step)) {
      usual.put(player, habit + LEARN * (z - habit));
    }
    x -= timing.peerGain() / others.size() * (r - (z - habit));
  }

  private boolean clickedSince(long from, long to) {
    for (long step = from; step <= to; step++) {
      if (clicked.contains(step)) {
        return true;
      }
    }
    return false;
  }

  /**
   * The written step of another's part that this attack stands for, or null. A player hears it
   * against the pulse as the player has it, not against a grid that a silent click has left behind.
   */
  private @Nullable Long nearest(Part part, long micros) {
    double felt = micros - x * 1e3;
    long around = Math.round((felt - grid.startMicros()) / grid.stepMicros());
    Long best = null;
    double bestDistance = NEAR_STEPS * grid.stepMicros();
    for (long step = around - 1; step <= around + 1; step++) {
      double distance = Math.abs(felt - grid.microsAt(step));
      if (distance <= bestDistance
          && Collections.binarySearch(part.attackSteps(), (int) step) >= 0) {
        best = step;
        bestDistance = distance;
      }
    }
    return best;
  }

  private void walkTo(long step) {
    double beats = 1.0 / grid.stepsPerBeat();
    while (at < step) {
      if (clicked.contains(at)) {
        x -= timing.clickGain() * own.getOrDefault(at, x);
      }
      own.remove(at - 4L * grid.stepsPerBar());
      at++;
      x += random.nextGaussian() * timing.timekeeperMillis() * Math.sqrt(beats);
      if (timing.silentDriftPercent() != 0 && !clickedSince(at - grid.stepsPerBar(), at)) {
        x += timing.silentDriftPercent() / 100 * grid.stepMicros() / 1e3;
      }
    }
  }
}
