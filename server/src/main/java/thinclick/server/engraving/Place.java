package thinclick.server.engraving;

/**
 * What a mark stands for: where in the music, and how it is said aloud.
 *
 * @param bar the bar from 0; -1 where it belongs to no bar
 * @param step the step from bar 1; -1 where it belongs to no step
 * @param spoken what a reader of the screen says; empty for a mark that another one speaks for
 */
public record Place(int bar, int step, String spoken) {
  /** Furniture of the page: lines, clefs, text that belongs to no bar. */
  public static final Place NOWHERE = new Place(-1, -1, "");

  /** The same place, said by another mark. */
  public Place silent() {
    return spoken.isEmpty() ? this : new Place(bar, step, "");
  }

  /** A text of the page that belongs to no bar. */
  public static Place saying(String spoken) {
    return new Place(-1, -1, spoken);
  }
}
