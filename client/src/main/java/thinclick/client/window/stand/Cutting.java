package thinclick.client.window.stand;

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
 * @param narrowest what the widest line needs, staff spaces
 * @param high about how high each staff is at the most, from above, staff spaces
 */
record Cutting(Score score, List<SystemPlan> plans, double narrowest, List<Double> high) {
  /** The parts of a page, spelled once for all ways to cut them. */
  static final class Uncut {
    private static final int SAMPLE = 6;

    private final List<WrittenPart> parts;
    private final Score score;
    private List<Double> high = List.of();

    private Uncut(List<WrittenPart> parts, Score score) {
      this.parts = List.copyOf(parts);
      this.score = score;
    }

    static Uncut of(List<WrittenPart> parts) {
      return new Uncut(
          parts, new Score(parts.stream().map(part -> DealtPart.reading(part, 1).part()).toList()));
    }

    /** From above. */
    List<WrittenPart> parts() {
      return parts;
    }

    /** How many bars suit a line. */
    int usualBars() {
      return Reading.barsPerSystem(parts.get(0));
    }

    /** Lines of so many bars at most. */
    Cutting into(int bars) {
      return cut(DealtPart.reading(parts.get(0), bars).plans());
    }

    /** The same, each line ending with the first bar of the next once more. */
    Cutting lookingAhead(int bars) {
      return cut(DealtPart.lookingAhead(parts.get(0), bars).plans());
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
        high = high(score.systems(some, narrowest));
      }
      return new Cutting(score, plans, narrowest, high);
    }
  }

  /** The lines as they are drawn, for each a staff a part; the width is in staff spaces. */
  List<List<StaffSystem>> laid(double width) {
    return score.systems(plans, width);
  }

  /** How high each staff is at the most, from above, staff spaces. */
  static List<Double> high(List<List<StaffSystem>> lines) {
    return IntStream.range(0, lines.get(0).size())
        .mapToObj(
            staff -> lines.stream().mapToDouble(line -> line.get(staff).height()).max().orElse(1))
        .toList();
  }
}
