package thinclick.server.picture;

import thinclick.server.engraving.Face;
import thinclick.server.picture.Drawing.Anchor;
import thinclick.server.scoring.Review;
import thinclick.server.scoring.StageReview;
import thinclick.server.words.Speaker;

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

  /** How high the ticks and numbers below a part are. */
  static final double NUMBERS = 22;

  private static final double TICK = 5;

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

  /**
   * The bars below a part, so that it can be read alone: what is counted, a tick where each bar
   * begins, and the number of each in its middle, or of every so many where there is no room.
   *
   * @param top of the ticks
   */
  void numbers(Easel easel, double top, Speaker speaker) {
    double y = top + TICK + Easel.SMALL;
    easel.words(left - 8, y, Easel.SMALL, Anchor.END, speaker.say("picture.bars"), Tint.SOFT);
    int every = numbered();
    for (int bar = 0; bar <= bars; bar++) {
      easel.line(x(bar), top, x(bar), top + TICK, .8, Tint.RULE);
      if (bar < bars && bar % every == 0) {
        String number = Integer.toString(bar + 1);
        easel.words(x(bar + .5), y, Easel.SMALL, Anchor.MIDDLE, number, Tint.SOFT);
      }
    }
  }

  /** Every how many bars a number has room, in fours where not each has. */
  private int numbered() {
    double widest = Face.REGULAR.width(Integer.toString(bars), Easel.SMALL) + 8;
    int every = 1;
    while (every * width / Math.max(1, bars) < widest) {
      every = every == 1 ? 4 : 2 * every;
    }
    return every;
  }
}
