package thinclick.client.window.lectern;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import thinclick.client.window.session.Lead.Hand;
import thinclick.client.window.session.Rooms;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.TakeNews.StopReason;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Stock;

/**
 * What is left of a paused take; at 100 a bar of 4/4 is 2.4 s long, a quarter of an eighth 75 ms.
 */
class RestTest {
  private static final List<Stage> PLAN =
      List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4), Stage.ofBeats(8, 2, 1), Stage.ofBeats(4, 1));
  private static final Take TAKE = Rooms.take(Meter.FOUR_FOUR, 2, PLAN);
  private static final Drill DRILL = Stock.find("Long threes").withStages(PLAN);
  private static final Hand HAND = new Hand(DRILL, 100, 7, List.of("p1", "p2"), Map.of("p2", 3));
  private static final long BAR = 2_400_000;

  private static Rest at(long micros) {
    return Rest.of(Rooms.stopped(TAKE, micros, StopReason.LEADER), HAND);
  }

  @Test
  void goesOnFromThePeriodWithWhatIsLeftOfThePlan() {
    assertThat(DRILL.periodBars()).isEqualTo(4);
    Rest rest = at(14 * BAR + 500_000);
    assertThat(rest.stoppedBar()).isEqualTo(14);
    assertThat(rest.fromBar()).isEqualTo(12);
    assertThat(rest.hand().drill().stages())
        .containsExactly(Stage.ofBeats(4, 2, 1), Stage.ofBeats(4, 1));
    assertThat(rest.hand().seed()).isEqualTo(7);
    assertThat(rest.hand().chairs()).containsExactly("p1", "p2");
    assertThat(rest.hand().levels()).containsExactly(Map.entry("p2", 3));
  }

  @Test
  void barLineBelongsToTheBarBeforeIt() {
    assertThat(at(12 * BAR + 74_000).fromBar()).isEqualTo(8);
    assertThat(at(12 * BAR + 76_000).fromBar()).isEqualTo(12);
  }

  @Test
  void beforeTheFirstBarItIsTheWholeAndAfterTheLastItsLastPeriod() {
    assertThat(at(-1_000_000).hand().drill().stages()).isEqualTo(PLAN);
    assertThat(at(20 * BAR + 900_000).fromBar()).isEqualTo(16);
  }

  @Test
  void takeThatCameToItsEndHasNone() {
    assertThat(Rest.of(Rooms.stopped(TAKE, 20 * BAR, StopReason.FINISHED), HAND)).isNull();
  }
}
