package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import thinclick.client.window.FootWidths.Span;

class FootWidthsTest {
  private static final Span SHORT = new Span(200, 110);
  private static final Span CARE = new Span(730, 372);
  private static final Span SENTENCE = new Span(760, 395);

  @Test
  void shortTextsStandInOneLineAndTheSentenceHasTheRest() {
    assertThat(FootWidths.of(1318, 30, SENTENCE, SHORT, SHORT))
        .isEqualTo(new FootWidths(858, 200, 200));
  }

  @Test
  void longTextIsBrokenSoThatTheSentenceKeepsToTwoLines() {
    assertThat(FootWidths.of(1318, 30, SENTENCE, SHORT, CARE))
        .isEqualTo(new FootWidths(686, 200, 372));
  }

  @Test
  void inANarrowWindowWhatToTapOnIsBrokenAsWell() {
    assertThat(FootWidths.of(976, 30, SENTENCE, SHORT, CARE))
        .isEqualTo(new FootWidths(434, 110, 372));
  }

  @Test
  void whatToTapOnGivesWayBeforeAThirdLine() {
    assertThat(FootWidths.of(860, 30, SENTENCE, SHORT, CARE))
        .isEqualTo(new FootWidths(458, 0, 372));
  }

  @Test
  void whereNothingIsTappedWhatIsHeardKeepsItsLineIfItCan() {
    assertThat(FootWidths.of(976, 30, SENTENCE, null, new Span(500, 260)))
        .isEqualTo(new FootWidths(446, 0, 500));
    assertThat(FootWidths.of(860, 30, SENTENCE, null, new Span(500, 260)))
        .isEqualTo(new FootWidths(570, 0, 260));
  }

  @Test
  void whereNothingFitsTheSentenceKeepsTheMost() {
    assertThat(FootWidths.of(500, 30, SENTENCE, SHORT, CARE))
        .isEqualTo(new FootWidths(270, 0, 200));
  }
}
