package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.material.WrittenPart;

/** What is written on the staves of a page, who reads them, and what stands beside the page. */
final class SheetParts {
  private final List<List<String>> readers;
  private final List<@Nullable WrittenPart> parts;
  private List<Beside> beside = List.of();
  private List<Beside> score = List.of();

  /**
   * @param readers for each staff who reads it
   */
  SheetParts(List<List<String>> readers) {
    this.readers = readers.stream().map(List::copyOf).toList();
    parts = new ArrayList<>(Collections.nCopies(readers.size(), null));
  }

  void write(int staff, @Nullable WrittenPart now) {
    parts.set(staff, now);
  }

  @Nullable WrittenPart part(int staff) {
    return parts.get(staff);
  }

  List<String> readers(int staff) {
    return readers.get(staff);
  }

  /**
   * The pages that are turned to from this one; answers whether they are others than before.
   *
   * @param together where a part stands alone, the pages on which all stand
   */
  boolean beside(List<Beside> pages, List<Beside> together) {
    boolean others = !pages.equals(beside) || !together.equals(score);
    beside = pages;
    score = together;
    return others;
  }

  /** The pages that are turned to from this one. */
  List<Beside> beside() {
    return beside;
  }

  /** Where a part stands alone, the pages on which all stand. */
  List<Beside> score() {
    return score;
  }

  /** How many staves stand on this page, or on one that is turned to from it if there are more. */
  int staves() {
    return Math.max(readers.size(), staves(beside));
  }

  /** The same of the pages on which all stand. */
  int scoreStaves() {
    return staves(score);
  }

  private static int staves(List<Beside> pages) {
    return pages.stream().mapToInt(page -> page.parts().size()).max().orElse(0);
  }

  /** The page itself, of some staves. */
  Beside own(List<Integer> staves) {
    List<WrittenPart> written = new ArrayList<>();
    for (int staff : staves) {
      WrittenPart part = parts.get(staff);
      if (part != null) {
        written.add(part);
      }
    }
    return new Beside(written, staves.stream().map(staff -> readers.get(staff).size()).toList());
  }

  /** The staves whose parts are of the same bars as the first that is dealt. */
  List<Integer> agreeing() {
    List<Integer> agree = new ArrayList<>();
    for (int staff = 0; staff < parts.size(); staff++) {
      WrittenPart part = parts.get(staff);
      WrittenPart first = agree.isEmpty() ? part : parts.get(agree.get(0));
      if (part != null && first != null && DealtPart.sameBars(first, part)) {
        agree.add(staff);
      }
    }
    return agree;
  }
}
