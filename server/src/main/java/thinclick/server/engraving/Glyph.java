package thinclick.server.engraving;

/**
 * The music signs that pages use, with their measures in Bravura 1.392 (SMuFL), in staff spaces.
 *
 * <p>A sign's origin stands on the baseline at its left; unlike everything else here, {@code
 * bottom} and {@code top} count upward, as the font's own metadata does. A test compares them with
 * the font that is shipped.
 */
public enum Glyph {
  NOTEHEAD_BLACK(0xE0A4, 1.18, 0, -0.5, 1.18, 0.5),
  NOTEHEAD_HALF(0xE0A3, 1.18, 0, -0.5, 1.18, 0.5),
  NOTEHEAD_WHOLE(0xE0A2, 1.688, 0, -0.5, 1.688, 0.5),
  NOTEHEAD_XBLACK(0xE0A9, 1.16, 0, -0.5, 1.16, 0.5),
  NOTEHEAD_XHALF(0xE0A8, 1.336, 0, -0.5, 1.336, 0.5),
  NOTEHEAD_XWHOLE(0xE0A7, 1.508, 0, -0.5, 1.508, 0.5),
  NOTEHEAD_CIRCLE_X(0xE0B3, 0.996, 0, -0.5, 0.996, 0.5),
  NOTEHEAD_SLASH_HORIZONTAL_ENDS(0xE101, 2.124, 0, -1, 2.12, 1),
  NOTEHEAD_SLASH_WHITE_HALF(0xE103, 3.12, 0, -1, 3.12, 1),
  NOTEHEAD_SLASH_WHITE_WHOLE(0xE102, 3.92, 0, -1, 3.92, 1),
  NOTEHEAD_DIAMOND_BLACK(0xE0DB, 1, 0, -0.5, 1, 0.5),
  NOTEHEAD_TRIANGLE_UP_BLACK(0xE0BE, 1.172, 0, -0.5, 1.172, 0.5),
  AUGMENTATION_DOT(0xE1E7, 0.4, 0, -0.2, 0.4, 0.2),
  FLAG_8TH_UP(0xE240, 1.056, 0, -3.241, 1.056, 0.035),
  FLAG_8TH_DOWN(0xE241, 1.224, 0, -0.058, 1.224, 3.233),
  FLAG_16TH_UP(0xE242, 1.116, 0, -3.252, 1.116, 0.008),
  FLAG_16TH_DOWN(0xE243, 1.168, 0, -0.036, 1.164, 3.248),
  REST_WHOLE(0xE4E3, 1.132, 0, -0.54, 1.128, 0.036),
  REST_HALF(0xE4E4, 1.132, 0, -0.008, 1.128, 0.568),
  REST_QUARTER(0xE4E5, 1.08, 0.004, -1.5, 1.08, 1.492),
  REST_8TH(0xE4E6, 1, 0, -1.004, 0.988, 0.696),
  REST_16TH(0xE4E7, 1.28, 0, -2, 1.28, 0.716),
  ACCIDENTAL_FLAT(0xE260, 0.904, 0, -0.7, 0.904, 1.756),
  ACCIDENTAL_NATURAL(0xE261, 0.672, 0, -1.34, 0.672, 1.364),
  ACCIDENTAL_SHARP(0xE262, 0.996, 0, -1.392, 0.996, 1.4),
  ACCIDENTAL_DOUBLE_SHARP(0xE263, 1, 0, -0.5, 0.988, 0.508),
  ACCIDENTAL_DOUBLE_FLAT(0xE264, 1.652, 0, -0.7, 1.644, 1.748),
  ACCIDENTAL_PARENS_LEFT(0xE26A, 0.564, 0, -0.992, 0.564, 0.988),
  ACCIDENTAL_PARENS_RIGHT(0xE26B, 0.564, 0, -0.992, 0.564, 0.988),
  CSYM_ACCIDENTAL_FLAT(0xED60, 1.136, 0.004, -0.004, 1.136, 3),
  CSYM_ACCIDENTAL_NATURAL(0xED61, 0.736, 0, 0, 0.736, 3.004),
  CSYM_ACCIDENTAL_SHARP(0xED62, 1.24, 0, -0.052, 1.24, 3.048),
  CSYM_DIMINISHED(0xE870, 1.892, 0, 0, 1.892, 1.892),
  CSYM_HALF_DIMINISHED(0xE871, 1.896, -0.064, -0.06, 1.952, 1.956),
  CSYM_AUGMENTED(0xE872, 1.58, 0, 0.004, 1.58, 1.584),
  G_CLEF(0xE050, 2.684, 0, -2.632, 2.684, 4.392),
  F_CLEF(0xE062, 2.736, -0.02, -2.54, 2.736, 1.048),
  UNPITCHED_PERCUSSION_CLEF_1(0xE069, 1.528, 0, -1, 1.528, 1),
  ARTIC_ACCENT_ABOVE(0xE4A0, 1.356, 0, 0.004, 1.356, 0.98),
  ARTIC_ACCENT_BELOW(0xE4A1, 1.356, 0, -0.976, 1.356, 0),
  ARTIC_STACCATO_ABOVE(0xE4A2, 0.336, 0, 0, 0.336, 0.336),
  ARTIC_STACCATO_BELOW(0xE4A3, 0.336, 0, -0.336, 0.336, 0),
  ARTIC_TENUTO_ABOVE(0xE4A4, 1.352, -0.004, 0, 1.352, 0.192),
  ARTIC_TENUTO_BELOW(0xE4A5, 1.352, -0.004, -0.192, 1.352, 0),
  REPEAT_DOT(0xE044, 0.4, 0, -0.2, 0.4, 0.2),
  MET_NOTE_HALF_UP(0xECA3, 1.364, 0, -0.564, 1.364, 2.752),
  MET_NOTE_QUARTER_UP(0xECA5, 1.328, 0, -0.564, 1.328, 2.752),
  MET_NOTE_8TH_UP(0xECA7, 2.136, 0, -0.564, 2.132, 2.784),
  MET_AUGMENTATION_DOT(0xECB7, 0.4, 0, -0.2, 0.4, 0.2),
  TIME_SIG_0(0xE080, 1.88, 0.08, -1, 1.8, 1.004),
  TIME_SIG_1(0xE081, 1.336, 0.08, -1, 1.256, 1.004),
  TIME_SIG_2(0xE082, 1.784, 0.08, -1.028, 1.704, 1.016),
  TIME_SIG_3(0xE083, 1.684, 0.08, -1.004, 1.604, 0.996),
  TIME_SIG_4(0xE084, 1.88, 0.08, -1, 1.8, 1.004),
  TIME_SIG_5(0xE085, 1.612, 0.08, -1.004, 1.532, 0.984),
  TIME_SIG_6(0xE086, 1.736, 0.08, -0.996, 1.656, 1.004),
  TIME_SIG_7(0xE087, 1.764, 0.08, -1, 1.684, 0.996),
  TIME_SIG_8(0xE088, 1.744, 0.08, -1.036, 1.664, 1.036),
  TIME_SIG_9(0xE089, 1.736, 0.08, -0.996, 1.656, 1.004),
  TUPLET_0(0xE880, 1.276, -0.001, -0.032, 1.273, 1.5),
  TUPLET_1(0xE881, 0.984, 0.04, 0, 1.024, 1.488),
  TUPLET_2(0xE882, 1.276, 0.04, -0.024, 1.316, 1.5),
  TUPLET_3(0xE883, 1.184, 0.04, -0.032, 1.224, 1.5),
  TUPLET_4(0xE884, 1.212, 0.04, 0, 1.252, 1.488),
  TUPLET_5(0xE885, 1.268, 0.04, -0.032, 1.308, 1.492),
  TUPLET_6(0xE886, 1.216, 0.041, -0.032, 1.256, 1.5),
  TUPLET_7(0xE887, 1.212, 0.12, -0.016, 1.332, 1.488),
  TUPLET_8(0xE888, 1.252, 0.04, -0.032, 1.292, 1.5),
  TUPLET_9(0xE889, 1.216, 0.04, -0.032, 1.255, 1.5);

  private final int codePoint;
  private final double advance;
  private final double left;
  private final double bottom;
  private final double right;
  private final double top;

  Glyph(int codePoint, double advance, double left, double bottom, double right, double top) {
    this.codePoint = codePoint;
    this.advance = advance;
    this.left = left;
    this.bottom = bottom;
    this.right = right;
    this.top = top;
  }

  /** The font file, a resource beside this class. */
  public static final String FILE = "Bravura.otf";

  /** The sign of a digit in a time signature. */
  static Glyph timeDigit(int digit) {
    return valueOf("TIME_SIG_" + digit);
  }

  /** The sign of a digit over a tuplet. */
  static Glyph tupletDigit(int digit) {
    return valueOf("TUPLET_" + digit);
  }

  /** Its code point in the font. */
  public int codePoint() {
    return codePoint;
  }

  /** Its code point as text, for drawing with the font. */
  public String text() {
    return Character.toString(codePoint);
  }

  /** How far the next sign of a line of signs is set. */
  public double advance() {
    return advance;
  }

  double left() {
    return left;
  }

  double bottom() {
    return bottom;
  }

  double right() {
    return right;
  }

  double top() {
    return top;
  }

  double width() {
    return right - left;
  }
}
