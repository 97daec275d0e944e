package thinclick.server.export;

import java.awt.Color;
import thinclick.server.engraving.Ink;

/** The inks on white paper; the screen's light palette. */
final class InkColor {
  private static final Color FULL = new Color(0x22201C);
  private static final Color SOFT = new Color(0x5E584D);
  private static final Color RULE = new Color(0x7D7464);

  private InkColor() {}

  static Color of(Ink ink) {
    return switch (ink) {
      case FULL -> FULL;
      case SOFT -> SOFT;
      case RULE -> RULE;
    };
  }

  static String hex(Ink ink) {
    return String.format("#%06x", of(ink).getRGB() & 0xFFFFFF);
  }
}
