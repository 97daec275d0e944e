package thinclick.server.scoring.model;

import java.util.List;

/**
 * A stage that has not been played: what would be written and what would click.
 *
 * @param plan its plain name
 * @param attackSteps the written steps, ascending, from 0 at the stage's start
 * @param clickSteps where it clicks, ascending, from 0 at the stage's start; where the last of them
 *     follows a silence of {@code silentBeats}, the forecast is the error there
 * @param silentBeats for a plan of silence: how many beats lie between the last click before it and
 *     the click that returns; 0 for a plan that goes on clicking
 */
public record ThinnerClick(
    String plan, List<Integer> attackSteps, List<Integer> clickSteps, double silentBeats) {
  public ThinnerClick {
    attackSteps = List.copyOf(attackSteps);
    clickSteps = List.copyOf(clickSteps);
  }

  /** A plan that goes on clicking. */
  public static ThinnerClick clicking(
      String plan, List<Integer> attackSteps, List<Integer> clickSteps) {
    return new ThinnerClick(plan, attackSteps, clickSteps, 0);
  }

  /** Silence until the click returns. */
  public static ThinnerClick silent(String plan, double silentBeats) {
    return new ThinnerClick(plan, List.of(), List.of(), silentBeats);
  }
}
