package thinclick.client.window.stand;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import thinclick.client.window.look.Look;
import thinclick.client.window.stand.Cutting.Rulers;
import thinclick.client.window.stand.Cutting.Uncut;
import thinclick.server.engraving.Reading;
import thinclick.server.engraving.StaffSystem;

/**
 * How large music is on its page, and how it is cut into lines: as many lines below each other as
 * stand there in the size that is asked for, at least two wherever these are read well, and then as
 * large as fills the page. Larger music is asked for with a larger {@code scale}, which never makes
 * it smaller: it takes lines from the page before, and bars from the line.
 *
 * @param lines from the first bar to the last; in each a staff for each part, those of the page
 *     first and then those of the pages that are alike
 * @param space a staff space, pixels
 * @param others how many lines of other players stand below each
 * @param places how many lines stand on a page
 * @param held what reminds of the click in each bar
 */
record SheetFit(
    List<List<StaffSystem>> lines, double space, int others, int places, List<String> held) {
  /** A staff space of usual size, read from a metre away, pixels. */
  static final double USUAL_SPACE = 12;

  static final double LEAST_SPACE = 8;
  static final double MOST_SPACE = 28;

  /** Between two lines, staff spaces: room for the rule and its words where a page is turned. */
  static final double GAP_SPACES = 2.5;

  /** Between two staves of a line, staff spaces. */
  static final double STAFF_GAP = 1;

  /** So much smaller a staff may become to keep a period's bars in one line. */
  private static final double GIVE = 0.75;

  /** So much smaller it may become so that all rulers stand as far below their lines. */
  private static final double EVEN_GIVE = 0.85;

  /** So much larger than asked for music becomes to fill a page. */
  private static final double GROW = 1.5;

  /** Where not even one bar fits otherwise. */
  private static final double SMALLEST_SPACE = 3;

  /** So much more room staves of a line take to be as far apart as each other. */
  private static final double EVEN = 1.1;

  private static final double SAME = 1e-6;

  private static final int MOST_PLACES = 8;

  /** By so much of itself a staff space becomes smaller at the least before it is tried again. */
  private static final double LEAST_SMALLER = 0.002;

  /** So much larger than what is asked for that no line not yet laid out can take it back. */
  private static final double CLEARLY = 1.2;

  /** So much lower, in its own spaces, a line may be where it is wide. */
  private static final double LOOSER = 1.1;

  /**
   * Where parts stand.
   *
   * @param width pixels
   * @param height pixels
   * @param scale how large text and music are wanted, 1 is usual
   * @param lanes how many players read each part, with marks in a lane of their own
   * @param others how many lines of other players are wanted below
   * @param space how large a staff space is to be, pixels, as on a page beside it; 0 for as large
   *     as suits the page
   * @param floor how large it is to be at the least, pixels, as where the part stands in a score; 0
   *     for any size
   */
  record Page(
      double width,
      double height,
      double scale,
      List<Integer> lanes,
      int others,
      double space,
      double floor) {
    /** With a size of its own. */
    Page(double width, double height, double scale, List<Integer> lanes, int others) {
      this(width, height, scale, lanes, others, 0, 0);
    }

    /** The same for parts that are read by so many each. */
    Page with(List<Integer> readers) {
      return new Page(width, height, scale, readers, others, space, floor);
    }

    /** The same with music of a given size. */
    Page of(double wanted) {
      return new Page(width, height, scale, lanes, others, wanted, floor);
    }

    /** The same with music of a given size or larger. */
    Page from(double least) {
      return new Page(width, height, scale, lanes, others, space, least);
    }

    /** What music is not to be smaller than, where a page gives that. */
    private double atLeast(double usual) {
      return space > 0 ? space : Math.max(floor, usual);
    }

    /** The least with the smallest text, the usual with the usual, the most with the largest. */
    private double asked() {
      double smallest = Look.SMALLEST_TEXT / Look.USUAL_TEXT;
      double largest = Look.LARGEST_TEXT / Look.USUAL_TEXT;
      double space =
          scale < 1
              ? between(LEAST_SPACE, USUAL_SPACE, (scale - smallest) / (1 - smallest))
              : between(USUAL_SPACE, MOST_SPACE, (scale - 1) / (largest - 1));
      return Math.max(LEAST_SPACE, Math.min(MOST_SPACE, space));
    }

    private static double between(double from, double to, double share) {
      return from + (to - from) * share;
    }

    private double most() {
      return space > 0 ? space : Math.min(MOST_SPACE, asked() * GROW);
    }
  }

  /** The least staff space at which music is shared or turned; larger text asks for more. */
  static double floor(double scale) {
    return Math.min(MOST_SPACE, LEAST_SPACE * Math.max(1, scale));
  }

  /** True where the parts are read well when they stand below each other. */
  static boolean holds(Uncut parts, Page page) {
    double floor = floor(page.scale());
    double about = room(parts.lookingAhead(1), page, 1, 0);
    boolean clear = about > floor * CLEARLY || about * LOOSER < floor;
    return clear ? about > floor : of(parts, page).space() > floor - 0.01;
  }

  /** Fits parts into their page, from above. */
  static SheetFit of(Uncut parts, Page page) {
    Cutting cutting = cutting(parts, page);
    int lines = cutting.plans().size();
    int fewest = Math.min(lines, 2);
    for (int others : others(page)) {
      double least = others > 0 ? page.asked() * GIVE : lines == 1 ? 0 : floor(page.scale());
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
  private static List<Integer> others(Page page) {
    return page.others() > 0 ? List.of(page.others(), 0) : List.of(0);
  }

  /** A period in a line, or what of it leaves the staff nearly as large as is asked for. */
  private static Cutting cutting(Uncut parts, Page page) {
    double least = Math.max(Math.min(page.asked(), LEAST_SPACE), page.asked() * GIVE);
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
  private static SheetFit oneLine(Uncut parts, Page page) {
    List<Cutting> cuttings =
        IntStream.iterate(Reading.MOST_BARS - 1, bars -> bars > 0, bars -> bars - 1)
            .mapToObj(parts::lookingAhead)
            .toList();
    double best =
        cuttings.stream().mapToDouble(cutting -> room(cutting, page, 1, 0)).max().orElse(0);
    double least = page.space() > 0 ? best : Math.max(best * 0.97, Math.min(best, page.floor()));
    double wanted = Math.min(page.atLeast(page.asked()), least);
    double small = Math.max(Math.max(page.floor(), LEAST_SPACE), page.asked() * GIVE);
    double readable = page.space() > 0 ? wanted : Math.min(small, wanted);
    Cutting chosen =
        cuttings.stream()
            .filter(
                cutting ->
                    room(cutting, page, 1, 0) >= (cutting.longest() > 2 ? readable : wanted) - SAME)
            .findFirst()
            .orElse(cuttings.get(cuttings.size() - 1));
    if (best < LEAST_SPACE) {
      Cutting bar = parts.into(1);
      chosen = room(bar, page, 1, 0) >= LEAST_SPACE ? bar : chosen;
    }
    double withOthers = Math.max(page.floor(), page.asked() * GIVE);
    boolean all = room(chosen, page, 1, page.others()) >= withOthers;
    return laid(chosen, page, 1, all ? page.others() : 0, wanted);
  }

  /** How large a staff space can be, as far as that is known before the lines are laid out. */
  private static double room(Cutting cutting, Page page, int places, int others) {
    double high = spaces(cutting.high(), page.lanes(), places, others);
    double wide = page.width() / cutting.narrowest();
    return Math.max(SMALLEST_SPACE, Math.min(page.most(), Math.min(wide, page.height() / high)));
  }

  /**
   * With all rulers as far below their lines where the page has room for that: a little closer to
   * the music rather than in music smaller than is asked for.
   */
  private static SheetFit laid(Cutting cutting, Page page, int places, int others, double wanted) {
    double wide = Math.min(page.most(), page.width() / cutting.narrowest());
    double most =
        Math.max(SMALLEST_SPACE, Math.min(wide, room(cutting, page, places, others) * LOOSER));
    SheetFit near = filled(cutting, page, places, others, most, 0, Rulers.NEAR);
    if (places > 1 && near.space() < wanted - SAME) {
      return near; // nobody wants it
    }
    double least = Math.max(near.space() * EVEN_GIVE, Math.min(near.space(), wanted) - SAME);
    double asked = Math.min(near.space(), Math.max(wanted, page.asked())) - SAME;
    SheetFit even = filled(cutting, page, places, others, near.space(), least, Rulers.EVEN);
    if (even.space() >= asked) {
      return even;
    }
    SheetFit close = filled(cutting, page, places, others, near.space(), least, Rulers.EVEN_CLOSE);
    if (close.space() >= asked || even.space() >= least) {
      return close.space() >= asked ? close : even;
    }
    if (close.space() >= least) {
      return close;
    }
    SheetFit clear = filled(cutting, page, places, others, near.space(), least, Rulers.CLEAR);
    return clear.space() >= least ? clear : near;
  }

  /**
   * As large as the page holds it.
   *
   * @param least where it would be smaller, how much is not asked
   */
  private static SheetFit filled(
      Cutting cutting,
      Page page,
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

  /** How high all places of the page are together, pixels. */
  double height(List<Integer> lanes) {
    double high = IntStream.range(0, places).mapToDouble(place -> line(lanes, place)).sum();
    return (high + (places - 1) * GAP_SPACES) * space;
  }

  /** How high the lines are at the most that stand in a place, staff spaces. */
  double line(List<Integer> lanes, int place) {
    List<Double> feet = feet(lanes);
    return head(lanes, place)
        + apart(lanes).stream().mapToDouble(each -> each).sum()
        + feet.get(feet.size() - 1);
  }

  /**
   * How far a line in a place reaches above the middle of its first staff at the most, staff
   * spaces: words stand above the lines that begin a page more often than above others.
   */
  double head(List<Integer> lanes, int place) {
    double highest = Cutting.high(in(place), lanes.size()).get(0);
    return SystemView.spaces(highest, lanes.get(0), others) - feet(lanes).get(0);
  }

  /** The lines that stand in a place of some page, also where the last page is filled up. */
  private List<List<StaffSystem>> in(int place) {
    return IntStream.range(0, lines.size())
        .filter(line -> line % places == place || line == lines.size() - places + place)
        .mapToObj(lines::get)
        .toList();
  }

  /**
   * How far the middle line of each staff after the first is below the one before at the least,
   * staff spaces: as far for all of them where that takes little room.
   */
  List<Double> apart(List<Integer> lanes) {
    List<Double> high = staves(lanes);
    List<Double> feet = feet(lanes);
    List<Double> needed =
        IntStream.range(1, high.size())
            .mapToObj(at -> feet.get(at - 1) + STAFF_GAP + high.get(at) - feet.get(at))
            .toList();
    double most = needed.stream().mapToDouble(each -> each).max().orElse(0);
    double all = needed.stream().mapToDouble(each -> each).sum();
    boolean even = most * needed.size() <= all * EVEN;
    return even ? Collections.nCopies(needed.size(), most) : needed;
  }

  private static double spaces(List<Double> high, List<Integer> lanes, int places, int others) {
    double line = staves(high, lanes, others).stream().mapToDouble(each -> each).sum();
    double gaps = (lanes.size() - 1) * STAFF_GAP;
    return places * (line + gaps) + (places - 1) * GAP_SPACES;
  }

  /** How high each staff is at the most with its lanes, from above, staff spaces. */
  List<Double> staves(List<Integer> lanes) {
    return staves(Cutting.high(lines, lanes.size()), lanes, others);
  }

  /** How far each staff with its lanes reaches below its middle line at the most, staff spaces. */
  List<Double> feet(List<Integer> lanes) {
    double[] feet = new double[lanes.size()];
    for (List<StaffSystem> line : lines) {
      for (int at = 0; at < line.size(); at++) {
        StaffSystem system = line.get(at);
        int staff = at % feet.length;
        feet[staff] = Math.max(feet[staff], system.height() - system.staffY());
      }
    }
    return staves(Arrays.stream(feet).boxed().toList(), lanes, others);
  }

  private static List<Double> staves(List<Double> high, List<Integer> lanes, int others) {
    return IntStream.range(0, lanes.size())
        .mapToObj(staff -> SystemView.spaces(high.get(staff), lanes.get(staff), others))
        .toList();
  }
}
