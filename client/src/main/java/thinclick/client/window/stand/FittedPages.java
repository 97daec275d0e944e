package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import thinclick.client.window.stand.Cutting.Uncut;
import thinclick.server.material.WrittenPart;

/**
 * How large the music of a page is beside which others are turned to. Pages with as many parts are
 * cut alike; those with more or fewer have their staves as large, so that an eye that goes from one
 * to the other need not get used to it.
 */
final class FittedPages {
  private Map<Spelled, Uncut> spelled = new HashMap<>();

  /** What was spelled: pages that are cut alike, and whose periods lead. */
  private record Spelled(List<List<WrittenPart>> pages, WrittenPart leading) {}

  /**
   * A page as it is fitted.
   *
   * @param lanes how many players read each of its staves, or one of a page that is cut alike
   */
  record Fitted(SheetFit fit, List<Integer> lanes) {}

  /**
   * Fits a page.
   *
   * @param others the pages that are turned to from it
   * @param place where it stands; its lanes are the page's own
   */
  Fitted fit(Beside page, List<Beside> others, SheetPage place) {
    return fit(page, others, place, List.of(), place);
  }

  /**
   * Fits a page with music that is no smaller than in a score of the same bars.
   *
   * @param score the pages of the score; none where there is no such
   * @param scorePlace where these stand
   */
  Fitted fit(
      Beside page, List<Beside> others, SheetPage place, List<Beside> score, SheetPage scorePlace) {
    Map<Spelled, Uncut> now = new HashMap<>();
    List<Beside> same = score.stream().filter(page::isOfTheSameBars).toList();
    double floor =
        same.isEmpty()
            ? 0
            : fit(same.get(0), same.subList(1, same.size()), scorePlace, now).fit().space();
    Fitted fitted = fit(page, others, place.from(floor), now);
    spelled = now;
    return fitted;
  }

  private Fitted fit(Beside page, List<Beside> others, SheetPage place, Map<Spelled, Uncut> now) {
    WrittenPart leading =
        Uncut.leading(
            Stream.concat(Stream.of(page), others.stream().filter(page::isOfTheSameBars))
                .flatMap(any -> any.parts().stream())
                .toList());
    List<Beside> alike = page.alike(others);
    List<Integer> lanes = page.lanes(alike);
    SheetPage own = place.with(lanes);
    Uncut uncut = uncut(page, alike, leading, now);
    SheetFit fit = Fitting.of(uncut, own);
    double least = fit.space();
    for (List<Beside> more : unlike(page, others)) {
      Beside first = more.get(0);
      List<Beside> rest = more.subList(1, more.size());
      SheetPage there = place.with(first.lanes(rest));
      least = Math.min(least, Fitting.of(uncut(first, rest, leading, now), there).space());
    }
    boolean smaller = least < fit.space();
    return new Fitted(smaller ? Fitting.of(uncut, own.of(least)) : fit, lanes);
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

  /** The parts that are laid out, spelled anew only where others are written. */
  private Uncut uncut(
      Beside page, List<Beside> alike, WrittenPart leading, Map<Spelled, Uncut> now) {
    List<List<WrittenPart>> pages =
        Stream.concat(Stream.of(page), alike.stream()).map(Beside::parts).toList();
    Spelled wanted = new Spelled(pages, leading);
    Uncut before = spelled.get(wanted);
    Uncut uncut = before == null ? Uncut.led(pages, leading) : before;
    now.put(wanted, uncut);
    return uncut;
  }
}
