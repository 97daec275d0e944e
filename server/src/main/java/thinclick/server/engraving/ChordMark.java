package thinclick.server.engraving;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A chord symbol over the staff, as it is read.
 *
 * @param step the step it stands over
 * @param root {@code "Bb"}: a letter with b or #
 * @param quality what follows the root: {@code "m7b5"}; empty for a major triad
 * @param bass the note after a slash; empty for none
 */
public record ChordMark(int step, String root, String quality, String bass) {
  private static final Pattern WRITTEN =
      Pattern.compile("([A-G](?:bb|##|b|#)?)(.*?)(?:/([A-G](?:b|#)?))?");

  /** Takes {@code "Gm7b5/F"} apart. */
  static ChordMark parse(int step, String written) {
    Matcher matcher = WRITTEN.matcher(written);
    if (!matcher.matches()) {
      return new ChordMark(step, written, "", "");
    }
    String bass = matcher.group(3);
    return new ChordMark(step, matcher.group(1), matcher.group(2), bass == null ? "" : bass);
  }

  /** The symbol as one word. */
  public String text() {
    return root + quality + (bass.isEmpty() ? "" : "/" + bass);
  }
}
