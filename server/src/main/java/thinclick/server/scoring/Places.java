package thinclick.server.scoring;

/**
 * Where each step lies in time, ms from step 0: the written grid with its swing and, in silence
 * where the band moved its tempo, the followed tempo laid in.
 */
final class Places {
  private final int from;
  private final double[] millis;
  private final double[] bend;
  private final double stepMillis;
  private final double ratio;

  private Places(int from, double[] millis, double[] bend, double stepMillis, double ratio) {
    this.from = from;
    this.millis = millis;
    this.bend = bend;
    this.stepMillis = stepMillis;
    this.ratio = ratio;
  }

  /** The written grid with this ratio of long to short. */
  static Places nominal(Sheet sheet, double ratio, int reach) {
    return bent(sheet, ratio, reach, new double[sheet.steps + 2 * reach + 1]);
  }

  private static Places bent(Sheet sheet, double ratio, int reach, double[] bend) {
    double[] millis = new double[bend.length];
    double late = 2 * ratio / (1 + ratio) - 1;
    for (int i = 0; i < millis.length; i++) {
      int step = i - reach;
      double swung = (step & 1) == 0 ? step : step + late;
      millis[i] = swung * sheet.stepMillis + bend[i];
    }
    return new Places(-reach, millis, bend, sheet.stepMillis, ratio);
  }

  /** The same bends with another ratio. */
  Places withRatio(Sheet sheet, double other) {
    return bent(sheet, other, -from, bend);
  }

  /**
   * The same with a followed tempo laid into a stretch; what comes after keeps the distance that
   * the stretch ended with.
   *
   * @param first the first step of the stretch
   * @param more by how much each of its steps is moved, ms
   */
  Places bentBy(Sheet sheet, int first, double[] more) {
    double[] summed = bend.clone();
    for (int i = 0; i < summed.length; i++) {
      int k = i + from - first;
      if (k >= 0) {
        summed[i] += more[Math.min(k, more.length - 1)];
      }
    }
    return bent(sheet, ratio, -from, summed);
  }

  /** How far a step is laid from the written grid, ms. */
  double bendAt(int step) {
    return bend[Math.max(0, Math.min(bend.length - 1, step - from))];
  }

  /**
   * The phase at which the band would be on the click at a step, ms from its place. A band that has
   * moved on by many beats takes the next click for its nearest beat, whatever its number.
   */
  double homeAt(int step, double beatMillis) {
    double bend = bendAt(step);
    return Math.abs(bend) <= NEAR_BEATS * beatMillis
        ? -bend
        : Math.rint(bend / beatMillis) * beatMillis - bend;
  }

  private static final double NEAR_BEATS = 2;

  /** The place of a step; beyond what was laid out it goes on at the nominal tempo. */
  double at(int step) {
    int i = step - from;
    if (i < 0) {
      return millis[0] + i * stepMillis;
    }
    if (i >= millis.length) {
      return millis[millis.length - 1] + (i - millis.length + 1) * stepMillis;
    }
    return millis[i];
  }
}
