package thinclick.server.export;

import java.util.List;
import java.util.Map;

/**
 * A chord quality in the terms of MusicXML 4.0.
 *
 * @param kind a kind-value
 * @param degrees what is added to it or altered in it
 */
record HarmonyKind(String kind, List<Degree> degrees) {
  /**
   * One degree.
   *
   * @param value the degree
   * @param alter semitones
   * @param type add or alter
   */
  record Degree(int value, int alter, String type) {}

  private static final Map<String, HarmonyKind> KINDS =
      Map.ofEntries(
          plain("", "major"),
          plain("maj7", "major-seventh"),
          plain("6", "major-sixth"),
          with("6/9", "major-sixth", new Degree(9, 0, "add")),
          plain("maj9", "major-ninth"),
          with("add9", "major", new Degree(9, 0, "add")),
          plain("m", "minor"),
          plain("m7", "minor-seventh"),
          plain("m6", "minor-sixth"),
          plain("m9", "minor-ninth"),
          plain("mMaj7", "major-minor"),
          plain("7", "dominant"),
          plain("9", "dominant-ninth"),
          plain("13", "dominant-13th"),
          with("7b9", "dominant", new Degree(9, -1, "add")),
          with("7#9", "dominant", new Degree(9, 1, "add")),
          with("7#11", "dominant", new Degree(11, 1, "add")),
          with("7b5", "dominant", new Degree(5, -1, "alter")),
          plain("7#5", "augmented-seventh"),
          plain("sus4", "suspended-fourth"),
          with("7sus4", "suspended-fourth", new Degree(7, -1, "add")),
          plain("dim", "diminished"),
          plain("dim7", "diminished-seventh"),
          plain("m7b5", "half-diminished"),
          plain("aug", "augmented"));

  /** The kind of a quality; one that is not known is "other" and keeps its text. */
  static HarmonyKind of(String quality) {
    return KINDS.getOrDefault(quality, new HarmonyKind("other", List.of()));
  }

  private static Map.Entry<String, HarmonyKind> plain(String quality, String kind) {
    return Map.entry(quality, new HarmonyKind(kind, List.of()));
  }

  private static Map.Entry<String, HarmonyKind> with(String quality, String kind, Degree degree) {
    return Map.entry(quality, new HarmonyKind(kind, List.of(degree)));
  }
}
