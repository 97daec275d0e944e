package thinclick.client.rehearse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;

class StageFitTest {
  private final List<Stage> stages =
      List.of(
          Stage.ofBeats(8, 1, 1, 2, 3, 4),
          Stage.ofBeats(8, 1, 1, 3),
          Stage.ofBeats(4, 1, 1),
          new Stage(4, 1, List.of(), null));

  @Test
  void everyStageKeepsItsShareAndAtLeastABar() {
    for (int bars = 4; bars <= 60; bars++) {
      List<Stage> fitted = StageFit.over(stages, bars);

      assertThat(new ClickPlan(fitted).bars()).isEqualTo(bars);
      assertThat(fitted).allMatch(stage -> stage.bars() >= 1);
    }
    assertThat(StageFit.over(stages, 12).stream().map(Stage::bars)).containsExactly(4, 4, 2, 2);
  }

  @Test
  void fewerBarsThanStagesAreRefused() {
    assertThatThrownBy(() -> StageFit.over(stages, 3))
        .isInstanceOf(BadInput.class)
        .hasMessage("--bars: expected at least 4, a bar for each stage of the click plan, found 3");
  }
}
