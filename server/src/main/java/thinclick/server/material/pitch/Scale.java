package thinclick.server.material.pitch;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.Nearest;

/** A scale without a root: its name, its notes as degrees, the signature that suits it. */
public final class Scale {
  private static final Map<String, Scale> ALL = new LinkedHashMap<>();
  private static final Map<String, String> ALSO =
      Map.ofEntries(
          Map.entry("ionian", "major"),
          Map.entry("minor", "natural minor"),
          Map.entry("aeolian", "natural minor"),
          Map.entry("blues", "minor blues"),
          Map.entry("pentatonic", "major pentatonic"),
          Map.entry("diminished", "whole half diminished"),
          Map.entry("dominant diminished", "half whole diminished"),
          Map.entry("bebop", "bebop dominant"),
          Map.entry("dominant bebop", "bebop dominant"));

  static {
    add("major", "1 2 3 4 5 6 7", 0);
    add("natural minor", "1 2 b3 4 5 b6 b7", -3);
    add("harmonic minor", "1 2 b3 4 5 b6 7", -3);
    add("melodic minor", "1 2 b3 4 5 6 7", -3);
    add("dorian", "1 2 b3 4 5 6 b7", -2);
    add("phrygian", "1 b2 b3 4 5 b6 b7", -4);
    add("lydian", "1 2 3 #4 5 6 7", 1);
    add("mixolydian", "1 2 3 4 5 6 b7", -1);
    add("locrian", "1 b2 b3 4 b5 b6 b7", -5);
    add("major pentatonic", "1 2 3 5 6", 0);
    add("minor pentatonic", "1 b3 4 5 b7", -3);
    add("minor blues", "1 b3 4 b5 5 b7", -3);
    add("major blues", "1 2 b3 3 5 6", 0);
    add("altered", "1 b2 #2 3 #4 b6 b7", -1);
    add("whole half diminished", "1 2 b3 4 b5 b6 6 7", -3);
    add("half whole diminished", "1 b2 b3 3 #4 5 6 b7", -1);
    add("whole tone", "1 2 3 #4 #5 #6", 0);
    add("bebop dominant", "1 2 3 4 5 6 b7 7", -1);
  }

  private final String name;
  private final List<Degree> degrees;

  /** Fifths from the root's major key to the signature: -2 for dorian, on D the one of C. */
  private final int parent;

  private Scale(String name, List<Degree> degrees, int parent) {
    this.name = name;
    this.degrees = degrees;
    this.parent = parent;
  }

  private static void add(String name, String degrees, int parent) {
    ALL.put(name, new Scale(name, Degree.parseAll(degrees), parent));
  }

  /** The scale of a name in any case, hyphens for spaces; a miss names the nearest. */
  public static Scale find(String where, String name) {
    String folded = Nearest.folded(name);
    @Nullable Scale found = ALL.get(ALSO.getOrDefault(folded, folded));
    if (found == null) {
      throw new BadInput(
          where, "expected a scale, found \"" + name + "\"; " + Nearest.didYouMean(name, names()));
    }
    return found;
  }

  /** The names that {@link #find} takes, without the second names. */
  public static List<String> names() {
    return List.copyOf(ALL.keySet());
  }

  /** In words, lower case. */
  public String name() {
    return name;
  }

  /** The notes from a root up, without the octave. */
  public List<PitchName> notes(PitchName root) {
    return degrees.stream().map(degree -> degree.above(root)).toList();
  }

  /** Notes in an octave. */
  public int size() {
    return degrees.size();
  }

  /** True where the third is minor, so that the key is called minor. */
  public boolean minor() {
    return degrees.stream().noneMatch(degree -> degree.letters() == 2 && degree.semitones() == 4)
        && degrees.stream().anyMatch(degree -> degree.letters() == 2 && degree.semitones() == 3);
  }

  /** The major or minor key whose signature suits this scale on a root. */
  public Key signature(PitchName root) {
    return Key.ofFifths(Key.fifths(root, false) + parent, minor());
  }

  /**
   * The note {@code degree} degrees above a pitch of the scale's root; negative degrees go down.
   *
   * @param root the root in some octave
   */
  public Pitch degree(Pitch root, int degree) {
    Degree inOctave = degrees.get(Math.floorMod(degree, size()));
    int octaves = Math.floorDiv(degree, size());
    return root.up(inOctave.letters() + 7 * octaves, inOctave.semitones() + 12 * octaves);
  }
}
