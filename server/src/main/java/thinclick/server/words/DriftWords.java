package thinclick.server.words;

import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Meter;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.StageReview;

/**
 * What the tables say of a drift, the same on the screen, on paper and in the terminal: slower or
 * faster with its range, and no side where the range, as it is shown, leaves open which.
 */
public final class DriftWords {
  /** A slower or faster tempo is spoken of from this on, percent. */
  private static final double LEAST = 0.5;

  private DriftWords() {}

  /** Large enough to be spoken of, and told apart from steady: below it, the pulse held. */
  public static boolean matters(Figure drift) {
    return drift.known() && Math.abs(drift.get()) >= LEAST && side(drift) != 0;
  }

  /** Of a stage; null where it is not known. A band that hears every beat cannot drift from it. */
  public static @Nullable Said of(StageReview stage, Meter meter) {
    return stage.heldByTheClick(meter) ? Said.of("drift.held") : of(stage.driftPercent());
  }

  /** "0.5 % slower (0.3–0.8 %)", "steady, as far as can be told"; null where it is not known. */
  public static @Nullable Said of(Figure drift) {
    if (!drift.known()) {
      return null;
    }
    Interval range = drift.interval();
    int side = side(drift);
    if (range == null || side == 0) {
      return Said.of("drift.open");
    }
    Quantity size = Quantity.drift(drift).size();
    return Said.of(
        side > 0 ? "drift.slower" : "drift.faster",
        size,
        size.at(side > 0 ? range.low() : -range.high()),
        size.at(side > 0 ? range.high() : -range.low()));
  }

  /** 1 for slower, -1 for faster; 0 where an end of the range, as it is shown, is 0 or beyond. */
  private static int side(Figure drift) {
    Interval range = drift.interval();
    if (range == null) {
      return 0;
    }
    Quantity shown = Quantity.drift(drift);
    int low = shown.at(range.low()).side();
    return low == shown.at(range.high()).side() ? low : 0;
  }
}
