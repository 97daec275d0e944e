package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.ClickPlan;

class StockTest {
  @Test
  void aTitleIsFoundInAnyCaseAndWithHyphensForSpaces() {
    assertThat(Stock.find("LONG-threes").title()).isEqualTo("Long threes");
    assertThat(Stock.find(" two and four and ").title()).isEqualTo("Two-and four-and");
    assertThat(Stock.find("son-3-2").chairs().get(0).cell().attackSteps())
        .containsExactly(0, 3, 6, 10, 12);
  }

  @Test
  void aMissNamesTheNearestTitles() {
    assertThatThrownBy(() -> Stock.find("Long trees"))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("found \"Long trees\"")
        .hasMessageContaining("\"Long threes\"");
    assertThatThrownBy(() -> Stock.find("son")).hasMessageContaining("\"Son 3-2\"");
  }

  @Test
  void titlesAreUnique() {
    Set<String> titles = new HashSet<>();
    for (Drill drill : Stock.drills()) {
      assertThat(titles.add(Nearest.folded(drill.title()))).as(drill.title()).isTrue();
    }
    assertThat(titles).hasSizeGreaterThan(60);
  }

  @Test
  void everyDrillIsTheSameAfterItWasWrittenAndRead() {
    for (Drill drill : Stock.drills()) {
      assertThat(FileCodec.readDrill(FileCodec.write(drill))).isEqualTo(drill);
    }
  }

  @Test
  void everyDrillBeginsUnderAFullClickAndThinsFromStageToStage() {
    for (Drill drill : Stock.drills()) {
      ClickPlan plan = new ClickPlan(drill.stages());
      assertThat(plan.clicksPerBar(0, drill.meter(), drill.stepsPerBeat()))
          .as(drill.title())
          .isEqualTo(drill.meter().beatsPerBar());
      for (int i = 1; i < drill.stages().size(); i++) {
        assertThat(plan.clicksPerBar(i, drill.meter(), drill.stepsPerBeat()))
            .as("%s stage %d", drill.title(), i)
            .isLessThanOrEqualTo(plan.clicksPerBar(i - 1, drill.meter(), drill.stepsPerBeat()));
      }
    }
  }

  @Test
  void everyStageHoldsWholePeriodsAndEveryAttackStandsInItsCell() {
    for (Drill drill : Stock.drills()) {
      assertThat(drill.stages())
          .as(drill.title())
          .allMatch(stage -> stage.bars() % drill.periodBars() == 0);
      for (Drill.Chair chair : drill.chairs()) {
        assertThat(drill.periodBars() * drill.stepsPerBar() % chair.cell().steps())
            .as("%s, chair %s", drill.title(), chair.chair())
            .isZero();
      }
    }
  }

  @Test
  void rowsOfTheEnsemblesAreAsWritten() {
    assertThat(steps("Jigsaw")).containsExactly(List.of(0, 3, 6), List.of(1, 4, 7), List.of(2, 5));
    assertThat(steps("Layers over three bars"))
        .containsExactly(List.of(0, 4, 8, 12, 16, 20), List.of(0, 3, 6, 9, 12, 15, 18, 21));
    assertThat(Stock.find("Long threes").chairs().get(0).cell().attackSteps())
        .containsExactly(0, 3, 6, 9, 12, 15, 18, 21, 24, 27, 29, 31);
    assertThat(Stock.find("Displacement ladder").chairs().get(0).cell().attackSteps())
        .startsWith(0, 3, 8, 11, 16, 19, 24, 27, 33, 36)
        .endsWith(247, 250, 255)
        .hasSize(63);
  }

  private static List<List<Integer>> steps(String title) {
    return Stock.find(title).chairs().stream().map(chair -> chair.cell().attackSteps()).toList();
  }

  @Test
  void everyLessonIsMadeOfDrillsOfTheStock() {
    assertThat(Stock.lessons()).hasSize(5);
    for (Lesson lesson : Stock.lessons()) {
      assertThat(lesson.drills()).allMatch(item -> Stock.has(item.drill()));
      assertThat(FileCodec.readLesson(FileCodec.write(lesson))).isEqualTo(lesson);
    }
    assertThat(Stock.findLesson("first-day").minutes()).isEqualTo(45);
    assertThatThrownBy(() -> Stock.findLesson("Fist day")).hasMessageContaining("First day");
  }

  @Test
  void theDemoSeatsAClassOfTwentyFour() {
    assertThat(Demo.TUESDAY_CLASS).hasSize(24).doesNotHaveDuplicates();
    assertThat(Demo.TUESDAY_CLASS).startsWith(Demo.RHYTHM_SECTION.toArray(String[]::new));
    assertThat(Stock.find(Demo.TITLE).chairs()).hasSize(4);
  }
}
