package thinclick.client.window.wall;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import thinclick.client.window.wall.RibbonPlaces.Span;

/**
 * What stands under the stages of a ribbon, all of it in one size: how well each was held, and what
 * clicked in it, under its middle. One rule for all of them: either each has its words, in two
 * lines where one is too long, or none has; then a key says what clicked in the one that was held.
 *
 * @param figures what is said of each stage, without its sign where there is no room for that;
 *     empty where there is no room at all
 * @param clicks the lines of each stage; empty where there is no room for those of all
 * @param key the lines of the key; empty where there is none
 * @param size how large all this is, in smallest sizes that can be read; 1 at least
 */
record Captions(List<String> figures, List<List<String>> clicks, List<String> key, double size) {
  private static final double LARGEST = 1.2;
  private static final int MOST_LINES = 2;
  private static final Pattern SIGN = Pattern.compile("\\h*%$");

  /** As wide as the least gap between two figures, and between the words of two stages. */
  private static final String GAP = "i";

  private static final String WORDS_GAP = "nn";

  /** So much past the margin nobody sees that words stand. */
  private static final double A_PIXEL = 1;

  /**
   * What there is room for.
   *
   * @param left where the page's words may begin
   * @param right and end
   * @param sign how wide the sign before the key is, with its gap
   * @param wide how wide some words are at the smallest size that can be read
   */
  static Captions under(
      WallPage page,
      List<Span> stages,
      double left,
      double right,
      double sign,
      ToDoubleFunction<String> wide) {
    Columns columns = new Columns(stages, left, right, wide);
    List<String> figures = figures(page, columns);
    double figuresSize = figures.isEmpty() ? LARGEST : columns.size(figures, GAP);
    for (int lines = 1; lines <= MOST_LINES; lines++) {
      for (List<String> texts : page.clicks()) {
        List<List<String>> broken = lines == 1 ? whole(texts) : columns.broken(texts);
        double most = broken.stream().allMatch(one -> one.size() == 1) ? LARGEST : 1;
        double size = Math.min(Math.min(most, figuresSize), columns.sizeOfLines(broken));
        if (size >= 1) {
          return new Captions(figures, broken, List.of(), size);
        }
      }
    }
    boolean held = page.held() >= 0 && page.held() < stages.size();
    if (!held || page.key().isEmpty()) {
      return new Captions(figures, List.of(), List.of(), Math.max(1, figuresSize));
    }
    double room = right - left - sign;
    boolean fits = wide.applyAsDouble(page.key()) <= room;
    List<String> key = fits ? List.of(page.key()) : broken(page.key(), wide);
    double widest = key.stream().mapToDouble(wide).max().orElse(room);
    return new Captions(figures, List.of(), key, Math.max(1, Math.min(figuresSize, room / widest)));
  }

  /** How many lines of words there are. */
  int lines() {
    return Math.max(key.size(), clicks.stream().mapToInt(List::size).max().orElse(0));
  }

  private static List<String> figures(WallPage page, Columns columns) {
    List<String> labels = page.ribbon().stream().map(WallPage.Stretch::label).toList();
    if (labels.stream().allMatch(String::isEmpty)) {
      return List.of();
    }
    List<String> bare = labels.stream().map(label -> SIGN.matcher(label).replaceAll("")).toList();
    return columns.size(labels, GAP) >= 1
        ? labels
        : columns.size(bare, GAP) >= 1 ? bare : List.of();
  }

  private static List<List<String>> whole(List<String> texts) {
    return texts.stream().map(List::of).toList();
  }

  /** In two lines that differ as little as may be, where it has more words than one. */
  private static List<String> broken(String text, ToDoubleFunction<String> wide) {
    String[] pieces = text.split(" ", -1);
    List<String> best = List.of(text);
    double widest = wide.applyAsDouble(text);
    for (int i = 1; i < pieces.length; i++) {
      List<String> two =
          List.of(
              String.join(" ", Arrays.asList(pieces).subList(0, i)),
              String.join(" ", Arrays.asList(pieces).subList(i, pieces.length)));
      double most = Collections.max(two.stream().map(wide::applyAsDouble).toList());
      if (most < widest) {
        best = two;
        widest = most;
      }
    }
    return best;
  }

  /** The room under stages beside each other. */
  private record Columns(
      List<Span> stages, double left, double right, ToDoubleFunction<String> wide) {

    /** What is wider than its stage goes on in a second line. */
    List<List<String>> broken(List<String> texts) {
      double gap = wide.applyAsDouble(WORDS_GAP);
      return IntStream.range(0, texts.size())
          .mapToObj(
              i ->
                  wide.applyAsDouble(texts.get(i)) + gap <= stages.get(i).width()
                      ? List.of(texts.get(i))
                      : Captions.broken(texts.get(i), wide))
          .toList();
    }

    double sizeOfLines(List<List<String>> texts) {
      int most = texts.stream().mapToInt(List::size).max().orElse(0);
      return IntStream.range(0, most)
          .mapToObj(
              line -> texts.stream().map(one -> line < one.size() ? one.get(line) : "").toList())
          .mapToDouble(line -> size(line, WORDS_GAP))
          .min()
          .orElse(LARGEST);
    }

    /** How large one line of all stages can be: within the page, with a gap between two. */
    double size(List<String> line, String gap) {
      double size = LARGEST;
      double before = 0;
      for (int i = 0; i < stages.size(); i++) {
        double half = wide.applyAsDouble(line.get(i)) / 2;
        double middle = stages.get(i).middle();
        double room = Math.min(middle - left, right - middle) + A_PIXEL;
        size = half > 0 ? Math.min(size, room / half) : size;
        if (i > 0 && half > 0 && before > 0) {
          double between = middle - stages.get(i - 1).middle();
          size = Math.min(size, between / (before + half + wide.applyAsDouble(gap)));
        }
        before = half;
      }
      return size;
    }
  }
}
