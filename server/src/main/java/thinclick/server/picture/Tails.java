package thinclick.server.picture;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Figures below each other, of which some have words after their unit: "5 ms late" above "20 ms
 * early". The units stand below each other, and the words go on from there; a cell of words alone
 * begins where they do, and the head of the column ends above the units.
 */
public final class Tails {
  private static final Pattern AFTER_UNIT = Pattern.compile(".*\\d[\\s\u00a0](?:ms|%)(.*)");

  private Tails() {}

  /**
   * How far each cell ends before the right edge of its column.
   *
   * @param cells of one column of figures
   * @param width of some words, as they will be set
   */
  public static List<Double> slack(List<String> cells, ToDoubleFunction<String> width) {
    double most = longest(cells, width);
    return cells.stream()
        .map(cell -> most == 0 ? 0.0 : most - width.applyAsDouble(words(cell)))
        .toList();
  }

  /** How far the head ends before the right edge of the column: where the units do. */
  public static double longest(List<String> cells, ToDoubleFunction<String> width) {
    boolean any = cells.stream().map(Tails::tail).anyMatch(tail -> tail != null && !tail.isEmpty());
    return any
        ? cells.stream().mapToDouble(cell -> width.applyAsDouble(words(cell))).max().orElse(0)
        : 0;
  }

  /** What stands right of the units; a cell without one keeps as far from them. */
  private static String words(String cell) {
    String tail = tail(cell);
    return tail == null ? " " + cell : tail;
  }

  /** What stands after the unit; null where the cell has none. */
  private static @Nullable String tail(String cell) {
    Matcher matcher = AFTER_UNIT.matcher(cell);
    return matcher.matches() ? matcher.group(1) : null;
  }
}
