package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import thinclick.client.window.stand.Cutting.Uncut;
import thinclick.server.material.WrittenPart;

/**
 * How large the music of a page is beside which others are turned to. Pages with as many parts are
 * cut alike; those with more or fewer have their staves as large, so that an eye that goes from one
 * to the other need not get used to it.
 *
 * <p>What was spelled and fitted last is kept: a page is turned to and back, and asked for at the
 * same size again and again.
 */
final class FittedPages {
  /** Of a page, those beside it with more parts or fewer, and the score; each a megabyte or so. */
  private static final int MOST = 5;

  private final Kept<Spelled, Uncut> spelled = new Kept<>(MOST);
  private final Kept<Asked, SheetFit> fits = new Kept<>(MOST);

  /**
   * What was spelled: pages that are cut alike, whichever of them is in view, and the periods that
   * lead.
   */
  private record Spelled(Set<List<WrittenPart>> pages, int leadFrom, int leadBars) {}

  /** What was fitted: parts into a page. */
  private record Asked(Uncut parts, SheetPage page) {}

  /** The answers that were wanted last. */
  private static final class Kept<K, V> {
    private final int most;
    private final Map<K, V> answers = new LinkedHashMap<>(16, 0.75f, true);

    Kept(int most) {
      this.most = most;
    }

    V get(K asked, Function<K, V> finds) {
      V known = answers.get(asked);
      if (known == null) {
        known = finds.apply(asked);
        answers.put(asked, known);
        if (answers.size() > most) {
          answers.remove(answers.keySet().iterator().next());
        }
      }
      return known;
    }
  }

  /**
   * A page as it is fitted.
   *
   * @param lanes how many players read each of its staves, or one of a page that is cut alike
   * @param from which staff of the fitted lines is its first
   */
  record Fitted(SheetFit fit, List<Integer> lanes, int from) {}

  /**
   * Fits a page with music that is no smaller than in a score of the same bars.
   *
   * @param score the pages of the score; none where there is no such
   * @param scorePlace where these stand
   */
  Fitted fit(
      Beside page, List<Beside> others, SheetPage place, List<Beside> score, SheetPage scorePlace) {
    List<Beside> same = score.stream().filter(page::isOfTheSameBars).toList();
    double floor =
        same.isEmpty()
            ? 0
            : fit(same.get(0), same.subList(1, same.size()), scorePlace).fit().space();
    return fit(page, others, place.from(floor));
  }

  /** True where pages that are cut alike are read well in their place; its lanes are their own. */
  boolean holds(List<Beside> pages, SheetPage place) {
    Beside first = pages.get(0);
    List<Beside> alike = first.alike(pages.subList(1, pages.size()));
    WrittenPart leading =
        Uncut.leading(
            Stream.concat(Stream.of(first), alike.stream())
                .flatMap(page -> page.parts().stream())
                .toList());
    return Fitting.holds(uncut(first, alike, leading), place.with(first.lanes(alike)));
  }

  /**
   * Fits a page.
   *
   * @param others the pages that are turned to from it
   * @param place where it stands; its lanes are the page's own
   */
  Fitted fit(Beside page, List<Beside> others, SheetPage place) {
    WrittenPart leading =
        Uncut.leading(
            Stream.concat(Stream.of(page), others.stream().filter(page::isOfTheSameBars))
                .flatMap(any -> any.parts().stream())
                .toList());
    List<Beside> alike = page.alike(others);
    List<Integer> lanes = page.lanes(alike);
    SheetPage own = place.with(lanes);
    Uncut uncut = uncut(page, alike, leading);
    SheetFit fit = fitted(uncut, own);
    double least = fit.space();
    for (List<Beside> more : unlike(page, others)) {
      Beside first = more.get(0);
      List<Beside> rest = more.subList(1, more.size());
      SheetPage there = place.with(first.lanes(rest));
      least = Math.min(least, fitted(uncut(first, rest, leading), there).space());
    }
    boolean smaller = least < fit.space();
    SheetFit as = smaller ? fitted(uncut, own.of(least)) : fit;
    return new Fitted(as, lanes, uncut.firstStaff(page.parts()));
  }

  /** The pages of the same bars with more parts or fewer, those with as many together. */
  private static Collection<List<Beside>> unlike(Beside page, List<Beside> others) {
    Map<Integer, List<Beside>> bySize = new TreeMap<>();
    for (Beside other : others) {
      int size = other.parts().size();
      if (size != page.parts().size() && page.isOfTheSameBars(other)) {
        bySize.computeIfAbsent(size, any -> new ArrayList<>()).add(other);
      }
    }
    return bySize.values();
  }

  private SheetFit fitted(Uncut parts, SheetPage page) {
    return fits.get(new Asked(parts, page), asked -> Fitting.of(asked.parts(), asked.page()));
  }

  /** The parts that are laid out, spelled anew only where others are written. */
  private Uncut uncut(Beside page, List<Beside> alike, WrittenPart leading) {
    Set<List<WrittenPart>> pages = new LinkedHashSet<>(List.of(page.parts()));
    alike.forEach(other -> pages.add(other.parts()));
    return spelled.get(
        new Spelled(pages, leading.repeatFromBar(), leading.bars()),
        wanted -> Uncut.led(List.copyOf(wanted.pages()), leading));
  }
}
