package thinclick.server.scoring;

/**
 * Where each step lies in time, ms from step 0: the written grid with its swing and, in silence
 * where the band moved its tempo, the followed tempo laid in.
 */
final class Places {
  private final int from;
  private final double[] millis;
  private final double stepMillis;

  private Places(int from, double[] millis, double stepMillis) {
    this.from = from;
    this.millis = millis;
    this.stepMillis = stepMillis;
  }

  /** Gives the distance of a step from its nominal place, ms. */
  @FunctionalInterface
  interface Bend {
    double at(int step);
  }

  /** The written grid with this ratio of long to short and no bend. */
  static Places nominal(Sheet sheet, double ratio, int reach) {
    return bent(sheet, ratio, reach, step -> 0);
  }

  static Places bent(Sheet sheet, double ratio, int reach, Bend bend) {
    double[] millis = new double[sheet.steps + 2 * reach + 1];
    double late = 2 * ratio / (1 + ratio) - 1;
    for (int i = 0; i < millis.length; i++) {
      int step = i - reach;
      double swung = (step & 1) == 0 ? step : step + late;
      millis[i] = swung * sheet.stepMillis + bend.at(step);
    }
    return new Places(-reach, millis, sheet.stepMillis);
  }

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
