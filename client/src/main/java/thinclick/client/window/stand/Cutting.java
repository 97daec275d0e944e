package thinclick.client.window.stand;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import thinclick.server.engraving.Reading;
import thinclick.server.engraving.Score;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.engraving.SystemPlan;
import thinclick.server.material.WrittenPart;

/**
 * A way in which the parts of a page are cut into lines of music: the same bars in all of them.
 *
 * @param plans the lines, in order
 * @param held what reminds of the click in each bar
 * @param narrowest what the widest line needs, staff spaces
 * @param high about how high each staff is at the most, from above, staff spaces
 */
record Cutting(
    Score score, List<SystemPlan> plans, List<String> held, double narrowest, List<Double> high) {
  /** The parts of a page, spelled once for all ways to cut them. */
  static final class Uncut {
    private static final int SAMPLE = 6;

    private final List<List<WrittenPart>> pages;

    /** The lines begin where this part's periods do, on all pages. */
    private final WrittenPart leading;

    private final Score score;
    private final List<String> held;
    private List<Double> high = List.of();

    private Uncut(List<List<WrittenPart>> pages, WrittenPart leading) {
      this.pages = pages;
      this.leading = leading;
      held = DealtPart.heldWords(leading);
      score =
          new Score(
              pages.stream()
                  .flatMap(List::stream)
                  .map(part -> DealtPart.reading(part, 1).part())
                  .toList(),
              perPage());
    }

    static Uncut of(List<WrittenPart> parts) {
      return led(List.of(parts), leading(parts));
    }

    /**
     * Pages with as many parts each, cut alike, so that none of them jumps when it is turned to.
     * Their lines begin where the periods of a given part do.
     *
     * @param leading of the same bars, on these pages or another
     */
    static Uncut led(List<List<WrittenPart>> pages, WrittenPart leading) {
      return new Uncut(pages, leading);
    }

    /** The part of several whose periods begin first. */
    static WrittenPart leading(List<WrittenPart> parts) {
      return parts.stream()
          .min(
              Comparator.comparingInt(WrittenPart::repeatFromBar)
                  .thenComparingInt(WrittenPart::bars))
          .orElseThrow();
    }

    private int perPage() {
      return pages.get(0).size();
    }

    /** Which of the staves is the first of a page. */
    int firstStaff(List<WrittenPart> page) {
      return pages.indexOf(page) * perPage();
    }

    /** How many bars suit a line. */
    int usualBars() {
      return Reading.barsPerSystem(leading);
    }

    /** Lines of so many bars at most. */
    Cutting into(int bars) {
      return cut(DealtPart.reading(leading, bars).plans());
    }

    /** The same, each line ending with the first bar of the next once more. */
    Cutting lookingAhead(int bars) {
      return cut(DealtPart.lookingAhead(leading, bars).plans());
    }

    /** A line's height hardly depends on how it is cut: some lines tell it for all ways. */
    private Cutting cut(List<SystemPlan> plans) {
      double narrowest = score.narrowest(plans);
      if (high.isEmpty()) {
        int every = Math.max(1, plans.size() / SAMPLE);
        List<SystemPlan> some =
            IntStream.range(0, plans.size())
                .filter(line -> line % every == 0 || !plans.get(line).direction().isEmpty())
                .mapToObj(plans::get)
                .toList();
        high = high(score.turnedSystems(some, narrowest), perPage());
      }
      return new Cutting(score, plans, held, narrowest, high);
    }
  }

  /** How many bars its longest line has. */
  int longest() {
    return plans.stream().mapToInt(SystemPlan::bars).max().orElse(0);
  }

  /**
   * The lines as they are drawn, for each a staff a part, page by page; the width is in staff
   * spaces.
   *
   * @param places how many lines stand on a page, the first of which says what clicks
   * @param rulers how far below the staves the beats' ruler stands
   */
  List<List<StaffSystem>> laid(double width, int places, Rulers rulers) {
    List<SystemPlan> headed =
        IntStream.range(0, plans.size())
            .mapToObj(line -> line % places == 0 ? headed(plans.get(line)) : plans.get(line))
            .toList();
    return switch (rulers) {
      case NEAR -> score.turnedSystems(headed, width);
      case CLEAR -> score.clearSystems(headed, width);
      case EVEN_CLOSE -> score.evenSystems(headed, width, true);
      case EVEN -> score.evenSystems(headed, width, false);
    };
  }

  private SystemPlan headed(SystemPlan plan) {
    return plan.direction().isEmpty() ? plan.saying(held.get(plan.firstBar())) : plan;
  }

  /** How far below the staves the beats' ruler stands. */
  enum Rulers {
    /** As near as the music lets it, line by line. */
    NEAR,
    /** The same, and clear of every staff. */
    CLEAR,
    /** As far below every line, and close to the lowest music. */
    EVEN_CLOSE,
    /** As far below every line. */
    EVEN
  }

  /** How high each of so many staves of a page is at the most, from above, staff spaces. */
  static List<Double> high(List<List<StaffSystem>> lines, int staves) {
    double[] high = new double[staves];
    for (List<StaffSystem> line : lines) {
      for (int at = 0; at < line.size(); at++) {
        high[at % staves] = Math.max(high[at % staves], line.get(at).height());
      }
    }
    return Arrays.stream(high).boxed().toList();
  }
}
