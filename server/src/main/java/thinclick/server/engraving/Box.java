package thinclick.server.engraving;

/**
 * The rectangle a mark covers, in staff spaces, y downward.
 *
 * @param left its left side
 * @param top its upper side
 * @param right its right side
 * @param bottom its lower side
 */
public record Box(double left, double top, double right, double bottom) {
  /** True where the two share an area larger than a hair. */
  public boolean overlaps(Box other) {
    double hair = 1e-3;
    return left < other.right - hair
        && other.left < right - hair
        && top < other.bottom - hair
        && other.top < bottom - hair;
  }

  /** The smallest rectangle around both. */
  public Box with(Box other) {
    return new Box(
        Math.min(left, other.left),
        Math.min(top, other.top),
        Math.max(right, other.right),
        Math.max(bottom, other.bottom));
  }
}
