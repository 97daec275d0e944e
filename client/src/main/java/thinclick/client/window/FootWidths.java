package thinclick.client.window;

import org.jspecify.annotations.Nullable;

/**
 * How the foot's width is shared: two lines are enough for each of its texts wherever that can be,
 * since a third would push the page. What to tap on goes first, then others are broken into two.
 *
 * @param sentence what is to be done
 * @param taps what to tap on, 0 where it has no place
 * @param sound what is heard
 */
record FootWidths(double sentence, double taps, double sound) {
  /**
   * What a text asks for.
   *
   * @param one its width in one line
   * @param two the least width in which it takes two
   */
  record Span(double one, double two) {}

  /** The most of the foot that what is heard takes from a sentence that needs more lines. */
  private static final double MOST_FOR_SOUND = 0.4;

  /**
   * @param room all there is between the margins
   * @param gap between two texts
   * @param taps null where nothing is tapped
   */
  static FootWidths of(double room, double gap, Span sentence, @Nullable Span taps, Span sound) {
    double rest = room - gap;
    if (taps != null) {
      double between = rest - gap;
      for (double[] sides :
          new double[][] {
            {taps.one(), sound.one()}, {taps.one(), sound.two()}, {taps.two(), sound.two()}
          }) {
        if (between - sides[0] - sides[1] >= sentence.two()) {
          return new FootWidths(between - sides[0] - sides[1], sides[0], sides[1]);
        }
      }
    }
    double beside = Math.min(sound.two(), MOST_FOR_SOUND * room);
    for (double side : new double[] {sound.two(), sound.one()}) {
      if (rest - side >= sentence.two()) {
        beside = side;
      }
    }
    return new FootWidths(rest - beside, 0, beside);
  }
}
