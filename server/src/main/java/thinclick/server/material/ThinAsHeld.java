package thinclick.server.material;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;

/**
 * The click by result inside one take: at the end of a period it is decided what clicks from two
 * bars later on. A period held at 90 % or more takes the next rung, one under 75 % goes back one,
 * else the rung stays, whatever the plan had meant to do. The thresholds are our own choice.
 *
 * <p>Periods shorter than four bars are judged several together, so that a change has come and been
 * heard before the next decision; where too few attacks were written for a verdict, the bars wait
 * and are judged together with the next ones.
 *
 * @param thinning the ladder in the take's meter
 * @param periodBars the drill's period
 */
public record ThinAsHeld(Thinning thinning, int periodBars) {
  /** Held at least so well, and the next rung comes, percent. */
  public static final double NEXT_AT = 90;

  /** Held worse than this, and the rung before comes back, percent. */
  public static final double BACK_UNDER = 75;

  /** Fewer written attacks than these are no verdict. */
  public static final int FEWEST_WRITTEN = 12;

  /** From the decision to the change. */
  public static final int BARS_AHEAD = 2;

  private static final int FEWEST_BARS = 4;

  /** What was decided. */
  public enum Move {
    /** The next rung. */
    THINNER,
    /** The same rung goes on. */
    SAME,
    /** The rung before. */
    FULLER,
    /** Too little was written; decided with the next bars. */
    NO_VERDICT
  }

  /**
   * A decision.
   *
   * @param fromBar where the click changes, or would
   * @param rung what clicks from there
   * @param stages the rest of the plan from there; null where the plan stays as it is
   */
  public record Decision(Move move, int fromBar, Rung rung, @Nullable List<Stage> stages) {}

  /** How many bars are judged together: whole periods, at least four bars. */
  public int judgedBars() {
    return (FEWEST_BARS + periodBars - 1) / periodBars * periodBars;
  }

  /** True where bars are judged when {@code bar} begins. */
  public boolean decidesAt(int bar) {
    return bar > 0 && bar % judgedBars() == 0;
  }

  /** The move for what was held. */
  public static Move move(int written, int placed) {
    if (written < FEWEST_WRITTEN) {
      return Move.NO_VERDICT;
    }
    double hold = 100.0 * placed / written;
    return hold >= NEXT_AT ? Move.THINNER : hold < BACK_UNDER ? Move.FULLER : Move.SAME;
  }

  /**
   * Decides.
   *
   * @param plan the plan as it stands
   * @param bar the bar that begins; the bars before it were judged
   * @param written written attacks of the judged bars, all players
   * @param placed those of them that were placed
   * @param seed draws silent bars
   */
  public Decision decide(ClickPlan plan, int bar, int written, int placed, long seed) {
    Move move = move(written, placed);
    int fromBar = bar + BARS_AHEAD;
    Rung sounded = thinning.at(plan.stages().get(plan.stageAt(bar - 1)));
    Rung rung =
        switch (move) {
          case THINNER -> Thinning.thinner(sounded);
          case FULLER -> Thinning.fuller(sounded);
          case SAME, NO_VERDICT -> sounded;
        };
    int left = plan.bars() - fromBar;
    if (left <= 0) {
      return new Decision(move, fromBar, rung, null);
    }
    List<Stage> rest = List.of(thinning.stage(rung, left, seed));
    boolean same = thinning.alikeFrom(plan, fromBar, rest);
    return new Decision(move, fromBar, rung, same ? null : rest);
  }
}
