package thinclick.server.engraving;

import java.util.Locale;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Transposition;

/** What a part is read on and in which key, in words. */
public final class ReaderWords {
  private ReaderWords() {}

  /**
   * {@code "Tenor saxophone in B flat, ii-V-I in C major (concert B flat major)"}, flats as signs.
   */
  public static String of(WrittenPart part) {
    return of(part, false);
  }

  /**
   * The same for a heading above one or many keys.
   *
   * @param allKeys true where the part follows in many keys, each named where it stands
   */
  static String of(WrittenPart part, boolean allKeys) {
    String name = part.instrument().name();
    StringBuilder words = new StringBuilder(name.substring(0, 1).toUpperCase(Locale.ROOT));
    words.append(name.substring(1));
    Transposition transposition = part.instrument().transposition();
    int up = Math.floorMod(transposition.semitones(), 12);
    String tuned = up == 10 ? "B\u266d" : up == 3 ? "E\u266d" : up == 5 ? "F" : "";
    if (!tuned.isEmpty()) {
      words.append(" in ").append(tuned);
    }
    String line = part.heading().line();
    String concert = part.heading().concertLine();
    if (allKeys) {
      words.append(" \u00b7 all keys");
    } else if (line != null) {
      words.append(" \u00b7 ").append(signs(line));
      if (concert != null && !concert.equals(line)) {
        words.append(" (concert ").append(signs(key(concert))).append(')');
      }
    }
    return words.toString();
  }

  /** The key alone where the line says what is played in it. */
  private static String key(String line) {
    int in = line.indexOf(" in ");
    return in < 0 ? line : line.substring(in + 4);
  }

  /** {@code "E flat major"} with the sign of the flat. */
  static String signs(Key key) {
    return signs(key.words());
  }

  private static String signs(String words) {
    return words.replace(" flat", "\u266d").replace(" sharp", "\u266f");
  }
}
