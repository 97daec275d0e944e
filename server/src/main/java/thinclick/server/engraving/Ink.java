package thinclick.server.engraving;

/** What a mark is drawn with; the colours are the page's or the screen's. */
public enum Ink {
  /** Music and titles. */
  FULL,
  /** Remarks and the click's own line. */
  SOFT,
  /** Rules, brackets and ticks. */
  RULE
}
