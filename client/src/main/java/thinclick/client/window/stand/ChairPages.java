package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.material.WrittenPart;

/** Whose parts stand together where several read at one computer; players by their number. */
final class ChairPages {
  private ChairPages() {}

  /**
   * Those who read the very same line read it together, in the order of the first of each.
   *
   * @param parts a part for each player; null where nothing is dealt, which is read with nobody
   */
  static List<List<Integer>> lines(List<@Nullable WrittenPart> parts) {
    List<List<Integer>> lines = new ArrayList<>();
    for (int player = 0; player < parts.size(); player++) {
      WrittenPart part = parts.get(player);
      List<Integer> with = null;
      for (List<Integer> line : lines) {
        if (with == null && sameLine(parts.get(line.get(0)), part)) {
          with = line;
        }
      }
      if (with == null) {
        with = new ArrayList<>();
        lines.add(with);
      }
      with.add(player);
    }
    return lines;
  }

  /** The click plan aside: it is the room's, and may be changed for one a moment earlier. */
  private static boolean sameLine(@Nullable WrittenPart one, @Nullable WrittenPart other) {
    return one != null
        && other != null
        && one.heading().title().equals(other.heading().title())
        && one.heading().tempo() == other.heading().tempo()
        && one.instrument().equals(other.instrument())
        && one.transposition().equals(other.transposition())
        && one.meter().equals(other.meter())
        && one.stepsPerBeat() == other.stepsPerBeat()
        && one.swing().equals(other.swing())
        && one.bars() == other.bars()
        && one.repeatFromBar() == other.repeatFromBar()
        && one.notes().equals(other.notes())
        && one.chords().equals(other.chords())
        && one.groupings().equals(other.groupings())
        && one.freeBars().equals(other.freeBars());
  }

  /**
   * The lines page by page, in order and about as many on each: as few pages as hold every line at
   * its least height. A line that is higher than a page has one of its own.
   *
   * @param firsts how high each line is at the least where it is a page's first, pixels
   * @param heights how high it is below another
   * @param height of a page, pixels
   * @param gap between two lines, pixels
   */
  static List<List<Integer>> pages(
      List<Double> firsts, List<Double> heights, double height, double gap) {
    for (int pages = 1; pages < heights.size(); pages++) {
      List<List<Integer>> split = split(heights.size(), pages);
      if (split.stream().allMatch(page -> high(page, firsts, heights, gap) <= height)) {
        return split;
      }
    }
    return split(heights.size(), Math.max(1, heights.size()));
  }

  private static double high(
      List<Integer> page, List<Double> firsts, List<Double> heights, double gap) {
    double below = page.stream().skip(1).mapToDouble(line -> heights.get(line) + gap).sum();
    return firsts.get(page.get(0)) + below;
  }

  private static List<List<Integer>> split(int lines, int pages) {
    List<List<Integer>> split = new ArrayList<>();
    int next = 0;
    for (int page = 0; page < pages; page++) {
      int to = (int) Math.ceil((double) lines * (page + 1) / pages);
      List<Integer> on = new ArrayList<>();
      for (; next < to; next++) {
        on.add(next);
      }
      split.add(on);
    }
    return split;
  }
}
