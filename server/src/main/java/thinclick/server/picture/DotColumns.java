package thinclick.server.picture;

import java.util.HashMap;
import java.util.Map;
import thinclick.protocol.music.StepGrid;
import thinclick.server.engraving.Face;
import thinclick.server.picture.Drawing.Anchor;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Analysis.Fate;
import thinclick.server.scoring.Analysis.Kind;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;

/**
 * One player's attacks in upright columns, a column for each place of the bar: how early or late
 * against the pulse, late upward, on the band that is still placed.
 */
final class DotColumns {
  static final double HEIGHT = 178;
  private static final double PLOT = 104;

  private DotColumns() {}

  static void draw(
      Easel easel,
      Analysis analysis,
      Analysis.PlayerAnalysis player,
      double left,
      double top,
      double width,
      Speaker speaker) {
    StepGrid grid = analysis.take().grid();
    int places = grid.stepsPerBar();
    double tolerance = analysis.review().toleranceMillis();
    double range = 2 * tolerance;
    double plotTop = top + 22;
    double middle = plotTop + PLOT / 2;
    double unit = PLOT / 2 / range;
    double axis = left + 34;
    double column = (width - 40) / places;
    title(easel, analysis, player, left, top, width, speaker);
    easel.box(axis, plotTop, column * places, PLOT, Tint.SHEET);
    easel.box(axis, middle - tolerance * unit, column * places, 2 * tolerance * unit, Tint.BAND);
    easel.line(axis, middle, axis + column * places, middle, 1, Tint.RULE);
    for (int side : new int[] {-1, 0, 1}) {
      String text = side == 0 ? "0" : (side > 0 ? "+" : "\u2212") + Math.round(tolerance);
      easel.words(
          axis - 5, middle - side * tolerance * unit + 4, Easel.SMALL, Anchor.END, text, Tint.SOFT);
    }
    for (int place = 0; place < places; place++) {
      double x = axis + (place + .5) * column;
      if (place % grid.stepsPerBeat() == 0) {
        easel.line(x, plotTop + PLOT, x, plotTop + PLOT + 7, 1.4, Tint.INK);
        easel.words(
            x,
            plotTop + PLOT + 20,
            Easel.SMALL,
            Anchor.MIDDLE,
            Integer.toString(place / grid.stepsPerBeat() + 1),
            Tint.SOFT);
      } else {
        easel.line(x, plotTop + PLOT, x, plotTop + PLOT + 4, .8, Tint.RULE);
      }
    }
    dots(easel, player, places, axis, column, middle, unit, range);
    dropped(easel, player, places, axis, column, plotTop + PLOT + 36);
  }

  private static void title(
      Easel easel,
      Analysis analysis,
      Analysis.PlayerAnalysis player,
      double left,
      double top,
      double width,
      Speaker speaker) {
    long added = player.played().stream().filter(one -> one.kind() == Kind.ADDED).count();
    PlayerReview review = analysis.review().player(player.player());
    String figures =
        review == null
            ? ""
            : speaker.say(
                Said.of("picture.player", review.placed(), review.written(), (int) added));
    double figuresWidth = Face.REGULAR.width(figures, Easel.SMALL);
    easel.words(
        left,
        top + 14,
        Easel.BODY,
        Anchor.START,
        Easel.cut(player.player(), Easel.BODY, width - figuresWidth - 16),
        Tint.INK);
    easel.words(left + width, top + 14, Easel.SMALL, Anchor.END, figures, Tint.SOFT);
  }

  private static void dots(
      Easel easel,
      Analysis.PlayerAnalysis player,
      int places,
      double axis,
      double column,
      double middle,
      double unit,
      double range) {
    Map<Integer, Double> asynchronies = new HashMap<>();
    for (Analysis.Played one : player.played()) {
      Double asynchrony = one.asynchronyMillis();
      if (asynchrony != null) {
        asynchronies.put(one.attack(), asynchrony);
      }
    }
    int[] seen = new int[places];
    for (Analysis.Written one : player.written()) {
      Integer attack = one.attack();
      if (attack == null || one.displacement() != 0) {
        continue;
      }
      Double asynchrony = asynchronies.get(attack);
      if (asynchrony == null) {
        continue;
      }
      int place = one.step() % places;
      // Side by side in turn, so that dots of one place do not hide each other.
      double aside = ((seen[place]++ * 5) % 9 - 4) * column / 14;
      double x = axis + (place + .5) * column + aside;
      double y = middle - Math.max(-range, Math.min(range, asynchrony)) * unit;
      Tint tint = one.fate() == Fate.PLACED ? Tint.INK : asynchrony < 0 ? Tint.EARLY : Tint.LATE;
      easel.attack(x, y, tint);
    }
  }

  private static void dropped(
      Easel easel,
      Analysis.PlayerAnalysis player,
      int places,
      double axis,
      double column,
      double y) {
    int[] dropped = new int[places];
    for (Analysis.Written one : player.written()) {
      if (one.fate() == Fate.DROPPED) {
        dropped[one.step() % places]++;
      }
    }
    for (int place = 0; place < places; place++) {
      if (dropped[place] > 0) {
        double x = axis + (place + .5) * column;
        easel.caret(x - 7, y, Tint.INK);
        easel.words(x, y, Easel.SMALL, Anchor.START, Integer.toString(dropped[place]), Tint.SOFT);
      }
    }
  }
}
