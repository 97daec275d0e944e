package thinclick.server.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.Reason;

/** What tables say of a drift: a side only where the range, as it is shown, has one. */
class DriftWordsTest {
  private static final Reason WHY = new Reason(Reason.Code.TOO_FEW, "too few beats");

  @ParameterizedTest
  @CsvSource({
    "0.52,  0.31,  0.73, 0.5 % slower (0.3–0.7 %), true",
    "-1.2,  -1.61, -0.79, 1.2 % faster (0.8–1.6 %), true",
    "0.3,   0.1,   0.5,  0.3 % slower (0.1–0.5 %), false",
    "4,     1,     7,    4 % slower (1–7 %), true",
    // touches 0, takes it in, or is shown to touch it though it does not
    "0.6,   0,     1.2,  'steady, as far as can be told', false",
    "-0.2,  -0.6,  0.2,  'steady, as far as can be told', false",
    "3,     -1,    7,    'steady, as far as can be told', false",
    "0.5,   0.04,  0.96, 'steady, as far as can be told', false",
    "-0.5, -0.96, -0.04, 'steady, as far as can be told', false",
    "0,     0,     0,    'steady, as far as can be told', false",
  })
  void saysASideWithItsRangeOrNone(
      double percent, double low, double high, String says, boolean matters) {
    Figure drift = new Figure(percent, new Interval(low, high), null);

    assertThat(Speaker.english().say(DriftWords.of(drift))).isEqualTo(says);
    assertThat(DriftWords.matters(drift)).isEqualTo(matters);
  }

  @Test
  void withoutARangeNothingIsToldApart() {
    Figure bare = new Figure(2.0, null, WHY);

    assertThat(Speaker.english().say(DriftWords.of(bare)))
        .isEqualTo("steady, as far as can be told");
    assertThat(DriftWords.matters(bare)).isFalse();
    assertThat(DriftWords.of(new Figure(null, null, WHY))).isNull();
  }

  @Test
  void germanHasItsComma() {
    Figure drift = new Figure(0.52, new Interval(.31, .73), null);

    assertThat(Speaker.of(Locale.GERMAN).say(DriftWords.of(drift)))
        .isEqualTo("0,5 % langsamer (0,3–0,7 %)");
  }
}
