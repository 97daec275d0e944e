package thinclick.server.material.pitch;

import java.util.Locale;
import thinclick.protocol.json.BadInput;

/**
 * A key: its tonic and whether it is minor.
 *
 * @param tonic a tonic whose signature has at most seven accidentals
 * @param minor true for a minor key
 */
public record Key(PitchName tonic, boolean minor) {
  /** Sharps of the major key on each letter: C 0, D 2, E 4, F -1 and so on. */
  private static final int[] SHARPS = {0, 2, 4, -1, 1, 3, 5};

  /** C major. */
  public static final Key C = new Key(PitchName.C, false);

  public Key {
    if (Math.abs(fifths(tonic, minor)) > 7) {
      throw new BadInput(
          "key",
          "expected a key of at most seven accidentals, found "
              + tonic
              + (minor ? " minor, " : " major, ")
              + Math.abs(fifths(tonic, minor)));
    }
  }

  /** Reads {@code "Eb"}, {@code "E flat major"}, {@code "Cm"} or {@code "c minor"}. */
  public static Key parse(String where, String written) {
    String text = written.strip();
    String lower = text.toLowerCase(Locale.ROOT);
    boolean minor = lower.endsWith(" minor") || (lower.endsWith("m") && lower.length() <= 3);
    return new Key(tonicOf(where, text), minor);
  }

  /** The tonic of what {@link #parse} reads, of however many accidentals its key would have. */
  public static PitchName tonicOf(String where, String written) {
    String tonic = written.strip().replaceFirst("(?i)( minor| major|(?<=^..?)m)$", "");
    try {
      return PitchName.parse(where, tonic);
    } catch (BadInput bad) {
      throw new BadInput(
          where, "expected a key such as C, Eb, F# or \"G minor\", found \"" + written + "\"");
    }
  }

  /**
   * The key of a signature, sharps positive; beyond seven accidentals the key that sounds the same.
   */
  public static Key ofFifths(int fifths, boolean minor) {
    int written = fifths > 7 ? fifths - 12 : fifths < -7 ? fifths + 12 : fifths;
    PitchName tonic = PitchName.C;
    int ofMajor = written + (minor ? 3 : 0);
    for (int i = 0; i < Math.abs(ofMajor); i++) {
      tonic = ofMajor > 0 ? tonic.up(4, 7) : tonic.up(3, 5);
    }
    return new Key(tonic, minor);
  }

  /** The key on a tonic, or where that has more than seven accidentals the one that sounds so. */
  public static Key readable(PitchName tonic, boolean minor) {
    return ofFifths(fifths(tonic, minor), minor);
  }

  /** Sharps in the signature; negative for flats. */
  public int fifths() {
    return fifths(tonic, minor);
  }

  /** Sharps of the key on a tonic, negative for flats; beyond seven no signature is written. */
  static int fifths(PitchName tonic, boolean minor) {
    return SHARPS[tonic.letter()] + 7 * tonic.alter() - (minor ? 3 : 0);
  }

  /** How the signature alters a letter: 1 for F in G major. */
  public int alterOf(int letter) {
    int[] orderOfSharps = {3, 0, 4, 1, 5, 2, 6};
    int fifths = fifths();
    for (int i = 0; i < 7; i++) {
      if (orderOfSharps[i] == letter) {
        return fifths > i ? 1 : fifths <= i - 7 ? -1 : 0;
      }
    }
    throw new IllegalArgumentException("no letter " + letter);
  }

  /** {@code "E flat major"}, {@code "G minor"}. */
  public String words() {
    return tonic.words() + (minor ? " minor" : " major");
  }

  /** {@code "Eb"} or {@code "Gm"}, as {@link #parse} reads it. */
  @Override
  public String toString() {
    return tonic + (minor ? "m" : "");
  }
}
