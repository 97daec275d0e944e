package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Which line of music stands in which place of the page while a bar sounds.
 *
 * <p>A page is read downwards and turned in two halves, as players do it who have no hand free:
 * once its last line is half over, the places above it show the next page; the last place follows
 * when the first bar there is over. So nothing that is being read ever moves, what comes next is in
 * view before it is needed, and only around a turn does older music stand below newer; and where
 * the last page has no line for a place, which keeps the one it had.
 *
 * @param lines by number, from above; {@link #NOTHING} where a place is empty
 * @param turnedAbove how many places from above show the page after the one in the place below
 *     them; 0 where all places are of one page
 */
record PageTurn(List<Integer> lines, int turnedAbove) {
  /** An empty place. */
  static final int NOTHING = -1;

  PageTurn {
    lines = List.copyOf(lines);
  }

  /**
   * Which bars a line has.
   *
   * @param firstBar from 0
   * @param bars how many, those of the next line that it shows ahead among them
   */
  record Line(int firstBar, int bars) {
    private boolean has(int bar) {
      return bar >= firstBar && bar < endBar();
    }

    /** The first bar after it. */
    int endBar() {
      return firstBar + bars;
    }

    private boolean halfOver(int bar) {
      return bar - firstBar >= bars / 2;
    }

    /**
     * Whether the line before it is still read for its marks, since its first bar sounds; of two
     * lines with a bar each neither can wait.
     */
    private boolean waits(int bar, int places) {
      return (bars > 1 || places > 2) && bar <= firstBar;
    }
  }

  /** Where no bar sounds: a page in order; the last is filled with lines of the one before. */
  static PageTurn page(int lines, int places, int page) {
    return new PageTurn(from(lines, places, Math.min(page * places, lines - places)), 0);
  }

  /**
   * While a bar sounds.
   *
   * @param places of a page, from 1
   * @param bar from 0
   */
  static PageTurn at(List<Line> lines, int places, int bar) {
    int current = current(lines, bar);
    int page = current / places;
    int place = current % places;
    boolean more = (page + 1) * places < lines.size();
    boolean waits = places > 1 && lines.get(current).waits(bar, places);
    if (places > 1 && place == places - 1 && more && lines.get(current).halfOver(bar)) {
      return turned(lines.size(), places, page + 1, waits ? places - 2 : places - 1);
    }
    return turned(lines.size(), places, page, waits && place == 0 ? places - 1 : places);
  }

  /** A page of which so many places from above are turned at most, over the page before it. */
  private static PageTurn turned(int lines, int places, int page, int most) {
    if (page == 0) {
      return new PageTurn(on(lines, places, page), 0);
    }
    int turned = Math.min(most, lines - page * places);
    List<Integer> on = new ArrayList<>(on(lines, places, page).subList(0, turned));
    on.addAll(on(lines, places, page - 1).subList(turned, places));
    return new PageTurn(on, turned == places ? 0 : turned);
  }

  /** Whether every bar that is over stays in view while the next one sounds, for its marks. */
  static boolean keepsOver(List<Line> lines, int places) {
    int end = lines.isEmpty() ? 0 : lines.get(lines.size() - 1).endBar();
    return IntStream.range(1, end)
        .allMatch(
            bar ->
                at(lines, places, bar).lines().stream()
                    .anyMatch(line -> line != NOTHING && lines.get(line).has(bar - 1)));
  }

  /**
   * The line on which a bar is played; of several that have it the first that shows what follows
   * too, so that what was before stays in view.
   */
  static int current(List<Line> lines, int bar) {
    int has = bar < 0 ? 0 : lines.size() - 1;
    for (int i = lines.size() - 1; i >= 0 && lines.get(i).endBar() > bar; i--) {
      Line line = lines.get(i);
      if (line.has(bar) && (!lines.get(has).has(bar) || line.has(bar + 1))) {
        has = i;
      }
    }
    return has;
  }

  /** The first bar that is played on a line. */
  static int firstPlayed(List<Line> lines, int line) {
    Line on = lines.get(line);
    return IntStream.range(on.firstBar(), on.endBar())
        .filter(bar -> current(lines, bar) == line)
        .findFirst()
        .orElse(on.firstBar());
  }

  /**
   * The page that is turned to from another where no bar sounds. Lines that stand alone on their
   * page may have several bars in common: those that bring one new bar only are turned over.
   *
   * @param by so many pages on, or back where it is negative
   */
  static int leafed(List<Line> lines, int places, int page, int by) {
    if (places > 1) {
      return Math.max(0, Math.min(page + by, pages(lines.size(), places) - 1));
    }
    int line = page;
    for (int i = 0; i < Math.abs(by); i++) {
      line = by > 0 ? after(lines, line) : before(lines, line);
    }
    return line;
  }

  private static int after(List<Line> lines, int line) {
    int to = Math.min(line + 1, lines.size() - 1);
    while (to + 1 < lines.size() && lines.get(to + 1).firstBar() < lines.get(line).endBar()) {
      to++;
    }
    return to;
  }

  private static int before(List<Line> lines, int line) {
    int to = Math.max(0, line - 1);
    while (to > 0 && lines.get(to - 1).endBar() > lines.get(line).firstBar()) {
      to--;
    }
    return to;
  }

  /** How many pages there are. */
  static int pages(int lines, int places) {
    return Math.max(1, (lines + places - 1) / places);
  }

  private static List<Integer> on(int lines, int places, int page) {
    return from(lines, places, page * places);
  }

  private static List<Integer> from(int lines, int places, int first) {
    int from = Math.max(0, first);
    return IntStream.range(from, from + places)
        .mapToObj(line -> line < lines ? line : NOTHING)
        .toList();
  }
}
