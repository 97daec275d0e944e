package thinclick.server.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Rung;
import thinclick.server.material.StageText;
import thinclick.server.material.Stock;

/** The click plan is read and edited in the reader's language. */
class StageLinesTest {
  private static final StageLines GERMAN = in(Locale.GERMAN);
  private static final StageLines ENGLISH = in(Locale.ENGLISH);

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "8 bars: one and three | 8 Takte: eins und drei",
        "1 bar: all beats | 1 Takt: alle Schläge",
        "4 bars: the one of every bar | 4 Takte: die Eins allein",
        "4 bars: the one of every second bar | 4 Takte: die Eins jedes zweiten Takts",
        "8 bars: no click | 8 Takte: kein Klick",
        "16 bars: three quarters of the bars silent | 16 Takte: drei Viertel der Takte still"
      })
  void aLineIsWrittenAndReadInBothLanguages(String english, String german) {
    List<Stage> stages = StageText.parse(english, Meter.FOUR_FOUR, 2, null, 3);
    assertThat(ENGLISH.parse(hurried(english), 3)).as("its short name too").isEqualTo(stages);
    assertThat(GERMAN.parse(german, 3)).isEqualTo(stages);
    assertThat(GERMAN.parse(english, 3)).as("English is understood too").isEqualTo(stages);
    assertThat(ENGLISH.parse(english, 3)).isEqualTo(stages);
    if (!german.contains("still")) {
      assertThat(GERMAN.of(stages.get(0))).isEqualTo(german);
      assertThat(ENGLISH.of(stages.get(0))).isEqualTo(english);
    }
  }

  /** As it is typed by whoever is in a hurry. */
  private static String hurried(String line) {
    return line.replace("the one of every bar", "first only")
        .replace("the one of every", "every")
        .replace("no click", "none");
  }

  @Test
  void severalBeatsOrStepsAreWrittenAsARowAndReadBack() {
    for (String text : List.of("4 bars: beats 2 3 of every 2 bars", "4 bars: steps 0 3 7")) {
      List<Stage> stages = StageText.parse(text, Meter.FOUR_FOUR, 2, null, 3);
      for (StageLines lines : List.of(GERMAN, ENGLISH)) {
        assertThat(lines.parse(lines.of(stages.get(0)), 3)).isEqualTo(stages);
        assertThat(lines.parse(text, 3)).isEqualTo(stages);
      }
    }
    Stage pairs = Stage.ofBeats(4, 2, 2, 3);
    assertThat(ENGLISH.of(pairs)).isEqualTo("4 bars: beats 2 and 3 of every 2 bars");
    assertThat(GERMAN.of(pairs)).isEqualTo("4 Takte: Schläge 2 und 3 in je 2 Takten");
    assertThat(GERMAN.parse("4 Takte: Schläge 2 3 von je 2 Takten", 3)).containsExactly(pairs);
  }

  @Test
  void aLadderIsReadInGerman() {
    assertThat(GERMAN.parse("4 Takte: alle Schläge bis die Eins allein", 0))
        .isEqualTo(StageText.parse("4 bars: all beats to first only", Meter.FOUR_FOUR, 2, null, 0));
    assertThat(GERMAN.parse("2: Schläge 1, 2 und 4", 0))
        .isEqualTo(List.of(Stage.ofBeats(2, 1, 1, 2, 4)));
  }

  /** What is shown can be edited: every stage of the stock comes back as it was. */
  @Test
  void everyStageOfTheStockReadsBackTheSame() {
    for (Drill drill : Stock.drills()) {
      StageLines lines =
          new StageLines(
              Speaker.of(Locale.GERMAN), drill.meter(), drill.stepsPerBeat(), drill.groups());
      for (Stage stage : drill.stages()) {
        String line = lines.of(stage);
        List<Stage> read = lines.parse(line, 0);
        assertThat(read).as("%s: %s", drill.title(), line).hasSize(1);
        assertThat(read.get(0).clickedSteps(drill.meter(), drill.stepsPerBeat()))
            .as("%s: %s", drill.title(), line)
            .hasSameSizeAs(stage.clickedSteps(drill.meter(), drill.stepsPerBeat()));
      }
    }
  }

  @Test
  void inEnglishTheRungsAreCalledWhatTheyAreCalledElsewhere() {
    for (Rung rung : Rung.values()) {
      assertThat(ENGLISH.name(rung)).isEqualTo(rung.nameIn(Meter.FOUR_FOUR, null));
    }
  }

  /** On the wall, of twelve words. */
  @Test
  void whereThereIsNoRoomTheOneAndWholeBarsAreSaidInFewerWords() {
    assertThat(ENGLISH.briefly(Stage.ofBeats(4, 1, 1))).isEqualTo("the one");
    assertThat(ENGLISH.briefly(Stage.ofBeats(4, 2, 1))).isEqualTo("every second bar");
    assertThat(GERMAN.briefly(Stage.ofBeats(4, 4, 1))).isEqualTo("jeder vierte Takt");
    assertThat(ENGLISH.briefly(Stage.ofBeats(4, 1, 1, 3))).isEqualTo("one and three");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "8", "acht Takte: alle Schläge", "8 Takte: rote Schläge", "4: Schläge 9"})
  void whatIsNotUnderstoodIsSaidInGerman(String line) {
    assertThatThrownBy(() -> GERMAN.parse(line, 0))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("gebraucht werden Takte")
        .hasMessageContaining("\u201e" + line.strip() + "\u201c");
  }

  private static StageLines in(Locale locale) {
    return new StageLines(Speaker.of(locale), Meter.FOUR_FOUR, 2, null);
  }
}
