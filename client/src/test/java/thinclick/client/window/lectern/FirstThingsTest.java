package thinclick.client.window.lectern;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Stock;
import thinclick.server.words.Advice;

/** What is said to come first is what is set up. */
class FirstThingsTest {
  private static final Drill BLUES = Stock.find("Threes over a blues"); // periods of twelve bars
  private static final List<Stage> PLAN =
      List.of(Stage.ofBeats(24, 1, 1, 3), Stage.ofBeats(24, 2, 1));

  @Test
  void countAloudIsAllBeatsAndHalfAsManyBarsInWholePeriods() {
    assertThat(of(Advice.COUNT_ALOUD))
        .isEqualTo(new FirstThings(List.of(Stage.ofBeats(24, 1, 1, 2, 3, 4)), 120));
    List<Stage> once = List.of(Stage.ofBeats(12, 1, 1, 3));
    assertThat(FirstThings.of(Advice.COUNT_ALOUD, BLUES, once, 120).plan())
        .as("one period at least")
        .containsExactly(Stage.ofBeats(12, 1, 1, 2, 3, 4));
  }

  @Test
  void theTempoGoesDownByATenthButNotBelowTheDrills() {
    assertThat(of(Advice.SLOWER)).isEqualTo(new FirstThings(PLAN, 108));
    double least = BLUES.tempo().from();
    assertThat(FirstThings.of(Advice.SLOWER, BLUES, PLAN, least).tempo()).isEqualTo(least);
  }

  @Test
  void theClickOfEverySecondBarLastsAsLongAsThePlan() {
    assertThat(of(Advice.SING)).isEqualTo(new FirstThings(List.of(Stage.ofBeats(48, 2, 1)), 120));
  }

  @Test
  void whatIsAboutSomethingElseLeavesPlanAndTempo() {
    assertThat(of(Advice.CHECK_THE_PAD)).isEqualTo(new FirstThings(PLAN, 120));
    assertThat(of(null)).isEqualTo(new FirstThings(PLAN, 120));
  }

  private static FirstThings of(Advice advice) {
    return FirstThings.of(advice, BLUES, PLAN, 120);
  }
}
