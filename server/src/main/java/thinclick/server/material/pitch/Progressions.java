package thinclick.server.material.pitch;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.Nearest;

/** The progressions that have a name, written in C; common practice, no source. */
public final class Progressions {
  private static final Map<String, String> IN_C = new LinkedHashMap<>();

  static {
    IN_C.put("ii-V-I", "Dm7 | G7 | Cmaj7 | %");
    IN_C.put("minor ii-V-i", "Dm7b5 | G7b9 | Cm | %");
    IN_C.put("turnaround", "Cmaj7 Am7 | Dm7 G7");
    IN_C.put("iii-VI-ii-V", "Em7 A7b9 | Dm7 G7");
    IN_C.put("minor turnaround", "Cm6 Am7b5 | Dm7b5 G7b9");
    IN_C.put("12-bar blues", "C7 | F7 | C7 | % | F7 | % | C7 | % | G7 | F7 | C7 | G7");
    IN_C.put("12-bar minor blues", "Cm7 | Fm7 | Cm7 | % | Fm7 | % | Cm7 | % | Ab7 | G7 | Cm7 | G7");
    String a = "Cmaj7 Am7 | Dm7 G7 | Em7 A7 | Dm7 G7 | Cmaj7 C7 | Fmaj7 Bb7 | Em7 A7 | Dm7 G7";
    String bridge = "E7 | % | A7 | % | D7 | % | G7 | %";
    IN_C.put("32-bar AABA", String.join(" | ", a, a, bridge, a));
    IN_C.put("dominants of two bars", bridge);
  }

  private Progressions() {}

  /** The names. */
  public static List<String> names() {
    return List.copyOf(IN_C.keySet());
  }

  /** True where a progression of this name comes home to a minor key. */
  public static boolean minor(String name) {
    return Nearest.folded(name).contains("minor");
  }

  /** A named progression in C or C minor; empty where the name is not known. */
  public static Optional<Progression> named(String name) {
    return properName(name).map(IN_C::get).map(text -> Progression.parse("progression", text));
  }

  /** A name as the list has it, from any case and with hyphens for spaces. */
  public static Optional<String> properName(String name) {
    String folded = Nearest.folded(name);
    return IN_C.keySet().stream().filter(known -> Nearest.folded(known).equals(folded)).findFirst();
  }

  /**
   * A named progression in a key, or one that is written out, moved to the key where one is given.
   *
   * @param key the key to play it in, or null for its own
   */
  public static Progression in(String where, String nameOrChords, @Nullable Key key) {
    Optional<Progression> named = named(nameOrChords);
    if (named.isEmpty() && !looksWritten(nameOrChords)) {
      throw new BadInput(
          where,
          "expected chords such as \"Dm7 | G7 | Cmaj7 | %\" or the name of a progression, found \""
              + nameOrChords
              + "\"; "
              + Nearest.didYouMean(nameOrChords, names()));
    }
    Progression own = named.orElseGet(() -> Progression.parse(where, nameOrChords));
    if (key == null) {
      return own;
    }
    if (named.isPresent() && key.minor() && !minor(nameOrChords)) {
      own = minorOf(where, nameOrChords);
    }
    PitchName from = named.isPresent() ? PitchName.C : own.home().tonic();
    PitchName to = Key.readable(key.tonic(), own.home().minor()).tonic();
    int letters = Math.floorMod(to.letter() - from.letter(), 7);
    int semitones = Math.floorMod(to.pitchClass() - from.pitchClass(), 12);
    return own.up(letters, semitones);
  }

  /**
   * The key that a progression is at home in: the one asked for, of a named progression C or C
   * minor where none is, else the one that its chords come home to.
   */
  public static Key home(String where, String nameOrChords, @Nullable Key key) {
    if (named(nameOrChords).isPresent()) {
      boolean minor = minor(nameOrChords) || (key != null && key.minor());
      return Key.readable(key == null ? PitchName.C : key.tonic(), minor);
    }
    Key own = Progression.parse(where, nameOrChords).home();
    return key == null ? own : Key.readable(key.tonic(), own.minor());
  }

  private static Progression minorOf(String where, String name) {
    Map<String, String> twins =
        Map.of(
            "ii v i", "minor ii-V-i",
            "turnaround", "minor turnaround",
            "12 bar blues", "12-bar minor blues");
    @Nullable String twin = twins.get(Nearest.folded(name));
    if (twin == null) {
      throw new BadInput(
          where, "expected a major key for \"" + name + "\", which has no minor form");
    }
    return named(twin).orElseThrow();
  }

  /** A name of the list has no bar line; one chord alone begins with its root. */
  private static boolean looksWritten(String text) {
    return text.contains("|") || text.strip().matches("[A-G][b#]?\\S*(\\s+[A-G][b#]?\\S*)*");
  }
}
