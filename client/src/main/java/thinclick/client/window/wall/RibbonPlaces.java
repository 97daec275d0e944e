package thinclick.client.window.wall;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Where a ribbon stands on a wall of some size, pixels: its stages beside each other on one floor,
 * what is said of each beneath it, and beneath that the bracket and the words of the one that was
 * held. Where nothing is said at the foot of the page, the ribbon takes that room too.
 *
 * @param stages from left to right
 * @param top the height of a stage that was held whole
 * @param floor what all stages stand on
 * @param labels the baseline of what is said of each stage
 * @param bracket the upper end of the bracket
 * @param words the baseline of the first line beneath the bracket
 * @param line from a line beneath the bracket to the next
 */
record RibbonPlaces(
    List<Span> stages,
    double top,
    double floor,
    double labels,
    double bracket,
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
   */
  static RibbonPlaces on(WallPage page, double width, double height, double margin) {
    double whole = width * (1 - 2 * margin);
    int bars = page.ribbon().stream().mapToInt(WallPage.Stretch::bars).sum();
    List<Span> spans = new ArrayList<>();
    double x = width * margin;
    for (int i = 0; i < page.ribbon().size(); i++) {
      double wide = whole * page.ribbon().get(i).bars() / bars;
      boolean last = i + 1 == page.ribbon().size();
      spans.add(new Span(x, wide - (last ? 0 : Math.min(height * 0.012, wide * 0.1))));
      x += wide;
    }
    boolean labelled = page.ribbon().stream().anyMatch(stage -> !stage.label().isEmpty());
    double floor = height * (page.below().isEmpty() ? 0.66 : 0.54) + (labelled ? 0 : height * 0.05);
    double labels = floor + height * 0.085;
    double bracket = labelled ? labels + height * 0.022 : floor + height * 0.025;
    return new RibbonPlaces(
        spans, height * 0.25, floor, labels, bracket, bracket + height * 0.085, height * 0.075);
  }

  /** The span of what was held. */
  Span held(WallPage page) {
    return stages.get(page.held());
  }

  /**
   * The words of the held stage in one line where they are no wider than its bracket, else in two
   * that differ as little in width as may be.
   *
   * @param wide how wide some words are
   */
  List<String> heldLines(WallPage page, ToDoubleFunction<String> wide) {
    String says = page.heldSays();
    String[] pieces = says.split(" ", -1);
    if (wide.applyAsDouble(says) <= held(page).width() || pieces.length < 2) {
      return List.of(says);
    }
    List<String> best = List.of(says);
    double widest = wide.applyAsDouble(says);
    for (int i = 1; i < pieces.length; i++) {
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
}
