package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;

/** A stage as a line to read and edit. */
class StageTextTest {
  private static final Meter FOUR = Meter.FOUR_FOUR;

  @Test
  void rungsAreWrittenByTheirPlainNames() {
    assertThat(text(new Stage(8, 1, List.of(1, 2, 3, 4), null))).isEqualTo("8 bars: all beats");
    assertThat(text(new Stage(8, 1, List.of(1, 3), null))).isEqualTo("8 bars: one and three");
    assertThat(text(new Stage(4, 2, List.of(1), null)))
        .isEqualTo("4 bars: the one of every second bar");
    assertThat(text(new Stage(1, 1, List.of(), null))).isEqualTo("1 bar: no click");
  }

  @Test
  void otherClicksAreWrittenAsBeatsOrSteps() {
    assertThat(text(new Stage(8, 1, List.of(1, 4), null))).isEqualTo("8 bars: beats 1 4");
    assertThat(text(new Stage(8, 2, null, List.of(3, 11))))
        .isEqualTo("8 bars: steps 3 11 of every 2 bars");
  }

  @Test
  void everyPlanOfTheStockReadsBackTheSame() {
    for (Drill drill : Stock.drills()) {
      for (Stage stage : drill.stages()) {
        String line = StageText.of(stage, drill.meter(), drill.stepsPerBeat(), drill.groups());
        List<Stage> read =
            StageText.parse(line, drill.meter(), drill.stepsPerBeat(), drill.groups(), 0);
        assertThat(clicks(read.get(0), drill))
            .as("%s: %s", drill.title(), line)
            .isEqualTo(clicks(stage, drill));
        assertThat(read).hasSize(1);
      }
    }
  }

  private static List<Long> clicks(Stage stage, Drill drill) {
    return stage.clickedSteps(drill.meter(), drill.stepsPerBeat());
  }

  @Test
  void anyStageReadsBackTheSame() {
    for (long seed = 0; seed < 200; seed++) {
      Random random = new Random(seed);
      int every = 1 + random.nextInt(4);
      int bars = every * (1 + random.nextInt(4));
      List<Integer> steps =
          IntStream.range(0, every * 8).filter(s -> random.nextInt(5) == 0).boxed().toList();
      Stage stage = new Stage(bars, every, null, steps);
      String line = text(stage);
      List<Stage> read = StageText.parse(line, FOUR, 2, null, 0);
      assertThat(read.get(0).clickedSteps(FOUR, 2))
          .as("seed %d: %s", seed, line)
          .isEqualTo(stage.clickedSteps(FOUR, 2));
    }
  }

  @Test
  void aLadderOnOneLineIsAStageForEachRung() {
    List<Stage> read = StageText.parse("4 bars: all beats to first only", FOUR, 2, null, 0);
    assertThat(read.stream().map(StageTextTest::text))
        .containsExactly(
            "4 bars: all beats", "4 bars: one and three", "4 bars: the one of every bar");
  }

  @Test
  void whatIsNotUnderstoodIsAnsweredWithWhatWasExpected() {
    refused("all beats", "expected bars and what clicks, such as \"8 bars: all beats\"");
    refused("8 bars: al beats", "did you mean \"all beats\"");
    refused("8 bars: beats 1 5", "5");
    refused("0 bars: all beats", "found 0");
    refused("99999999 bars: all beats", "expected a smaller number");
  }

  private static void refused(String line, String says) {
    assertThatThrownBy(() -> StageText.parse(line, FOUR, 2, null, 0))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining(says);
  }

  private static String text(Stage stage) {
    return StageText.of(stage, FOUR, 2, null);
  }
}
