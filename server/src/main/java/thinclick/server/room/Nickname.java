package thinclick.server.room;

import java.text.Normalizer;
import java.util.Locale;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Visible;

/**
 * What somebody is called in a room.
 *
 * @param shown as written, composed (NFC)
 * @param key equal for names that people cannot tell apart (NFKC, case folded)
 */
public record Nickname(String shown, String key) {
  private static final int LONGEST = 32;

  /**
   * Reads a name.
   *
   * @throws BadInput where it is empty, too long, or holds what cannot be seen
   */
  public static Nickname of(String written) {
    String shown = Normalizer.normalize(written.strip(), Normalizer.Form.NFC);
    int points = shown.codePointCount(0, shown.length());
    if (points < 1 || points > LONGEST) {
      throw new BadInput("name", "expected 1 to " + LONGEST + " characters, found " + points);
    }
    shown.codePoints().forEach(Nickname::check);
    String key =
        Normalizer.normalize(shown, Normalizer.Form.NFKC)
            .toUpperCase(Locale.ROOT)
            .toLowerCase(Locale.ROOT)
            .replaceAll("\\s+", " ");
    return new Nickname(shown, key);
  }

  /** Hangul fillers are letters by their category, and blank. */
  private static void check(int point) {
    if (!Visible.is(point)
        || point == 0x115F
        || point == 0x1160
        || point == 0x3164
        || point == 0xFFA0) {
      throw new BadInput("name", String.format("expected visible characters, found U+%04X", point));
    }
  }
}
