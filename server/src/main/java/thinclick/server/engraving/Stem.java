package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;

/**
 * A stem; rests and whole notes have one in thought, which tells the side of ties.
 *
 * @param up true where it goes up
 * @param end where it ends, in spaces below the staff's middle line
 * @param flagged true where it carries flags, being under no beam
 */
record Stem(boolean up, double end, boolean flagged) {
  /** The stems of a bar: one way under each beam, which is flat. */
  static List<Stem> of(SpelledBar bar, StaffPart part) {
    List<Symbol> symbols = bar.symbols();
    List<Stem> stems = new ArrayList<>();
    for (Symbol symbol : symbols) {
      if (symbol.rest()) {
        stems.add(new Stem(true, 0, false));
      } else {
        int position = part.notes().get(symbol.note()).position();
        boolean slash = part.notes().get(symbol.note()).head() == Head.SLASH;
        boolean up = slash || up(List.of(position), part.clef());
        stems.add(new Stem(up, end(List.of(position), up), symbol.value().flags() > 0));
      }
    }
    for (List<Integer> beam : bar.beams()) {
      List<Integer> positions =
          beam.stream().map(i -> part.notes().get(symbols.get(i).note()).position()).toList();
      boolean up = slashes(part, symbols, beam) || up(positions, part.clef());
      Stem shared = new Stem(up, end(positions, up), false);
      beam.forEach(i -> stems.set(i, shared));
    }
    return List.copyOf(stems);
  }

  private static boolean slashes(StaffPart part, List<Symbol> symbols, List<Integer> beam) {
    return beam.stream()
        .allMatch(i -> part.notes().get(symbols.get(i).note()).head() == Head.SLASH);
  }

  /** Up where the note farthest from the middle line is below it; always on a rhythm staff. */
  private static boolean up(List<Integer> positions, Clef clef) {
    if (!clef.pitched()) {
      return true;
    }
    int highest = positions.stream().mapToInt(Integer::intValue).max().orElse(0);
    int lowest = positions.stream().mapToInt(Integer::intValue).min().orElse(0);
    return highest + lowest < 0;
  }

  /** An octave from the nearest head, and at least to the middle line. */
  private static double end(List<Integer> positions, boolean up) {
    if (up) {
      int highest = positions.stream().mapToInt(Integer::intValue).max().orElse(0);
      return Math.min(0, -highest / 2.0 - Measure.STEM_LENGTH);
    }
    int lowest = positions.stream().mapToInt(Integer::intValue).min().orElse(0);
    return Math.max(0, -lowest / 2.0 + Measure.STEM_LENGTH);
  }
}
