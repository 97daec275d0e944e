package thinclick.server.picture;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Figures below each other, of which some have words after their unit: "5 ms late" above "20 ms
 * early". The units stand below each other, and the words go on from there.
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
    double longest = 0;
    for (String cell : cells) {
      String tail = tail(cell);
      longest = Math.max(longest, tail == null ? 0 : width.applyAsDouble(tail));
    }
    double most = longest;
    return cells.stream()
        .map(
            cell -> {
              String tail = tail(cell);
              return tail == null ? 0.0 : most - width.applyAsDouble(tail);
            })
        .toList();
  }

  /** What stands after the unit; null where the cell has none. */
  private static @Nullable String tail(String cell) {
    Matcher matcher = AFTER_UNIT.matcher(cell);
    return matcher.matches() ? matcher.group(1) : null;
  }
}
