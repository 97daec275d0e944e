package thinclick.server.engraving;

/**
 * Where steps and bar lines stand in all systems of a score, once it is known how wide a step is.
 */
final class Spacing {
  private final double firstX;
  private final double step;
  private final double usual;
  private final double[] distances;
  private final double end;

  /**
   * @param firstX where the first step of every system stands
   * @param usual how far before the first step of a bar its line stands where there is room for it
   * @param distances how far it stands before that of each bar
   * @param end how far before the end of its last step a system's lines end
   */
  Spacing(double firstX, double step, double usual, double[] distances, double end) {
    this.firstX = firstX;
    this.step = step;
    this.usual = usual;
    this.distances = distances;
    this.end = end;
  }

  /** Where the first step of every system stands. */
  double firstX() {
    return firstX;
  }

  /** How wide a step is. */
  double step() {
    return step;
  }

  /** How far before the first step of a bar its line stands. */
  double beforeBar(int bar) {
    return distances[bar];
  }

  /** The same where there is room for it. */
  double usual() {
    return usual;
  }

  /** How far before the end of its last step the lines end that end a system. */
  double end() {
    return end;
  }
}
