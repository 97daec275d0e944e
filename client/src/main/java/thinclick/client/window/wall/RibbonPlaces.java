package thinclick.client.window.wall;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Where a ribbon stands on a wall of some size, pixels: its stages beside each other on one floor,
 * what is said of each beneath it, and beneath that the bracket and the words of the one that was
 * held. It is laid out from the foot of the page upwards, so that the ribbon takes all the room
 * that nothing below it needs.
 *
 * @param stages from left to right
 * @param labelled true where what is said of each stage is no wider than its stage
 * @param top the height of a stage that was held whole
 * @param floor what all stages stand on
 * @param labels the baseline of what is said of each stage
 * @param bracket the upper end of the bracket
 * @param stem how far a line goes down from the middle of the bracket to words that are wider than
 *     it; 0 where they are not
 * @param says the lines of the held stage
 * @param middle of those lines, from the left
 * @param words the baseline of the first of them
 * @param line from one of them to the next
 */
record RibbonPlaces(
    List<Span> stages,
    boolean labelled,
    double top,
    double floor,
    double labels,
    double bracket,
    double stem,
    List<String> says,
    double middle,
    double words,
    double line) {

  /** From left to right. */
  record Span(double left, double width) {
    double middle() {
      return left + width / 2;
    }
  }

  /**
   * Lays a page out.
   *
   * @param margin at the left and at the right, a share of the width
   * @param wide how wide some words are
   */
  static RibbonPlaces on(
      WallPage page, double width, double height, double margin, ToDoubleFunction<String> wide) {
    double whole = width * (1 - 2 * margin);
    List<Span> stages = stages(page, width * margin, whole, height);
    boolean labelled = false;
    for (WallPage.Stretch stretch : page.ribbon()) {
      labelled |= !stretch.label().isEmpty();
    }
    for (int i = 0; i < stages.size(); i++) {
      labelled &= wide.applyAsDouble(page.ribbon().get(i).label()) <= stages.get(i).width();
    }
    boolean held = page.held() >= 0 && page.held() < stages.size();
    List<String> says = held ? lines(page.heldSays(), whole, wide) : List.of();
    double widest = says.stream().mapToDouble(wide).max().orElse(0);
    Span span = held ? stages.get(page.held()) : new Span(width * margin, whole);
    double stem = widest > span.width() ? height * 0.03 : 0;
    double edge = width * margin + Math.min(widest, whole) / 2;
    double middle = Math.max(edge, Math.min(width - edge, span.middle()));

    double line = height * 0.075;
    double lowest = height * (page.below().isEmpty() ? 0.92 : 0.775);
    double words = lowest - Math.max(0, says.size() - 1) * line;
    double bracket = says.isEmpty() ? words - height * 0.015 : words - height * 0.085 - stem;
    double labels = held ? bracket - height * 0.022 : lowest;
    double floor = labelled ? labels - height * 0.085 : held ? bracket - height * 0.025 : lowest;
    return new RibbonPlaces(
        stages, labelled, height * 0.25, floor, labels, bracket, stem, says, middle, words, line);
  }

  private static List<Span> stages(WallPage page, double left, double whole, double height) {
    int bars = page.ribbon().stream().mapToInt(WallPage.Stretch::bars).sum();
    List<Span> spans = new ArrayList<>();
    double x = left;
    for (int i = 0; i < page.ribbon().size(); i++) {
      double wide = whole * page.ribbon().get(i).bars() / bars;
      boolean last = i + 1 == page.ribbon().size();
      spans.add(new Span(x, wide - (last ? 0 : Math.min(height * 0.012, wide * 0.1))));
      x += wide;
    }
    return spans;
  }

  /** In one line where the page is wide enough, else in two that differ as little as may be. */
  private static List<String> lines(String says, double whole, ToDoubleFunction<String> wide) {
    if (says.isEmpty()) {
      return List.of();
    }
    String[] pieces = says.split(" ", -1);
    List<String> best = List.of(says);
    double widest = wide.applyAsDouble(says);
    for (int i = 1; i < pieces.length && wide.applyAsDouble(says) > whole; i++) {
      List<String> two =
          List.of(
              String.join(" ", Arrays.asList(pieces).subList(0, i)),
              String.join(" ", Arrays.asList(pieces).subList(i, pieces.length)));
      double most = two.stream().mapToDouble(wide).max().orElseThrow();
      if (most < widest) {
        best = two;
        widest = most;
      }
    }
    return best;
  }

  /** The span of what was held. */
  Span held(WallPage page) {
    return stages.get(page.held());
  }
}
