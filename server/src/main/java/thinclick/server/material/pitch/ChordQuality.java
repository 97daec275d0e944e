package thinclick.server.material.pitch;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What kind of chord stands on a root.
 *
 * @param symbol as it is written after the root: {@code "m7b5"}, empty for major
 * @param degrees its notes
 * @param scale the scale that fills it where the key does not
 */
record ChordQuality(String symbol, List<Degree> degrees, Scale scale) {
  private static final Map<String, ChordQuality> BY_SYMBOL = new LinkedHashMap<>();
  private static final List<ChordQuality> ALL = new ArrayList<>();

  static {
    add("", "1 3 5", "major", "maj", "M");
    add("maj7", "1 3 5 7", "major", "M7", "ma7", "j7", "\u0394", "\u03947");
    add("6", "1 3 5 6", "major", "maj6", "M6");
    add("6/9", "1 3 5 6 9", "major", "69");
    add("maj9", "1 3 5 7 9", "major", "M9");
    add("add9", "1 3 5 9", "major");
    add("m", "1 b3 5", "dorian", "min", "mi", "-");
    add("m7", "1 b3 5 b7", "dorian", "min7", "mi7", "-7");
    add("m6", "1 b3 5 6", "melodic minor", "min6", "-6");
    add("m9", "1 b3 5 b7 9", "dorian", "min9", "-9");
    add("mMaj7", "1 b3 5 7", "melodic minor", "mM7", "-maj7", "m(maj7)");
    add("7", "1 3 5 b7", "mixolydian", "dom7");
    add("9", "1 3 5 b7 9", "mixolydian");
    add("13", "1 3 5 b7 9 13", "mixolydian");
    add("7b9", "1 3 5 b7 b9", "half whole diminished", "7(b9)");
    add("7#9", "1 3 5 b7 #9", "half whole diminished", "7(#9)");
    add("7#11", "1 3 5 b7 #11", "mixolydian", "7(#11)");
    add("7b5", "1 3 b5 b7", "whole tone", "7(b5)");
    add("7#5", "1 3 #5 b7", "whole tone", "aug7", "+7", "7(#5)");
    add("sus4", "1 4 5", "mixolydian", "sus");
    add("7sus4", "1 4 5 b7", "mixolydian", "7sus");
    add("dim", "1 b3 b5", "whole half diminished", "o", "\u00b0");
    add("dim7", "1 b3 b5 bb7", "whole half diminished", "o7", "\u00b07");
    add("m7b5", "1 b3 b5 b7", "locrian", "\u00f8", "\u00f87", "min7b5", "-7b5", "m7(b5)");
    add("aug", "1 3 #5", "whole tone", "+");
  }

  private static void add(String symbol, String degrees, String scale, String... also) {
    ChordQuality quality =
        new ChordQuality(symbol, Degree.parseAll(degrees), Scale.find("scale", scale));
    ALL.add(quality);
    BY_SYMBOL.put(symbol, quality);
    for (String other : also) {
      BY_SYMBOL.put(other, quality);
    }
  }

  static Optional<ChordQuality> find(String symbol) {
    @Nullable ChordQuality found = BY_SYMBOL.get(symbol);
    return Optional.ofNullable(found);
  }

  /** The symbols, without the empty one of major. */
  static List<String> symbols() {
    return ALL.stream().map(ChordQuality::symbol).filter(symbol -> !symbol.isEmpty()).toList();
  }

  /** The notes that a line runs through: with a ninth the root is left to the bass. */
  List<Degree> frame() {
    boolean ninth = degrees.stream().anyMatch(degree -> degree.letters() == 8);
    return ninth ? degrees.subList(1, degrees.size()) : degrees;
  }
}
