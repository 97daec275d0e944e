package thinclick.server.engraving;

/** How a note is struck or held. */
public enum Articulation {
  ACCENT("accent", Glyph.ARTIC_ACCENT_ABOVE, Glyph.ARTIC_ACCENT_BELOW),
  STACCATO("short", Glyph.ARTIC_STACCATO_ABOVE, Glyph.ARTIC_STACCATO_BELOW),
  TENUTO("held", Glyph.ARTIC_TENUTO_ABOVE, Glyph.ARTIC_TENUTO_BELOW);

  private final String words;
  private final Glyph above;
  private final Glyph below;

  Articulation(String words, Glyph above, Glyph below) {
    this.words = words;
    this.above = above;
    this.below = below;
  }

  String words() {
    return words;
  }

  Glyph above() {
    return above;
  }

  Glyph below() {
    return below;
  }
}
