package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
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
   * The lines page by page, in order and about as many on each: as few pages as hold them all. A
   * line that is too high for any page has one of its own.
   *
   * @param lines how many there are
   * @param holds whether pages hold what is on each of them below each other, lines by number
   */
  static List<List<Integer>> pages(int lines, Predicate<List<List<Integer>>> holds) {
    for (int pages = 1; pages < lines; pages++) {
      List<List<Integer>> split = split(lines, pages);
      if (holds.test(split)) {
        return split;
      }
    }
    return split(lines, Math.max(1, lines));
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
