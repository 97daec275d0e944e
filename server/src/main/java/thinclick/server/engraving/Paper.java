package thinclick.server.engraving;

import java.util.Locale;
import java.util.Set;
import thinclick.protocol.json.BadInput;

/** Sizes of paper, millimetres. */
public enum Paper {
  A4(210, 297),
  LETTER(215.9, 279.4);

  /** ISO 3166 codes, as in the measurement data of CLDR, paper size US-Letter. */
  private static final Set<String> PRINTS_LETTER =
      Set.of("BZ", "CA", "CL", "CO", "CR", "GT", "MX", "NI", "PA", "PH", "PR", "SV", "US", "VE");

  private final double width;
  private final double height;

  Paper(double width, double height) {
    this.width = width;
    this.height = height;
  }

  /** What is usually printed on there: Letter in most of the Americas, A4 elsewhere. */
  public static Paper usualIn(Locale place) {
    return PRINTS_LETTER.contains(place.getCountry()) ? LETTER : A4;
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
