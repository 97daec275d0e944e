package thinclick.server.engraving;

/**
 * One turn of a grouping that is laid over the bars.
 *
 * @param start its first step
 * @param length its length in steps
 * @param remark what is said above its beginning: {@code "meets the one, bar 4"}; empty for nothing
 */
public record Grouping(int start, int length, String remark) {
  /** The first step after it. */
  public int end() {
    return start + length;
  }
}
