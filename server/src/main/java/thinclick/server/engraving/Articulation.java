package thinclick.server.engraving;

/** How a note is struck or held. */
public enum Articulation {
  ACCENT(Glyph.ARTIC_ACCENT_ABOVE, Glyph.ARTIC_ACCENT_BELOW),
  STACCATO(Glyph.ARTIC_STACCATO_ABOVE, Glyph.ARTIC_STACCATO_BELOW),
  TENUTO(Glyph.ARTIC_TENUTO_ABOVE, Glyph.ARTIC_TENUTO_BELOW);

  private final Glyph above;
  private final Glyph below;

  Articulation(Glyph above, Glyph below) {
    this.above = above;
    this.below = below;
  }

  Glyph above() {
    return above;
  }

  Glyph below() {
    return below;
  }
}
