package thinclick.client.window.lectern;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Stock;
import thinclick.server.words.Advice;
import thinclick.server.words.Speaker;

/** What is said to come first is what is set up. */
class FirstThingsTest {
  private static final Drill BLUES = Stock.find("Threes over a blues"); // periods of twelve bars
  private static final Drill PUSH_ONLY = Stock.find("Push only");
  private static final List<Stage> PLAN =
      List.of(Stage.ofBeats(24, 1, 1, 3), Stage.ofBeats(24, 2, 1));

  @Test
  void countAloudIsAllBeatsAndHalfAsManyBarsInWholePeriods() {
    assertThat(of(Advice.COUNT_ALOUD))
        .isEqualTo(new FirstThings(BLUES, List.of(Stage.ofBeats(24, 1, 1, 2, 3, 4)), 120));
    List<Stage> once = List.of(Stage.ofBeats(12, 1, 1, 3));
    assertThat(FirstThings.of(Advice.COUNT_ALOUD, BLUES, once, 120).plan())
        .as("one period at least")
        .containsExactly(Stage.ofBeats(12, 1, 1, 2, 3, 4));
  }

  @Test
  void theTempoGoesDownByATenthButNotBelowTheDrills() {
    assertThat(of(Advice.SLOWER)).isEqualTo(new FirstThings(BLUES, PLAN, 108));
    double least = BLUES.tempo().from();
    assertThat(FirstThings.of(Advice.SLOWER, BLUES, PLAN, least).tempo()).isEqualTo(least);
  }

  @Test
  void theClickOfEverySecondBarLastsAsLongAsThePlan() {
    assertThat(of(Advice.SING))
        .isEqualTo(new FirstThings(BLUES, List.of(Stage.ofBeats(48, 2, 1)), 120));
  }

  @Test
  void whatIsAboutSomethingElseLeavesPlanAndTempo() {
    assertThat(of(Advice.CHECK_THE_PAD)).isEqualTo(new FirstThings(BLUES, PLAN, 120));
    assertThat(of(null)).isEqualTo(new FirstThings(BLUES, PLAN, 120));
  }

  @Test
  void anotherDrillIsTheOneThatIsNamedWithinItsTempos() {
    assertThat(of(Advice.PUSH_ONLY)).isEqualTo(new FirstThings(PUSH_ONLY, PUSH_ONLY.stages(), 120));
    assertThat(FirstThings.of(Advice.PUSH_ONLY, BLUES, PLAN, 50).tempo()).isEqualTo(80);
    assertThat(of(Advice.TWO_AND_FOUR_AND).tempo()).isEqualTo(108);
    assertThat(of(Advice.EVEN_EIGHTHS).tempo()).isEqualTo(60);
    FirstThings ands = of(Advice.ANDS_ALONE); // every quarter a group: its last beat is each beat
    assertThat(ands.drill().title()).isEqualTo("Ands alone");
    assertThat(ands.plan()).hasSize(1);
    for (Advice advice : Advice.values()) {
      String said = Speaker.of(Locale.ENGLISH).say("next." + advice);
      String title = of(advice).drill().title();
      assertThat(title.equals(BLUES.title()) || said.contains(title)).as(said).isTrue();
    }
  }

  private static FirstThings of(Advice advice) {
    return FirstThings.of(advice, BLUES, PLAN, 120);
  }
}
