package thinclick.server.picture;

/** The light palette of the screens; early and late differ in shape as well. */
public enum Tint {
  /** Around the sheet. */
  PAPER(0xF7F3EA),
  /** What is written on. */
  SHEET(0xFDFBF6),
  /** A stretch that is allowed or marked. */
  BAND(0xE4DDCB),
  /** What is read first. */
  INK(0x22201C),
  /** What is read after it. */
  SOFT(0x5E584D),
  /** Early. */
  EARLY(0x7A2E78),
  /** Late. */
  LATE(0x566200),
  /** Rules and ticks. */
  RULE(0x7D7464);

  private final int rgb;

  Tint(int rgb) {
    this.rgb = rgb;
  }

  /** Red, green and blue, a byte each. */
  public int rgb() {
    return rgb;
  }
}
