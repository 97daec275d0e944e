package thinclick.server.words;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.words.NextRung.Move;

/**
 * What a band does next: the one decision that the review's page, the lectern and the wall call.
 * Where something has to be mended first, that is it and the click stays; else the takes at this
 * drill, tempo and plan say what becomes of the click.
 *
 * @param advice what is said
 * @param move what becomes of the click; null where something else comes first
 */
public record NextTry(Advice advice, @Nullable Move move) {
  /**
   * Decides.
   *
   * @param outcomes of the takes at one drill, tempo and plan, the oldest first, this one last
   * @param first what has to be mended before the click changes; null for nothing
   * @param noVerdict what is said where the take cannot be judged
   */
  static NextTry after(List<Outcome> outcomes, @Nullable Advice first, Advice noVerdict) {
    if (first != null) {
      return new NextTry(first, null);
    }
    Move move = NextRung.after(outcomes);
    return new NextTry(
        switch (move) {
          case UP -> Advice.NEXT_RUNG;
          case ONCE_MORE -> Advice.ONCE_MORE;
          case STAY -> Advice.SAME_AGAIN;
          case DOWN -> Advice.RUNG_BACK;
          case DOWN_TWO -> Advice.TWO_RUNGS_BACK;
          case NO_VERDICT -> noVerdict;
        },
        move);
  }
}
