package thinclick.client.window.stand;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.stand.StandWords.Where;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;

/** The words beside the music, without a window. */
class StandWordsTest {
  private static final Leaf FIRST = new Leaf(0, 6, 0, 2, 12, true, false);
  private static final Leaf LAST = new Leaf(5, 6, 9, 12, 12, true, false);

  private final StandWords english = new StandWords(Words.in(Locale.ENGLISH));
  private final StandWords german = new StandWords(Words.in(Locale.GERMAN));

  @Test
  void whereNobodyCountsTheBarsInViewAreSaid() {
    assertThat(english.where(TakeMoment.NONE, FIRST, false))
        .isEqualTo(
            new Where(
                "",
                "bars 1 and\u00a02 of\u00a012: Page\u00a0Down",
                "bars\u00a01\u20132 of\u00a012"));
    assertThat(english.where(moment(TakeMoment.Part.OVER, 0, 0), LAST, false).below())
        .isEqualTo("bars 10 to\u00a012 of\u00a012: Page\u00a0Up");
    assertThat(english.where(TakeMoment.NONE, FIRST, true).briefly())
        .as("beside names")
        .isEqualTo("bars\u00a01\u20132");
    assertThat(english.where(TakeMoment.NONE, Leaf.NONE, false)).isEqualTo(new Where("", "", ""));
  }

  @Test
  void numbersThatCountDownStayFigures() {
    assertThat(english.where(moment(TakeMoment.Part.BEFORE, 1, 0), FIRST, false).below())
        .isEqualTo("count-in in 1\u00a0second");
    assertThat(english.where(moment(TakeMoment.Part.PLAYING, 0, 2), FIRST, false))
        .isEqualTo(new Where("Bar 4", "the click changes in 2\u00a0bars", ""));
    assertThat(english.where(moment(TakeMoment.Part.PLAYING, 0, 1), FIRST, false).below())
        .isEqualTo("the click changes in 1\u00a0bar");
    assertThat(german.where(moment(TakeMoment.Part.PLAYING, 0, 1), FIRST, false).below())
        .isEqualTo("der Klick wechselt in 1\u00a0Takt");
  }

  @Test
  void theEntryIsSaidInFewWordsAndThatThePartSwings() {
    Part own = Part.of("Ana", 0, List.of(11, 14));
    Dealt straight = dealt(own, Swing.STRAIGHT);
    assertThat(english.entry(straight, own, DealtPart.written(straight, own)))
        .isEqualTo("Come in on the and of 2 in bar 2.");
    assertThat(german.entry(straight, own, DealtPart.written(straight, own).in(Locale.GERMAN)))
        .isEqualTo("Einsatz auf der Zwei-und in Takt 2.");
    Dealt swung = dealt(own, Swing.of(2));
    assertThat(english.entry(swung, own, DealtPart.written(swung, own)))
        .startsWith("Come in on the and of 2 in bar 2, swing")
        .endsWith(".");
    assertThat(english.entry(straight, null, null)).isEmpty();
  }

  @Test
  void theEntryIsOverWithItsBar() {
    Part own = Part.of("Ana", 0, List.of(11, 14));
    assertThat(StandWords.entryBar(dealt(own, Swing.STRAIGHT), own)).isEqualTo(1);
    assertThat(StandWords.entryBar(null, null)).isZero();
  }

  private static TakeMoment moment(TakeMoment.Part part, int seconds, int toNext) {
    return new TakeMoment(part, seconds, 0, 3, 0, toNext);
  }

  private static Dealt dealt(Part own, Swing swing) {
    return new Dealt(
        4,
        "d1",
        "Threes",
        List.of(own),
        "Ana",
        Meter.FOUR_FOUR,
        2,
        120,
        swing,
        50,
        List.of(Stage.ofBeats(4, 1, 1, 2, 3, 4)),
        List.of("Ana comes in on the and of 2 in bar 2."),
        null);
  }
}
