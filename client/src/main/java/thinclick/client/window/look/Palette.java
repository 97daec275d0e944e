package thinclick.client.window.look;

/**
 * Paper and ink, by day and by night. There is one colour for early and one for late and no third
 * hue: attention is bold ink on the band between double rules.
 */
public enum Palette {
  /** Dark ink on light paper. */
  LIGHT(0xF7F3EA, 0xFDFBF6, 0xE4DDCB, 0x22201C, 0x5E584D, 0x7A2E78, 0x566200, 0x7D7464),
  /** Light ink on dark paper. */
  DARK(0x1B1A18, 0x242220, 0x3A3630, 0xEFE9DC, 0xB4AB9A, 0xE2A0DE, 0xBFCB5A, 0x8F8677),
  /** Black on white. */
  STRONG_LIGHT(0xFFFFFF, 0xFFFFFF, 0xEDE9DF, 0x000000, 0x36322B, 0x6A1468, 0x454F00, 0x4C463C),
  /** White on black. */
  STRONG_DARK(0x000000, 0x000000, 0x26231E, 0xFFFFFF, 0xD8D1C2, 0xE8A0E4, 0xDCEB62, 0xB9B09F);

  private final int paper;
  private final int sheet;
  private final int band;
  private final int ink;
  private final int soft;
  private final int early;
  private final int late;
  private final int rule;

  Palette(int paper, int sheet, int band, int ink, int soft, int early, int late, int rule) {
    this.paper = paper;
    this.sheet = sheet;
    this.band = band;
    this.ink = ink;
    this.soft = soft;
    this.early = early;
    this.late = late;
    this.rule = rule;
  }

  /** The ground of the window. Every colour is red, green and blue, eight bits each. */
  public int paper() {
    return paper;
  }

  /** The ground of a sheet of music. */
  public int sheet() {
    return sheet;
  }

  /** A ground that sets something apart. */
  public int band() {
    return band;
  }

  /** Text and notes. */
  public int ink() {
    return ink;
  }

  /** Text of less weight. */
  public int soft() {
    return soft;
  }

  /** What came early. */
  public int early() {
    return early;
  }

  /** What came late. */
  public int late() {
    return late;
  }

  /** Lines and edges. */
  public int rule() {
    return rule;
  }

  /** The one for dark or light paper, with strong or usual inks. */
  public static Palette of(boolean dark, boolean strong) {
    if (strong) {
      return dark ? STRONG_DARK : STRONG_LIGHT;
    }
    return dark ? DARK : LIGHT;
  }

  /** True for light ink on dark paper. */
  public boolean dark() {
    return this == DARK || this == STRONG_DARK;
  }

  /** {@code "#7a2e78"}. */
  public static String web(int colour) {
    return String.format("#%06x", colour);
  }
}
