package thinclick.server.picture;

import java.util.List;
import thinclick.server.scoring.Analysis;

/**
 * How far up and down the columns reach: as many tolerances as hold every attack that is drawn, two
 * at least and four at most unless a strip that follows a lean wants more; what lies beyond is
 * drawn at the edge and counted.
 *
 * @param toleranceMillis what is still placed, ms to each side
 * @param tolerances how many of them the scale reaches
 */
record DotScale(double toleranceMillis, int tolerances) {
  private static final int LEAST = 2;
  private static final int MOST = 4;

  /** One scale for all of these takes, so that they can be read beside each other. */
  static DotScale of(List<Analysis> takes) {
    double tolerance = 1;
    double farthest = 0;
    double edge = 0;
    for (Analysis take : takes) {
      tolerance = Math.max(tolerance, take.review().toleranceMillis());
      for (Analysis.PlayerAnalysis player : take.players()) {
        edge = Math.max(edge, Math.abs(player.notChargedMillis()));
        for (Analysis.Played one : player.played()) {
          Double off = one.asynchronyMillis();
          if (off != null && one.displacement() == 0) {
            farthest = Math.max(farthest, Math.abs(off));
          }
        }
      }
    }
    int needed = (int) Math.ceil(farthest / tolerance);
    int band = 1 + (int) Math.ceil(edge / tolerance);
    return new DotScale(tolerance, Math.max(Math.max(LEAST, band), Math.min(MOST, needed)));
  }

  /** Every how many tolerances a number stands, so that the numbers keep clear of each other. */
  int numbered() {
    return (tolerances + MOST - 1) / MOST;
  }

  /** The farthest that is drawn where it lay, ms. */
  double rangeMillis() {
    return tolerances * toleranceMillis;
  }

  boolean beyond(double asynchronyMillis) {
    return Math.abs(asynchronyMillis) > rangeMillis();
  }

  /** The same, or the edge where it lies beyond. */
  double clamped(double asynchronyMillis) {
    return Math.max(-rangeMillis(), Math.min(rangeMillis(), asynchronyMillis));
  }
}
