package thinclick.client.window.wall;

import java.util.List;
import java.util.regex.Pattern;

/**
 * What hangs on the wall at one moment: few words, no names.
 *
 * @param large what is read first; empty for nothing
 * @param above the line over it
 * @param below the line under it
 * @param ribbon the stages of the take that was played; empty where none is shown
 * @param held under which stage the words of {@code heldSays} stand; -1 for none
 * @param heldSays what clicked in the thinnest stage that was held
 */
public record WallPage(
    String above, String large, String below, List<Stretch> ribbon, int held, String heldSays) {
  /** More words than these cannot be read in passing. */
  public static final int MOST_WORDS = 12;

  private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}][^\\s]*");

  /**
   * A stage as a stretch of the ribbon.
   *
   * @param bars its length
   * @param holdShare what was placed of what was written, 0 to 1; negative where it is not known
   * @param clicksPerBar how densely it is hatched
   */
  public record Stretch(int bars, double holdShare, double clicksPerBar) {}

  public WallPage {
    ribbon = List.copyOf(ribbon);
  }

  /** A page of words alone. */
  static WallPage saying(String above, String large, String below) {
    return new WallPage(above, large, below, List.of(), -1, "");
  }

  /** How many words it has, numbers among them. */
  public int words() {
    return words(above) + words(large) + words(below) + words(heldSays);
  }

  static int words(String text) {
    return (int) WORD.matcher(text).results().count();
  }
}
