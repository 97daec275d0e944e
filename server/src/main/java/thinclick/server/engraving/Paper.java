package thinclick.server.engraving;

import java.util.Locale;
import thinclick.protocol.json.BadInput;

/** Sizes of paper, millimetres. */
public enum Paper {
  A4(210, 297),
  LETTER(215.9, 279.4);

  private final double width;
  private final double height;

  Paper(double width, double height) {
    this.width = width;
    this.height = height;
  }

  /** Its width, millimetres. */
  public double width() {
    return width;
  }

  /** Its height, millimetres. */
  public double height() {
    return height;
  }

  /** Reads {@code "A4"} or {@code "Letter"}. */
  public static Paper parse(String written) {
    for (Paper paper : values()) {
      if (paper.name().equals(written.strip().toUpperCase(Locale.ROOT))) {
        return paper;
      }
    }
    throw new BadInput("paper", "expected A4 or Letter, found \"" + written + "\"");
  }
}
