package thinclick.server.dealing;

import java.util.List;
import thinclick.protocol.file.Part;
import thinclick.protocol.music.StepGrid;

/** How far from the pulse an attack may lie and be placed. */
public final class Tolerance {
  /** The widest, milliseconds. */
  public static final double WIDEST_MILLIS = 50;

  /** The narrowest, milliseconds. */
  public static final double NARROWEST_MILLIS = 20;

  private static final double SHARE_OF_GAP = 0.2;

  private Tolerance() {}

  /**
   * A fifth of the smallest gap between two written attacks of one part, at least 20 and at most 50
   * milliseconds; the gap is taken after swing, and the smallest over all parts counts.
   */
  public static double millis(StepGrid grid, List<Part> parts) {
    double smallestMicros = Double.POSITIVE_INFINITY;
    for (Part part : parts) {
      List<Integer> steps = part.attackSteps();
      for (int i = 1; i < steps.size(); i++) {
        smallestMicros =
            Math.min(smallestMicros, grid.microsAt(steps.get(i)) - grid.microsAt(steps.get(i - 1)));
      }
    }
    return Math.min(
        WIDEST_MILLIS, Math.max(NARROWEST_MILLIS, SHARE_OF_GAP * smallestMicros / 1_000));
  }
}
