package thinclick.client.window.wall;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Where a ribbon stands on a wall of some size, pixels: its stages beside each other on one floor,
 * a bracket under the one that was held, and what is said of each beneath it. It is laid out from
 * the foot of the page upwards, so that the ribbon takes all the room that nothing below it needs.
 *
 * @param stages from left to right
 * @param captions what stands under them
 * @param top the height of a stage that was held whole
 * @param floor what all stages stand on
 * @param bracket the upper end of the bracket
 * @param figures the baseline of how well each was held
 * @param words the baseline of the first line of what clicked
 * @param line from one of those lines to the next
 * @param sign how wide the sign is that stands before the key
 */
record RibbonPlaces(
    List<Span> stages,
    Captions captions,
    double top,
    double floor,
    double bracket,
    double figures,
    double words,
    double line,
    double sign) {

  /** How far a bracket goes down, a share of the height. */
  static final double BRACKET = 0.015;

  private static final double LINE = 0.075;
  private static final double SIGN = 0.06;
  private static final double AFTER_SIGN = 0.025;

  /** From left to right. */
  record Span(double left, double width) {
    double middle() {
      return left + width / 2;
    }

    double right() {
      return left + width;
    }
  }

  /**
   * Lays a page out.
   *
   * @param margin at the left and at the right, a share of the width
   * @param wide how wide some words are at the smallest size that can be read
   */
  static RibbonPlaces on(
      WallPage page, double width, double height, double margin, ToDoubleFunction<String> wide) {
    double left = width * margin;
    double right = width - left;
    List<Span> stages = stages(page, left, right - left, height);
    double sign = height * (SIGN + AFTER_SIGN);
    Captions captions = Captions.under(page, stages, left, right, sign, wide);

    double line = height * LINE * captions.size();
    double lowest = height * (page.below().isEmpty() ? 0.93 : 0.785);
    double words = lowest - Math.max(0, captions.lines() - 1) * line;
    double figures = captions.lines() > 0 ? words - line : lowest;
    boolean bare = captions.figures().isEmpty() && captions.lines() == 0;
    double first = captions.figures().isEmpty() ? words : figures;
    double said =
        bare ? lowest : first - height * (WallView.LEAST_CAPITAL * captions.size() + 0.03);
    boolean held = page.held() >= 0 && page.held() < stages.size();
    double bracket = said - height * BRACKET;
    double floor = held ? bracket - height * 0.022 : said;
    return new RibbonPlaces(
        stages, captions, height * 0.25, floor, bracket, figures, words, line, height * SIGN);
  }

  private static List<Span> stages(WallPage page, double left, double whole, double height) {
    int bars = page.ribbon().stream().mapToInt(WallPage.Stretch::bars).sum();
    List<Span> spans = new ArrayList<>();
    int gaps = page.ribbon().size() - 1;
    double gap = gaps == 0 ? 0 : Math.min(height * 0.012, whole * 0.1 / gaps);
    double paper = whole - gaps * gap; // as long a stretch for as many bars, wherever it stands
    double x = left;
    for (WallPage.Stretch stretch : page.ribbon()) {
      double wide = paper * stretch.bars() / bars;
      spans.add(new Span(x, wide));
      x += wide + gap;
    }
    return spans;
  }

  /** The span of what was held. */
  Span held(WallPage page) {
    return stages.get(page.held());
  }

  /** From the left end of the key's sign to its words. */
  double toKey() {
    return sign * (SIGN + AFTER_SIGN) / SIGN;
  }
}
