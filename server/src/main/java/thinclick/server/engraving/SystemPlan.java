package thinclick.server.engraving;

/**
 * Which bars stand in one system and what is said about them.
 *
 * @param firstBar its first bar in the part, from 0
 * @param bars 1 to 4
 * @param repeatFrom true where a repeat begins with it
 * @param repeatTimes how often the repeat that ends with it is played; 1 where none ends, {@link
 *     #ROUND} where it goes round for as long as the take lasts
 * @param direction what stands above it: the stage of the click; empty for nothing
 * @param directionBar above which of its bars that stands, from 0
 * @param last true where the part ends with it
 */
public record SystemPlan(
    int firstBar,
    int bars,
    boolean repeatFrom,
    int repeatTimes,
    String direction,
    int directionBar,
    boolean last) {
  /** Played again and again. */
  public static final int ROUND = 0;

  public SystemPlan {
    if (bars < 1 || bars > 4 || repeatTimes < ROUND) {
      throw new IllegalArgumentException(bars + " bars, " + repeatTimes + " times");
    }
    if (directionBar < 0 || directionBar >= bars) {
      throw new IllegalArgumentException("words above bar " + directionBar + " of " + bars);
    }
  }

  /** With what is said above it at its beginning. */
  public SystemPlan(
      int firstBar, int bars, boolean repeatFrom, int repeatTimes, String direction, boolean last) {
    this(firstBar, bars, repeatFrom, repeatTimes, direction, 0, last);
  }

  /** The same with other words above it. */
  public SystemPlan saying(String words) {
    return new SystemPlan(firstBar, bars, repeatFrom, repeatTimes, words, directionBar, last);
  }

  /** The number of its first bar as the reader counts, from 1. */
  int number() {
    return firstBar + 1;
  }

  boolean repeatTo() {
    return repeatTimes != 1;
  }
}
