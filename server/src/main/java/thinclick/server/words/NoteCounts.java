package thinclick.server.words;

import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;

/**
 * Why one figure has more notes in one chair than in another: whoever comes in later, or with
 * another step of the figure on the last bar line, has fewer of them in the same bars.
 */
final class NoteCounts {
  private NoteCounts() {}

  /**
   * What stands below figures of several players, once; null where all have as many notes, or where
   * the parts differ as everybody can see.
   */
  static @Nullable Said of(Take take) {
    List<Part> parts = take.parts();
    boolean byEntry =
        parts.stream()
            .anyMatch(one -> parts.stream().anyMatch(other -> fewerByItsEntry(one, other)));
    return byEntry ? Said.of("counts.byEntry") : null;
  }

  private static boolean fewerByItsEntry(Part one, Part other) {
    int notes = one.attackSteps().size();
    return notes < other.attackSteps().size()
        && one.entryStep() != other.entryStep()
        && IntStream.range(0, notes).allMatch(i -> afterEntry(one, i) == afterEntry(other, i));
  }

  private static int afterEntry(Part part, int note) {
    return part.attackSteps().get(note) - part.entryStep();
  }
}
