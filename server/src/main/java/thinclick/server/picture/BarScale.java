package thinclick.server.picture;

import thinclick.server.engraving.Face;
import thinclick.server.picture.Drawing.Anchor;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.StageReview;

/**
 * Bars across the sheet, the same in every part of the picture.
 *
 * @param left where bar 1 begins
 * @param width of all bars
 * @param bars how many
 */
record BarScale(double left, double width, int bars) {
  /** Left free before bar 1 for what stands beside the lines. */
  static final double NAMES = 104;

  /** Where a bar begins; a fraction lies inside it. */
  double x(double bar) {
    return left + width * Math.max(0, Math.min(bars, bar)) / Math.max(1, bars);
  }

  /** Rules at the stages' edges. */
  void edges(Easel easel, Review review, double top, double bottom) {
    for (StageReview stage : review.stages()) {
      easel.line(x(stage.fromBar()), top, x(stage.fromBar()), bottom, 1, Tint.RULE);
    }
    easel.line(x(bars), top, x(bars), bottom, 1, Tint.RULE);
  }

  /** Bar numbers below a part: the first of every stage, and the last bar. */
  void numbers(Easel easel, Review review, double y) {
    double lastEnd = Double.NEGATIVE_INFINITY;
    for (StageReview stage : review.stages()) {
      double at = x(stage.fromBar());
      if (at > lastEnd) {
        String text = Integer.toString(stage.fromBar() + 1);
        easel.words(at + 3, y, Easel.SMALL, Anchor.START, text, Tint.SOFT);
        lastEnd = at + 3 + Face.REGULAR.width(text, Easel.SMALL) + 6;
      }
    }
  }
}
