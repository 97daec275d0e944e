package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Where the staves of a page stand: the lines of music share what the page leaves free, and within
 * a line the staves are as evenly apart as what is above and below each allows. Pixels.
 *
 * @param lines the places of the lines of music, from above
 * @param air between the page's edge and a line, and between two lines over what stands there
 */
record StaffPlaces(List<Line> lines, double air) {
  /**
   * A line's place.
   *
   * @param top where it begins, from the page's top
   * @param middles where the middle line of each of its staves stands, from its top
   * @param height so much it takes at the most
   */
  record Line(double top, List<Double> middles, double height) {
    Line {
      middles = List.copyOf(middles);
    }
  }

  /** So much further apart than they need be staves of a line stand at the most, staff spaces. */
  private static final double MOST_INNER_SPACES = 2.5;

  /**
   * So much of the air above the last edge goes to the first: the lane of the marks is empty before
   * a take, and counts as air to the eye.
   */
  private static final double LOWER = 0.6;

  private static final double LOWEST_SPACES = 1.5;

  /** What the bracket below the last line keeps of it, staff spaces. */
  private static final double BELOW_SPACES = 0.5;

  private static final int HALVINGS = 30;

  /** Of a page without music. */
  static final StaffPlaces NONE = new StaffPlaces(List.of(), 0);

  StaffPlaces {
    lines = List.copyOf(lines);
  }

  /**
   * Shares out a page.
   *
   * @param lanes how many players read each staff
   * @param page how high it is
   */
  static StaffPlaces of(SheetFit fit, List<Integer> lanes, double page, DevicePixels pixels) {
    double space = fit.space();
    int staves = lanes.size();
    int places = fit.places();
    double free = Math.max(0, page - fit.height(lanes));
    double inner = Math.min(MOST_INNER_SPACES * space, free / (places * staves + 1));
    List<Double> least = fit.apart(lanes).stream().map(spaces -> spaces * space).toList();
    List<Double> apart = evened(least, (staves - 1) * inner, pixels);
    List<List<Double>> middles =
        IntStream.range(0, places)
            .mapToObj(place -> middles(fit.head(lanes, place) * space, apart))
            .toList();
    double foot = fit.feet(lanes).get(staves - 1) * space;
    List<Double> heights = middles.stream().map(line -> line.get(staves - 1) + foot).toList();
    double gap = SheetFit.GAP_SPACES * space;
    double music = heights.stream().mapToDouble(each -> each).sum() + (places - 1) * gap;
    double air = Math.max(0, (page - music) / (places + 1));
    double spare = Math.max(0, air - BELOW_SPACES * space);
    double lower =
        fit.others() > 0 ? 0 : Math.min(spare, Math.min(LOWER * air, LOWEST_SPACES * space));
    List<Line> lines = new ArrayList<>();
    double top = air + lower;
    for (int place = 0; place < places; place++) {
      lines.add(new Line(pixels.nearest(top), middles.get(place), heights.get(place)));
      top += heights.get(place) + gap + air;
    }
    return new StaffPlaces(lines, air);
  }

  private static List<Double> middles(double first, List<Double> apart) {
    List<Double> middles = new ArrayList<>(List.of(first));
    apart.forEach(distance -> middles.add(middles.get(middles.size() - 1) + distance));
    return middles;
  }

  /**
   * The distances in whole pixels, with so much more shared out that the least of them become as
   * wide as possible.
   */
  static List<Double> evened(List<Double> least, double more, DevicePixels pixels) {
    if (least.isEmpty()) {
      return least;
    }
    double from = 0;
    double to = least.stream().mapToDouble(each -> each).sum() + more;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (from + to) / 2;
      double takes = least.stream().mapToDouble(each -> Math.max(0, middle - each)).sum();
      if (takes > more) {
        to = middle;
      } else {
        from = middle;
      }
    }
    double even = from;
    return least.stream().map(each -> pixels.nearest(Math.max(each, even))).toList();
  }
}
