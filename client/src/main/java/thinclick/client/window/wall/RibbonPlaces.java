package thinclick.client.window.wall;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.regex.Pattern;

/**
 * Where a ribbon stands on a wall of some size, pixels: its stages beside each other on one floor,
 * what is said of each beneath it, and beneath that the bracket of the one that was held, with its
 * words under the middle of it: in two lines where one would not find room there and the ribbon can
 * spare it, and aside only as far as the page ends. It is laid out from the foot of the page
 * upwards, so that the ribbon takes all the room that nothing below it needs.
 *
 * @param stages from left to right
 * @param figures what is said of each stage, without its sign where there is no room for that;
 *     empty where there is no room at all
 * @param labelSize how large that is, in smallest sizes that can be read; 1 at least
 * @param top the height of a stage that was held whole
 * @param floor what all stages stand on
 * @param labels the baseline of what is said of each stage
 * @param bracket the upper end of the bracket
 * @param stem how far a line goes down from the middle of the bracket to words that are wider than
 *     it; 0 where they are not
 * @param says the lines of the held stage
 * @param saysSize how large they are, in smallest sizes that can be read; 1 at least
 * @param middle of those lines, from the left
 * @param words the baseline of the first of them
 * @param line from one of them to the next
 */
record RibbonPlaces(
    List<Span> stages,
    List<String> figures,
    double labelSize,
    double top,
    double floor,
    double labels,
    double bracket,
    double stem,
    List<String> says,
    double saysSize,
    double middle,
    double words,
    double line) {

  /** How large words may be in more lines than one, and in one that is the page's last. */
  private static final double LARGEST_AMONG_LINES = 1.15;

  private static final double LARGEST = 1.5;
  private static final double LARGEST_LABEL = 1.2;

  private static final Pattern SIGN = Pattern.compile("\\h*%$");

  /** As wide as the least gap between two figures. */
  private static final String GAP = "i";

  /** So much wider than its stage nobody sees that words are. */
  private static final double A_PIXEL = 1;

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
   * @param wide how wide some words are at the smallest size that can be read
   */
  static RibbonPlaces on(
      WallPage page, double width, double height, double margin, ToDoubleFunction<String> wide) {
    double whole = width * (1 - 2 * margin);
    List<Span> stages = stages(page, width * margin, whole, height);
    List<String> figures = figures(page, stages, wide);
    boolean labelled = !figures.isEmpty();
    double labelSize = labelled ? labelSize(figures, stages, wide) : 1;
    boolean held = page.held() >= 0 && page.held() < stages.size();
    boolean last = page.below().isEmpty();
    Span span = held ? stages.get(page.held()) : new Span(width * margin, whole);
    double room = 2 * Math.min(span.middle(), width - span.middle()) - 2 * width * margin;
    // Between numbers and a last line a second one would leave the ribbon too little.
    double lineRoom = labelled && !last ? whole : room;
    List<String> says = held ? lines(page.heldSays(), lineRoom, wide) : List.of();
    double least = says.stream().mapToDouble(wide).max().orElse(0);
    double most = last && says.size() == 1 ? LARGEST : LARGEST_AMONG_LINES;
    double saysSize = Math.max(1, Math.min(most, least == 0 ? 1 : room / least));
    double widest = least * saysSize;
    double stem = widest > span.width() + A_PIXEL ? height * 0.03 : 0;
    double edge = width * margin + Math.min(widest, whole) / 2;
    double middle = between(edge, span.middle(), width - edge);

    double line = height * 0.075 * saysSize;
    double lowest = height * (last ? 0.93 : 0.78);
    double words = lowest - Math.max(0, says.size() - 1) * line;
    double bracket =
        says.isEmpty() ? words - height * 0.015 : words - height * above(saysSize) - stem;
    double labels = held ? bracket - height * 0.022 : lowest;
    double floor =
        labelled ? labels - height * above(labelSize) : held ? bracket - height * 0.025 : lowest;
    return new RibbonPlaces(
        stages,
        figures,
        labelSize,
        height * 0.25,
        floor,
        labels,
        bracket,
        stem,
        says,
        saysSize,
        middle,
        words,
        line);
  }

  /** From a line of words of some size up to what stands above it, a share of the height. */
  private static double above(double size) {
    return 0.04 + WallView.LEAST_CAPITAL * size;
  }

  private static double between(double least, double wanted, double most) {
    return Math.max(least, Math.min(most, wanted));
  }

  private static List<String> figures(
      WallPage page, List<Span> stages, ToDoubleFunction<String> wide) {
    List<String> labels = page.ribbon().stream().map(WallPage.Stretch::label).toList();
    if (labels.stream().allMatch(String::isEmpty)) {
      return List.of();
    }
    List<String> bare = labels.stream().map(label -> SIGN.matcher(label).replaceAll("")).toList();
    return apart(labels, stages, wide) >= 1
        ? labels
        : apart(bare, stages, wide) >= 1 ? bare : List.of();
  }

  /** No wider than their stages where they can be, never so wide that two of them touch. */
  private static double labelSize(
      List<String> figures, List<Span> stages, ToDoubleFunction<String> wide) {
    double own = LARGEST_LABEL;
    for (int i = 0; i < stages.size(); i++) {
      double label = wide.applyAsDouble(figures.get(i));
      own = Math.min(own, label == 0 ? own : stages.get(i).width() / label);
    }
    return Math.min(Math.max(1, own), apart(figures, stages, wide));
  }

  /** How large figures can be under the middle of their stages, with a gap between them. */
  private static double apart(
      List<String> figures, List<Span> stages, ToDoubleFunction<String> wide) {
    double size = LARGEST_LABEL;
    for (int i = 1; i < stages.size(); i++) {
      double two = wide.applyAsDouble(figures.get(i - 1)) + wide.applyAsDouble(figures.get(i));
      double between = stages.get(i).middle() - stages.get(i - 1).middle();
      size = Math.min(size, between / (two / 2 + wide.applyAsDouble(GAP)));
    }
    return size;
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

  /** In one line where there is room for it, else in two that differ as little as may be. */
  private static List<String> lines(String says, double room, ToDoubleFunction<String> wide) {
    if (says.isEmpty()) {
      return List.of();
    }
    String[] pieces = says.split(" ", -1);
    List<String> best = List.of(says);
    double widest = wide.applyAsDouble(says);
    for (int i = 1; i < pieces.length && wide.applyAsDouble(says) > room; i++) {
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
