package thinclick.server.scoring;

import org.jspecify.annotations.Nullable;

/**
 * How far from the ensemble pulse an attack is still placed: what the take says, or the rule of the
 * smallest gap.
 *
 * @param millis the tolerance
 * @param byRule true where the take named none
 * @param smallestGapMillis the smallest gap between two written attacks of one part, after swing;
 *     null where no part has two
 */
record Tolerance(double millis, boolean byRule, @Nullable Double smallestGapMillis) {
  /** The widest a rule's tolerance gets, ms. */
  static final double WIDEST = 50;

  /** The narrowest, ms. */
  static final double NARROWEST = 20;

  /** The share of the smallest gap that the rule allows. */
  static final double OF_GAP = 0.2;

  /** Over this share of a part's own smallest gap luck alone would place attacks. */
  static final double CHANCE_OF_GAP = 0.35;

  static Tolerance of(Sheet sheet, double ratio) {
    double least = Double.POSITIVE_INFINITY;
    for (Chair chair : sheet.chairs) {
      least = Math.min(least, smallestGap(sheet, ratio, chair));
    }
    Double asked = sheet.take.toleranceMillis();
    double millis = asked != null ? asked : byRule(least);
    return new Tolerance(millis, asked == null, Double.isInfinite(least) ? null : least);
  }

  /** The rule: a fifth of the smallest gap, from 20 to 50 ms. */
  static double byRule(double smallestGapMillis) {
    return Math.min(WIDEST, Math.max(NARROWEST, OF_GAP * smallestGapMillis));
  }

  /** The smallest gap of one part, ms; infinite where it has no two attacks. */
  static double smallestGap(Sheet sheet, double ratio, Chair chair) {
    double least = Double.POSITIVE_INFINITY;
    double late = 2 * ratio / (1 + ratio) - 1;
    for (int k = 1; k < chair.part.attackSteps().size(); k++) {
      int a = chair.part.attackSteps().get(k - 1);
      int b = chair.part.attackSteps().get(k);
      double gap = (b + ((b & 1) == 0 ? 0 : late)) - (a + ((a & 1) == 0 ? 0 : late));
      least = Math.min(least, gap * sheet.stepMillis);
    }
    return least;
  }

  /** True where this part is so dense that luck alone would place its attacks. */
  boolean chanceWouldPlace(double smallestGap) {
    return millis > CHANCE_OF_GAP * smallestGap;
  }
}
