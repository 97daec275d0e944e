package thinclick.client.window.look;

import java.util.List;

/** A picture on a page, with the parts of it that an edge of the window is not to cut. */
public interface PictureParts {
  /** The parts, each whole in itself. */
  List<Part> parts();

  /** Whether all of it is kept whole as long as that has room; then its parts are. */
  default boolean isWhole() {
    return false;
  }

  /**
   * One of them.
   *
   * @param top pixels below the picture's upper edge
   * @param foot where it ends, pixels below the same
   */
  record Part(double top, double foot) {
    /** Both, and what is between them. */
    public Part with(Part other) {
      return new Part(Math.min(top, other.top), Math.max(foot, other.foot));
    }
  }
}
