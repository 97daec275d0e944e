package thinclick.server.engraving;

/** The shapes of noteheads. */
public enum Head {
  /** A pitch, or a drum. */
  NORMAL(Glyph.NOTEHEAD_BLACK, Glyph.NOTEHEAD_HALF, Glyph.NOTEHEAD_WHOLE, 0.168),
  /** A cymbal, or a tap. */
  CROSS(Glyph.NOTEHEAD_XBLACK, Glyph.NOTEHEAD_XHALF, Glyph.NOTEHEAD_XWHOLE, 0.444),
  /** A chord that is comped in this rhythm. */
  SLASH(
      Glyph.NOTEHEAD_SLASH_HORIZONTAL_ENDS,
      Glyph.NOTEHEAD_SLASH_WHITE_HALF,
      Glyph.NOTEHEAD_SLASH_WHITE_WHOLE,
      1.0);

  private final Glyph black;
  private final Glyph half;
  private final Glyph whole;
  private final double stemRise;

  Head(Glyph black, Glyph half, Glyph whole, double stemRise) {
    this.black = black;
    this.half = half;
    this.whole = whole;
    this.stemRise = stemRise;
  }

  Glyph glyph(NoteValue value) {
    return switch (value) {
      case WHOLE -> whole;
      case HALF -> half;
      default -> black;
    };
  }

  /** How far from the head's middle a stem is attached, toward the stem's end. */
  double stemRise() {
    return stemRise;
  }
}
