package thinclick.server.engraving;

/** How far a note may reach over the beats inside a bar before it is cut and tied. */
public enum Cut {
  /** Every beat is visible: only a note that begins and ends on beats covers one. */
  BEATS,
  /** The middle of the bar is visible; a syncopated quarter inside a half bar stays whole. */
  HALF_BARS
}
