package thinclick.client.window.look;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import thinclick.client.window.look.Sight.Deficiency;

/** Every pair of colours that meet on screen can be read, also by eyes that lack a cone. */
class PaletteTest {
  /** WCAG 2.2, success criterion 1.4.3. */
  private static final double TEXT = 4.5;

  /** WCAG 2.2, success criterion 1.4.6. */
  private static final double ENHANCED = 7;

  /** WCAG 2.2, success criterion 1.4.11. */
  private static final double GRAPHICS = 3;

  /** WCAG 2.2's own examples: black on white is 21:1, #767676 on white just passes 4.5:1. */
  @Test
  void contrastIsThatOfTheGuideline() {
    assertThat(Sight.contrast(0x000000, 0xFFFFFF)).isCloseTo(21, within(1e-9));
    assertThat(Sight.contrast(0xFFFFFF, 0x767676)).isBetween(4.5, 4.6);
    assertThat(Sight.contrast(0xFFFFFF, 0x777777)).isLessThan(4.5);
  }

  @ParameterizedTest
  @EnumSource(Palette.class)
  void textReadsOnEveryGround(Palette palette) {
    Map.of(
            "ink", palette.ink(),
            "soft", palette.soft(),
            "early", palette.early(),
            "late", palette.late())
        .forEach((name, colour) -> onEveryGround(palette, name, colour, TEXT));
  }

  @ParameterizedTest
  @EnumSource(names = {"STRONG_LIGHT", "STRONG_DARK"})
  void strongInksReachTheEnhancedContrast(Palette palette) {
    Map.of(
            "ink", palette.ink(),
            "soft", palette.soft(),
            "early", palette.early(),
            "late", palette.late())
        .forEach((name, colour) -> onEveryGround(palette, name, colour, ENHANCED));
    onEveryGround(palette, "rule", palette.rule(), TEXT);
  }

  @ParameterizedTest
  @EnumSource(Palette.class)
  void linesAreSeenOnEveryGround(Palette palette) {
    onEveryGround(palette, "rule", palette.rule(), GRAPHICS);
  }

  @ParameterizedTest
  @EnumSource(Palette.class)
  void earlyAndLateDifferForEyesThatLackACone(Palette palette) {
    for (Deficiency deficiency : Deficiency.values()) {
      assertThat(Sight.distance(deficiency, palette.early(), palette.late()))
          .as("%s, %s", palette, deficiency)
          .isGreaterThanOrEqualTo(27);
    }
  }

  private static void onEveryGround(Palette palette, String name, int colour, double floor) {
    Map.of("paper", palette.paper(), "sheet", palette.sheet(), "band", palette.band())
        .forEach(
            (ground, under) ->
                assertThat(Sight.contrast(colour, under))
                    .as("%s on %s, %s", name, ground, palette)
                    .isGreaterThanOrEqualTo(floor));
  }
}
