package thinclick.server.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LeanRulesTest {
  /**
   * Friberg and Sundberg 1995, JASA 98:2524, abstract: about 6 ms below intervals of about 240 ms,
   * 2.5 % above, tested from 100 to 1,000 ms.
   */
  @ParameterizedTest
  @CsvSource({"100, 6", "200, 6", "240, 6", "500, 12.5", "1000, 25"})
  void aLeanIsNoticedFromThePublishedThresholdOn(double gapMillis, double noticedMillis) {
    assertThat(LeanRules.justNoticed(gapMillis)).isCloseTo(noticedMillis, within(1e-9));
  }
}
