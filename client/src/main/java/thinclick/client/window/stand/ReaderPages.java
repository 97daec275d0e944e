package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thinclick.server.material.WrittenPart;

/**
 * Whose parts are in view on a stand that several read: all on one page where they fit at a size
 * that is read well, else page by page, or one reader's alone. Readers by their number.
 */
final class ReaderPages {
  /** Chosen where everybody's parts are wanted, page by page if need be. */
  static final int ALL = -1;

  /** What the pages were made for; nothing is laid out again for the same. */
  private record Asked(
      List<@Nullable WrittenPart> parts, double width, double height, double gap, double scale) {}

  /** How high a line is at the least, above the others of a page with the click, and below. */
  private record Least(double first, double below) {}

  private List<List<List<Integer>>> pages = List.of();
  private final Map<List<Integer>, Least> least = new HashMap<>();
  private @Nullable Asked asked;
  private int count;
  private int chosen = ALL;
  private int page;

  /** So many read from now on, all in view. */
  void readers(int now) {
    count = now;
    chosen = ALL;
    page = 0;
    asked = null;
    least.clear();
    pages = List.of(IntStream.range(0, now).mapToObj(List::of).toList());
  }

  /**
   * Makes the pages for a place.
   *
   * @param parts a part for each reader; null where nothing is dealt
   * @param width of the music, pixels
   * @param height of the page, pixels
   * @param gap between two parts, pixels
   * @param scale how large text and music are wanted, 1 is usual
   */
  void fit(
      List<@Nullable WrittenPart> parts, double width, double height, double gap, double scale) {
    Asked now = new Asked(new ArrayList<>(parts), width, height, gap, scale);
    if (parts.size() != count || width < 1 || height < 1 || now.equals(asked)) {
      return;
    }
    asked = now;
    List<List<Integer>> lines = ChairPages.lines(parts);
    least.clear();
    for (List<Integer> line : lines) {
      WrittenPart part = parts.get(line.get(0));
      least.put(
          line,
          new Least(
              leastHeight(part, line.size(), now, true),
              leastHeight(part, line.size(), now, false)));
    }
    List<Double> firsts = lines.stream().map(line -> leastHeight(line, true)).toList();
    List<Double> heights = lines.stream().map(line -> leastHeight(line, false)).toList();
    pages =
        ChairPages.pages(firsts, heights, height, gap).stream()
            .map(on -> on.stream().map(lines::get).toList())
            .toList();
    page = Math.min(page, pages.size() - 1);
  }

  private static double leastHeight(
      @Nullable WrittenPart part, int lanes, Asked place, boolean click) {
    return part == null
        ? 0
        : SheetFit.leastHeight(part, place.width(), place.scale(), lanes, click);
  }

  /** What a line needs at the least, pixels; 0 before its place is known. */
  double leastHeight(List<Integer> line, boolean first) {
    Least known = least.get(line);
    return known == null ? 0 : first ? known.first() : known.below();
  }

  /** One reader alone, or {@link #ALL}. */
  void choose(int reader) {
    chosen = reader;
  }

  int chosen() {
    return chosen;
  }

  /** True where one part fills the page. */
  boolean alone() {
    return count == 1 || chosen != ALL;
  }

  /** Whether not all parts fit on a page together. */
  boolean several() {
    return pages.size() > 1;
  }

  /** Turns a page on or back; where all fit on one, to the next reader alone and round again. */
  void turn(int by) {
    if (chosen == ALL && several()) {
      page = Math.floorMod(page + by, pages.size());
    } else if (count > 1) {
      chosen = Math.floorMod(chosen + 1 + by, count + 1) - 1;
    }
  }

  /** What is in view from above: a line for each entry, with those who read it. */
  List<List<Integer>> shown() {
    return alone() ? List.of(List.of(Math.max(0, chosen))) : pages.get(page);
  }

  /** Who is on the page after this one. */
  List<Integer> next() {
    return pages.get((page + 1) % pages.size()).stream().flatMap(List::stream).toList();
  }
}
