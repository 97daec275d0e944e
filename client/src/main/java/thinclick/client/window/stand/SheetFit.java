package thinclick.client.window.stand;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import thinclick.server.engraving.StaffSystem;

/**
 * How large music is on its page, and how it is cut into lines; see {@link Fitting}.
 *
 * @param lines from the first bar to the last; in each a staff for each part, page by page of those
 *     that are alike
 * @param space a staff space, pixels
 * @param others how many lines of other players stand below each
 * @param places how many lines stand on a page
 * @param held what reminds of the click in each bar
 */
record SheetFit(
    List<List<StaffSystem>> lines, double space, int others, int places, List<String> held) {
  /** Between two lines, staff spaces: room for the rule and its words where a page is turned. */
  static final double GAP_SPACES = 2.5;

  /** Between two staves of a line, staff spaces. */
  static final double STAFF_GAP = 1;

  /** So much more room staves of a line take to be as far apart as each other. */
  private static final double EVEN = 1.1;

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
    return in(place).stream()
        .flatMap(
            line ->
                IntStream.range(0, line.size())
                    .filter(at -> at % lanes.size() == 0)
                    .mapToObj(line::get))
        .mapToDouble(StaffSystem::staffY)
        .max()
        .orElse(0);
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

  /**
   * How high so many lines of a page are before they are laid out, staff spaces.
   *
   * @param high of each staff, without its lanes
   */
  static double spaces(List<Double> high, List<Integer> lanes, int places, int others) {
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
