package thinclick.client.window.stand;

import java.util.List;
import java.util.stream.IntStream;
import thinclick.client.window.stand.Cutting.Rulers;
import thinclick.client.window.stand.Cutting.Uncut;
import thinclick.server.engraving.Reading;
import thinclick.server.engraving.StaffSystem;

/**
 * Finds how music fits its page: as many lines below each other as stand there in the size that is
 * asked for, at least two wherever these are read well, and then as large as fills the page. Larger
 * music is asked for with a larger scale, which never makes it smaller: it takes lines from the
 * page before, and bars from the line.
 */
final class Fitting {
  /** So much smaller a staff may become to keep a period's bars in one line. */
  private static final double GIVE = 0.75;

  /** So much smaller it may become so that all rulers stand as far below their lines. */
  private static final double EVEN_GIVE = 0.85;

  /** Where not even one bar fits otherwise. */
  private static final double SMALLEST_SPACE = 3;

  private static final double SAME = 1e-6;

  private static final int MOST_PLACES = 8;

  /** By so much of itself a staff space becomes smaller at the least before it is tried again. */
  private static final double LEAST_SMALLER = 0.002;

  /** So much larger than what is asked for that no line not yet laid out can take it back. */
  private static final double CLEARLY = 1.2;

  /** So much lower, in its own spaces, a line may be where it is wide. */
  private static final double LOOSER = 1.1;

  /**
   * Above every line and below the last, staff spaces, as far as music stays as large as wanted.
   */
  private static final double AIR = 0.6;

  private Fitting() {}

  /** True where the parts are read well when they stand below each other. */
  static boolean holds(Uncut parts, SheetPage page) {
    double floor = SheetPage.floor(page.scale());
    double about = room(parts.lookingAhead(1), page, 1, 0);
    boolean clear = about > floor * CLEARLY || about * LOOSER < floor;
    return clear ? about > floor : of(parts, page).space() > floor - 0.01;
  }

  /** Fits parts into their page, from above. */
  static SheetFit of(Uncut parts, SheetPage page) {
    Cutting cutting = cutting(parts, page);
    int lines = cutting.plans().size();
    int fewest = Math.min(lines, 2);
    for (int others : others(page)) {
      double least =
          others > 0 ? page.asked() * GIVE : lines == 1 ? 0 : SheetPage.floor(page.scale());
      for (int places = Math.min(lines, MOST_PLACES); places >= fewest; places--) {
        double wanted = page.atLeast(places > 2 ? page.asked() : least);
        if (room(cutting, page, places, others) * LOOSER >= wanted) {
          SheetFit fit = laid(cutting, page, places, others, wanted);
          if (fit.space() >= wanted - SAME) {
            return fit;
          }
        }
      }
    }
    return oneLine(parts, page);
  }

  /** The lines of the others stand there all or not at all. */
  private static List<Integer> others(SheetPage page) {
    return page.others() > 0 ? List.of(page.others(), 0) : List.of(0);
  }

  /** A period in a line, or what of it leaves the staff nearly as large as is asked for. */
  private static Cutting cutting(Uncut parts, SheetPage page) {
    double least = Math.max(Math.min(page.asked(), SheetPage.LEAST_SPACE), page.asked() * GIVE);
    int bars = parts.usualBars();
    Cutting cutting = parts.into(bars);
    while (bars > 1 && cutting.narrowest() * least > page.width()) {
      bars = bars == 3 ? 1 : bars / 2;
      cutting = parts.into(bars);
    }
    return cutting;
  }

  /**
   * Where one line fits, it shows what comes next too, and what was before wherever three bars
   * stand there in music that is not too small; four where they do, so that it is turned half as
   * often.
   */
  private static SheetFit oneLine(Uncut parts, SheetPage page) {
    List<Cutting> cuttings =
        IntStream.iterate(Reading.MOST_BARS - 1, bars -> bars > 0, bars -> bars - 1)
            .mapToObj(parts::lookingAhead)
            .toList();
    double best =
        cuttings.stream().mapToDouble(cutting -> room(cutting, page, 1, 0)).max().orElse(0);
    double least = page.space() > 0 ? best : Math.max(best * 0.97, Math.min(best, page.floor()));
    double wanted = Math.min(page.atLeast(page.asked()), least);
    double small = Math.max(Math.max(page.floor(), SheetPage.LEAST_SPACE), page.asked() * GIVE);
    double readable = page.space() > 0 ? wanted : Math.min(small, wanted);
    Cutting chosen =
        cuttings.stream()
            .filter(
                cutting ->
                    room(cutting, page, 1, 0) >= (cutting.longest() > 2 ? readable : wanted) - SAME)
            .findFirst()
            .orElse(cuttings.get(cuttings.size() - 1));
    if (best < SheetPage.LEAST_SPACE) {
      Cutting bar = parts.into(1);
      chosen = room(bar, page, 1, 0) >= SheetPage.LEAST_SPACE ? bar : chosen;
    }
    double withOthers = Math.max(page.floor(), page.asked() * GIVE);
    boolean all = room(chosen, page, 1, page.others()) >= withOthers;
    return laid(chosen, page, 1, all ? page.others() : 0, wanted);
  }

  /** How large a staff space can be, as far as that is known before the lines are laid out. */
  private static double room(Cutting cutting, SheetPage page, int places, int others) {
    double high = SheetFit.spaces(cutting.high(), page.lanes(), places, others);
    double wide = page.width() / cutting.narrowest();
    return Math.max(SMALLEST_SPACE, Math.min(page.most(), Math.min(wide, page.height() / high)));
  }

  /**
   * With all rulers as far below their lines where the page has room for that: a little closer to
   * the music rather than in music smaller than is asked for.
   */
  private static SheetFit laid(
      Cutting cutting, SheetPage page, int places, int others, double wanted) {
    double wide = Math.min(page.most(), page.width() / cutting.narrowest());
    double most =
        Math.max(SMALLEST_SPACE, Math.min(wide, room(cutting, page, places, others) * LOOSER));
    SheetFit near = filled(cutting, page, places, others, most, 0, Rulers.NEAR);
    if (places > 1 && near.space() < wanted - SAME) {
      return filled(cutting, page, places, others, most, wanted - SAME, Rulers.EVEN_CLOSE);
    }
    double least = Math.max(near.space() * EVEN_GIVE, Math.min(near.space(), wanted) - SAME);
    double asked = Math.min(near.space(), Math.max(wanted, page.asked())) - SAME;
    SheetFit even = filled(cutting, page, places, others, near.space(), least, Rulers.EVEN);
    if (even.space() >= asked) {
      return aired(even, cutting, page, wanted, Rulers.EVEN);
    }
    SheetFit close = filled(cutting, page, places, others, near.space(), least, Rulers.EVEN_CLOSE);
    if (close.space() >= asked || even.space() >= least) {
      return close.space() >= asked
          ? aired(close, cutting, page, wanted, Rulers.EVEN_CLOSE)
          : aired(even, cutting, page, wanted, Rulers.EVEN);
    }
    if (close.space() >= least) {
      return aired(close, cutting, page, wanted, Rulers.EVEN_CLOSE);
    }
    SheetFit clear = filled(cutting, page, places, others, near.space(), least, Rulers.CLEAR);
    return clear.space() >= least ? clear : near;
  }

  /** A little smaller where the page is full, so that nothing stands close to its edges. */
  private static SheetFit aired(
      SheetFit full, Cutting cutting, SheetPage page, double wanted, Rulers rulers) {
    double air = AIR * (full.places() + 1) * full.space();
    double high = full.height(page.lanes()) + air;
    double space = Math.max(Math.min(full.space(), wanted), full.space() * page.height() / high);
    if (space >= full.space()) {
      return full;
    }
    List<List<StaffSystem>> lines = cutting.laid(page.width() / space, full.places(), rulers);
    SheetFit fit = new SheetFit(lines, space, full.others(), full.places(), full.held());
    return fit.height(page.lanes()) <= page.height() + 0.01 ? fit : full;
  }

  /**
   * As large as the page holds it.
   *
   * @param least where it would be smaller, how much is not asked
   */
  private static SheetFit filled(
      Cutting cutting,
      SheetPage page,
      int places,
      int others,
      double most,
      double least,
      Rulers rulers) {
    double space = most;
    double smaller = LEAST_SMALLER;
    SheetFit fit =
        new SheetFit(
            cutting.laid(page.width() / space, places, rulers),
            space,
            others,
            places,
            cutting.held());
    while (space > Math.max(SMALLEST_SPACE, least)
        && fit.height(page.lanes()) > page.height() + 0.01) {
      double holds = space * page.height() / fit.height(page.lanes());
      space = Math.max(SMALLEST_SPACE, Math.min(space * (1 - smaller), holds));
      smaller *= 1.25; // a line that is spaced wider may be no lower
      fit =
          space < least
              ? new SheetFit(List.of(), space, others, places, cutting.held())
              : new SheetFit(
                  cutting.laid(page.width() / space, places, rulers),
                  space,
                  others,
                  places,
                  cutting.held());
    }
    return fit;
  }
}
