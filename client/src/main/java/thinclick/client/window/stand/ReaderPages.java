package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
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
      List<@Nullable WrittenPart> parts, double width, double height, double scale) {}

  private final FittedPages fitted;
  private List<List<List<Integer>>> pages = List.of();
  private @Nullable Asked asked;
  private int count;
  private int chosen = ALL;

  /** Whose page is in view; they stay so when another size makes other pages. */
  private int reader;

  /**
   * @param fitted what is known of how large their music is
   */
  ReaderPages(FittedPages fitted) {
    this.fitted = fitted;
  }

  /** So many read from now on, all in view. */
  void readers(int now) {
    count = now;
    chosen = ALL;
    reader = 0;
    asked = null;
    pages = List.of(IntStream.range(0, now).mapToObj(List::of).toList());
  }

  /**
   * Makes the pages for a place.
   *
   * @param parts a part for each reader; null where nothing is dealt
   * @param width of the page with the names before the staves, pixels
   * @param height of the page, pixels
   * @param scale how large text and music are wanted, 1 is usual
   */
  void fit(List<@Nullable WrittenPart> parts, double width, double height, double scale) {
    Asked now = new Asked(new ArrayList<>(parts), width, height, scale);
    if (parts.size() != count || width < 1 || height < 1 || now.equals(asked)) {
      return;
    }
    asked = now;
    List<List<Integer>> lines = ChairPages.lines(parts);
    pages =
        ChairPages.pages(lines.size(), split -> holds(split, lines, now)).stream()
            .map(on -> on.stream().map(lines::get).toList())
            .toList();
  }

  /** Whether pages hold the lines that are on them, those with as many lines cut alike. */
  private boolean holds(List<List<Integer>> split, List<List<Integer>> lines, Asked page) {
    Map<Integer, List<Beside>> bySize = new TreeMap<>();
    for (List<Integer> on : split) {
      Beside parts = Beside.of(on.stream().map(lines::get).toList(), page.parts());
      bySize.computeIfAbsent(parts.parts().size(), size -> new ArrayList<>()).add(parts);
    }
    return bySize.values().stream()
        .filter(pages -> !pages.get(0).parts().isEmpty())
        .allMatch(
            pages -> {
              double margin = ScoreSheet.margin(pages.get(0).parts().size(), page.scale());
              double width = page.width() - margin;
              return fitted.holds(
                  pages, new SheetPage(width, page.height(), page.scale(), List.of(), 0));
            });
  }

  /** One reader alone, or {@link #ALL}. */
  void choose(int wanted) {
    chosen = wanted;
    reader = wanted == ALL ? 0 : wanted;
  }

  int chosen() {
    return chosen;
  }

  /** True where one reader's part fills the page. */
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
      int to = Math.floorMod(page() + by, pages.size());
      reader = pages.get(to).get(0).get(0);
    } else if (count > 1) {
      choose(Math.floorMod(chosen + 1 + by, count + 1) - 1);
    }
  }

  /** What is in view from above: a line for each entry, with those who read it. */
  List<List<Integer>> shown() {
    return alone() ? List.of(List.of(Math.max(0, chosen))) : pages.get(page());
  }

  /** The pages like the one in view that can be turned to from it. */
  List<List<List<Integer>>> others() {
    List<List<Integer>> now = shown();
    List<List<List<Integer>>> all =
        alone() ? IntStream.range(0, count).mapToObj(one -> List.of(List.of(one))).toList() : pages;
    return all.stream().filter(page -> !page.equals(now)).toList();
  }

  /** Where one of several is alone, the pages on which all stand together. */
  List<List<List<Integer>>> score() {
    return alone() && count > 1 ? pages : List.of();
  }

  /** The pages on which all stand. */
  List<List<List<Integer>>> together() {
    return pages;
  }

  /** Who is not on a page. */
  List<Integer> elsewhere(List<List<Integer>> page) {
    return IntStream.range(0, count)
        .filter(one -> page.stream().noneMatch(line -> line.contains(one)))
        .boxed()
        .toList();
  }

  private int page() {
    for (int i = 0; i < pages.size(); i++) {
      if (pages.get(i).stream().anyMatch(line -> line.contains(reader))) {
        return i;
      }
    }
    return 0;
  }
}
