package thinclick.server.picture;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.file.FreeSpan;
import thinclick.server.engraving.Face;
import thinclick.server.picture.Drawing.Anchor;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Analysis.Fate;
import thinclick.server.scoring.Displacement;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.words.ShiftWords;
import thinclick.server.words.Speaker;

/** A line a player over the bars: where they were off by whole steps, away, or silent. */
final class Episodes {
  static final double LINE = 26;

  private Episodes() {}

  static double height(Analysis analysis) {
    return LINE * analysis.players().size() + BarScale.NUMBERS + 8;
  }

  /** True where there is a bar to be shown. */
  static boolean any(Analysis analysis) {
    int stepsPerBar = analysis.take().grid().stepsPerBar();
    int bars = analysis.take().plan().bars();
    for (int i = 0; i < analysis.players().size(); i++) {
      List<Analysis.Written> written = analysis.players().get(i).written();
      if (!analysis.review().players().get(i).displacements().isEmpty()
          || !analysis.take().parts().get(i).free().isEmpty()
          || written.stream()
              .anyMatch(one -> one.fate() == Fate.AWAY || one.fate() == Fate.AFTER_THE_STOP)
          || !silentBars(written, stepsPerBar, bars).isEmpty()) {
        return true;
      }
    }
    return false;
  }

  /** True where somebody played nothing of a bar. */
  static boolean anySilent(Analysis analysis) {
    int stepsPerBar = analysis.take().grid().stepsPerBar();
    int bars = analysis.take().plan().bars();
    return analysis.players().stream()
        .anyMatch(player -> !silentBars(player.written(), stepsPerBar, bars).isEmpty());
  }

  static void draw(Easel easel, Analysis analysis, BarScale scale, double top, Speaker speaker) {
    double bottom = top + LINE * analysis.players().size();
    scale.edges(easel, analysis.review(), top, bottom);
    int stepsPerBar = analysis.take().grid().stepsPerBar();
    for (int i = 0; i < analysis.players().size(); i++) {
      Analysis.PlayerAnalysis player = analysis.players().get(i);
      double y = top + LINE * (i + .5);
      easel.words(
          scale.left() - 8,
          y + 4,
          Easel.SMALL,
          Anchor.END,
          Easel.cut(player.player(), Easel.SMALL, scale.left() - 40),
          Tint.INK);
      easel.line(scale.left(), y, scale.x(scale.bars()), y, .8, Tint.RULE);
      silent(easel, player.written(), stepsPerBar, scale, y);
      span(
          easel, bars(player.written(), Fate.AWAY, stepsPerBar), "picture.away", scale, y, speaker);
      span(
          easel,
          bars(player.written(), Fate.AFTER_THE_STOP, stepsPerBar),
          "picture.stopped",
          scale,
          y,
          speaker);
      analysis.take().parts().get(i).free().forEach(span -> free(easel, span, scale, y, speaker));
      PlayerReview review = analysis.review().players().get(i);
      for (Displacement one : review.displacements()) {
        displaced(easel, analysis, one, scale, y, speaker);
      }
    }
    scale.numbers(easel, bottom, speaker);
  }

  private static void displaced(
      Easel easel, Analysis analysis, Displacement one, BarScale scale, double y, Speaker speaker) {
    Tint tint = one.steps() < 0 ? Tint.EARLY : Tint.LATE;
    double from = scale.x(one.fromBar());
    double to = scale.x(one.toBar());
    // Thick, with the foot of its side; above the line for late, below for early.
    double height = one.steps() < 0 ? 4 : -4;
    easel.line(from, y + height, to, y + height, 5, tint);
    easel.line(from, y, from, y + 2 * height, 1.2, tint);
    easel.line(to, y, to, y + 2 * height, 1.2, tint);
    String words =
        speaker.say(
            ShiftWords.of(one.steps(), analysis.take().meter(), analysis.take().stepsPerBeat()));
    double width = Face.REGULAR.width(words, Easel.SMALL);
    boolean after = width <= scale.x(scale.bars()) - to - 10;
    if (!after && width > from - scale.left() - 10) {
      return; // no room on either side: the prose says it
    }
    double left = after ? to + 5 : from - 5 - width;
    easel.box(left - 2, y - 7, width + 4, 14, Tint.PAPER);
    easel.words(left, y + 4, Easel.SMALL, Anchor.START, words, tint);
  }

  /** Bars that were played freely: slashes, as on the page, and the word. */
  private static void free(Easel easel, FreeSpan span, BarScale scale, double y, Speaker speaker) {
    double from = scale.x(span.fromBar());
    double to = scale.x(span.toBar());
    String word = speaker.say("picture.free");
    double wide = Face.REGULAR.width(word, Easel.SMALL) + 12;
    boolean said = to - from > wide;
    if (said) {
      easel.words(from + 4, y + 10, Easel.SMALL, Anchor.START, word, Tint.SOFT);
    }
    for (double x = from + 5; x < to - 5; x += 9) {
      easel.line(x, y + 4, x + 5, y - 4, 1, Tint.SOFT);
    }
  }

  /** Bars in which all that is written was dropped. */
  private static void silent(
      Easel easel, List<Analysis.Written> written, int stepsPerBar, BarScale scale, double y) {
    for (int bar : silentBars(written, stepsPerBar, scale.bars())) {
      easel.caret(scale.x(bar + .5), y + 3, Tint.INK);
    }
  }

  private static List<Integer> silentBars(
      List<Analysis.Written> written, int stepsPerBar, int bars) {
    List<Integer> silent = new ArrayList<>();
    for (int bar = 0; bar < bars; bar++) {
      int count = 0;
      int dropped = 0;
      for (Analysis.Written one : written) {
        // What is not counted does not make a silent bar a played one.
        boolean counts = one.fate() != Fate.AWAY && one.fate() != Fate.AFTER_THE_STOP;
        if (counts && one.step() / stepsPerBar == bar) {
          count++;
          dropped += one.fate() == Fate.DROPPED ? 1 : 0;
        }
      }
      if (count > 0 && dropped == count) {
        silent.add(bar);
      }
    }
    return silent;
  }

  /** The bars of what is written and not counted. */
  private static List<Integer> bars(List<Analysis.Written> written, Fate fate, int stepsPerBar) {
    return written.stream()
        .filter(one -> one.fate() == fate)
        .map(one -> one.step() / stepsPerBar)
        .toList();
  }

  /** Bars that are not counted, from the first to the last, and why. */
  private static void span(
      Easel easel, List<Integer> bars, String key, BarScale scale, double y, Speaker speaker) {
    if (!bars.isEmpty()) {
      double from = scale.x(bars.get(0));
      double to = scale.x(bars.get(bars.size() - 1) + 1);
      easel.box(from, y - 8, to - from, 16, Tint.BAND);
      String word = Easel.cut(speaker.say(key), Easel.SMALL, to - from - 8);
      easel.words(from + 4, y + 4, Easel.SMALL, Anchor.START, word, Tint.SOFT);
      // The line begins where the word ends, so that it strikes nothing through.
      double dashes = from + 8 + Face.REGULAR.width(word, Easel.SMALL);
      if (dashes < to) {
        easel.dashed(dashes, y, to, y, Tint.SOFT);
      }
    }
  }
}
