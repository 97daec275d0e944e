package thinclick.server.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import thinclick.server.engraving.Ink;

/** The inks of paper against the contrast that WCAG 2.2 asks of text (4.5) and of graphics (3). */
class InkColorTest {
  @ParameterizedTest
  @EnumSource(Ink.class)
  void inkIsSeenOnWhitePaper(Ink ink) {
    double contrast = 1.05 / (luminance(InkColor.of(ink)) + 0.05);
    assertThat(contrast).isGreaterThan(ink == Ink.RULE ? 3 : 4.5);
  }

  private static double luminance(Color color) {
    return 0.2126 * linear(color.getRed())
        + 0.7152 * linear(color.getGreen())
        + 0.0722 * linear(color.getBlue());
  }

  private static double linear(int part) {
    double share = part / 255.0;
    return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
  }
}
