package thinclick.server.engraving;

import java.util.Locale;
import thinclick.server.material.pitch.Pitch;

/** The clefs that parts are read in. */
public enum Clef {
  TREBLE,
  BASS,
  /** Five lines for a drum kit. */
  PERCUSSION,
  /** One line for a rhythm without pitch. */
  ONE_LINE;

  /** Its name among the words of the page. */
  String key() {
    return "clef." + name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  boolean pitched() {
    return this == TREBLE || this == BASS;
  }

  /** How many lines the staff has. */
  public int lines() {
    return this == ONE_LINE ? 1 : 5;
  }

  /** The place of a pitch on the staff, in half spaces above the middle line. */
  int position(Pitch pitch) {
    return pitch.staffStep() - (this == BASS ? 3 * 7 + 1 : 4 * 7 + 6); // D3 or B4
  }
}
