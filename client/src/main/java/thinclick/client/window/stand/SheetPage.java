package thinclick.client.window.stand;

import java.util.List;
import thinclick.client.window.look.Look;

/**
 * Where parts stand, and how large music is wanted there.
 *
 * @param width pixels
 * @param height pixels
 * @param scale how large text and music are wanted, 1 is usual
 * @param lanes how many players read each part, with marks in a lane of their own
 * @param others how many lines of other players are wanted below
 * @param space how large a staff space is to be, pixels, as on a page beside it; 0 for as large as
 *     suits the page
 * @param floor how large it is to be at the least, pixels, as where the part stands in a score; 0
 *     for any size
 */
record SheetPage(
    double width,
    double height,
    double scale,
    List<Integer> lanes,
    int others,
    double space,
    double floor) {
  /** A staff space of usual size, read from a metre away, pixels. */
  static final double USUAL_SPACE = 12;

  static final double LEAST_SPACE = 8;

  static final double MOST_SPACE = 28;

  /** So much larger than asked for music becomes to fill a page. */
  private static final double GROW = 1.5;

  /** With a size of its own. */
  SheetPage(double width, double height, double scale, List<Integer> lanes, int others) {
    this(width, height, scale, lanes, others, 0, 0);
  }

  /** The same for parts that are read by so many each. */
  SheetPage with(List<Integer> readers) {
    return new SheetPage(width, height, scale, readers, others, space, floor);
  }

  /** The same with music of a given size. */
  SheetPage of(double wanted) {
    return new SheetPage(width, height, scale, lanes, others, wanted, floor);
  }

  /** The same with music of a given size or larger. */
  SheetPage from(double least) {
    return new SheetPage(width, height, scale, lanes, others, space, least);
  }

  /** What music is not to be smaller than, where a page gives that. */
  double atLeast(double usual) {
    return space > 0 ? space : Math.max(floor, usual);
  }

  /** The least with the smallest text, the usual with the usual, the most with the largest. */
  double asked() {
    double smallest = Look.SMALLEST_TEXT / Look.USUAL_TEXT;
    double largest = Look.LARGEST_TEXT / Look.USUAL_TEXT;
    double space =
        scale < 1
            ? between(LEAST_SPACE, USUAL_SPACE, (scale - smallest) / (1 - smallest))
            : between(USUAL_SPACE, MOST_SPACE, (scale - 1) / (largest - 1));
    return Math.max(LEAST_SPACE, Math.min(MOST_SPACE, space));
  }

  private static double between(double from, double to, double share) {
    return from + (to - from) * share;
  }

  double most() {
    return space > 0 ? space : Math.min(MOST_SPACE, asked() * GROW);
  }

  /** The least staff space at which music is shared or turned; larger text asks for more. */
  static double floor(double scale) {
    return Math.min(MOST_SPACE, LEAST_SPACE * Math.max(1, scale));
  }
}
