package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import thinclick.protocol.file.FreeSpan;

/**
 * A chair's free spans as instants: which attacks belong to them. Deep inside, nothing that is
 * written can be meant, so decoding never sees it; near their edges an attack may be an early entry
 * or a late ending, so decoding decides first and only what answers nothing is free.
 */
final class FreePlay {
  /** So many bars from an edge an attack may still mean what is written beyond it. */
  private static final int EDGE_BARS = 1;

  private final Sheet sheet;
  private final List<FreeSpan> spans;

  FreePlay(Sheet sheet, List<FreeSpan> spans) {
    this.sheet = sheet;
    this.spans = spans;
  }

  /** True where an instant lies so deep in a free span that nothing written can be meant. */
  boolean deep(double millis) {
    for (FreeSpan span : spans) {
      double from = sheet.nominalMillis((long) (span.fromBar() + EDGE_BARS) * sheet.stepsPerBar);
      double to = sheet.nominalMillis((long) (span.toBar() - EDGE_BARS) * sheet.stepsPerBar);
      if (millis >= from && millis < to) {
        return true;
      }
    }
    return false;
  }

  /**
   * True where an instant lies in a free span; half a step before a bar belongs to the bar.
   *
   * @param pulse where the pulse puts a step, ms from step 0
   */
  boolean holds(double millis, IntToDoubleFunction pulse) {
    for (FreeSpan span : spans) {
      if (millis >= pulse.applyAsDouble(span.fromBar() * sheet.stepsPerBar) - sheet.stepMillis / 2
          && millis
              < pulse.applyAsDouble(span.toBar() * sheet.stepsPerBar) - sheet.stepMillis / 2) {
        return true;
      }
    }
    return false;
  }

  /** The instants of a player's attacks in one span. */
  static List<Double> within(
      Sheet sheet, FreeSpan span, List<Double> free, IntToDoubleFunction pulse) {
    FreePlay one = new FreePlay(sheet, List.of(span));
    List<Double> inside = new ArrayList<>();
    for (double millis : free) {
      if (one.holds(millis, pulse)) {
        inside.add(millis);
      }
    }
    return inside;
  }
}
