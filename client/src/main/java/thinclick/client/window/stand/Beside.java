package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thinclick.server.material.WrittenPart;

/**
 * The parts of a page beside which others are turned to. Pages with as many parts of the same bars
 * are cut alike: a step, a staff and a bar line have one place on all of them.
 *
 * @param parts from above
 * @param lanes how many players read each
 */
record Beside(List<WrittenPart> parts, List<Integer> lanes) {
  Beside {
    parts = List.copyOf(parts);
    lanes = List.copyOf(lanes);
  }

  /**
   * What stands on a page, of parts that are of the same bars as its first.
   *
   * @param lines from above, with those who read each
   * @param dealt a part for each reader; null where nothing is dealt
   */
  static Beside of(List<List<Integer>> lines, List<@Nullable WrittenPart> dealt) {
    List<WrittenPart> parts = new ArrayList<>();
    List<Integer> lanes = new ArrayList<>();
    for (List<Integer> line : lines) {
      WrittenPart part = dealt.get(line.get(0));
      if (part != null && (parts.isEmpty() || DealtPart.sameBars(parts.get(0), part))) {
        parts.add(part);
        lanes.add(line.size());
      }
    }
    return new Beside(parts, lanes);
  }

  /** Whether another page is turned to in the middle of the music; one without parts is not. */
  boolean isOfTheSameBars(Beside other) {
    return !other.parts.isEmpty() && DealtPart.sameBars(parts.get(0), other.parts.get(0));
  }

  /** Those of other pages that are cut as this one is. */
  List<Beside> alike(List<Beside> others) {
    return others.stream()
        .filter(other -> other.parts.size() == parts.size())
        .filter(this::isOfTheSameBars)
        .toList();
  }

  /** As many lanes for each staff as one of the pages needs. */
  List<Integer> lanes(List<Beside> alike) {
    return IntStream.range(0, lanes.size())
        .mapToObj(
            staff ->
                Math.max(
                    lanes.get(staff),
                    alike.stream().mapToInt(other -> other.lanes.get(staff)).max().orElse(0)))
        .toList();
  }
}
