package thinclick.client.window.lectern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;

/** Where the click plan stands on its line, at the widths and sizes it is drawn in. */
class PlanPlacesTest {
  private static final int STEPS_PER_BAR = 8;

  /** The second stroke of a double line ends three pixels after its place. */
  private static final double DOUBLE_LINE = 3;

  @ParameterizedTest
  @CsvSource({"420, 15", "748, 15", "880, 15", "748, 30", "1102, 30"})
  void theFirstClickOfAStageStandsClearOfItsDoubleLine(double width, double em) {
    for (ClickPlan plan : List.of(plan(8), plan(8, 8, 8, 8), plan(4, 2, 16, 1, 24))) {
      PlanPlaces places = PlanPlaces.within(plan, width, em);
      double half = places.clickWidth(STEPS_PER_BAR) / 2;
      for (int i = 0; i < plan.stages().size(); i++) {
        double air = places.bar(i, 0) - half - (places.stage(i) + DOUBLE_LINE);
        assertThat(air).as("stage %d of %s at %.0f", i, plan, width).isGreaterThanOrEqualTo(3);
        double lastClick = places.bar(i, plan.stages().get(i).bars() - 1.0 / STEPS_PER_BAR) + half;
        double after = i + 1 < plan.stages().size() ? places.stage(i + 1) : places.end();
        assertThat(lastClick).isLessThanOrEqualTo(after);
      }
      assertThat(places.stage(0)).isGreaterThanOrEqualTo(0);
      assertThat(places.end()).isCloseTo(width - 1, within(0.001));
    }
  }

  private static ClickPlan plan(int... bars) {
    return new ClickPlan(
        Arrays.stream(bars).mapToObj(n -> Stage.ofBeats(n, 1, 1, 2, 3, 4)).toList());
  }
}
