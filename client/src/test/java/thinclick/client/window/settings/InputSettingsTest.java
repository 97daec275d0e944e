package thinclick.client.window.settings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.client.input.KeyHalf;
import thinclick.client.input.NoteFilter;

/** What is tapped on comes back as it was left, and nothing half read is taken for it. */
class InputSettingsTest {
  private static final InputSettings KEPT =
      InputSettings.FIRST
          .with(KeyHalf.RIGHT)
          .withLearned("pad one", new NoteFilter(11, 9))
          .withLearned("pad two", new NoteFilter(20, -1))
          .withPad("pad one", 10, "Ben")
          .withPad("pad two", 1, "");

  @TempDir Path folder;

  @Test
  void itIsReadBackAsItWasWritten() {
    InputSettings.file(folder).write(KEPT);
    assertThat(InputSettings.file(folder).read().value()).isEqualTo(KEPT);
    assertThat(KEPT.learned())
        .extracting(InputSettings.Learned::filter)
        .containsExactly(new NoteFilter(20, -1), new NoteFilter(11, 9));
  }

  @Test
  void whatIsLearnedAnewTakesThePlaceOfTheOldAndAPadHasOneOwner() {
    InputSettings now =
        KEPT.withLearned("pad one", new NoteFilter(5, -1)).withPad("pad one", 10, "Cem");
    assertThat(now.learned())
        .containsExactly(
            new InputSettings.Learned("pad one", 5, null),
            new InputSettings.Learned("pad two", 20, null));
    assertThat(now.padsOf("Cem")).containsExactly("pad one");
    assertThat(now.padsOf("Ben")).isEmpty();
    assertThat(now.withoutLearned().pads()).isEqualTo(now.pads());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"RIGHT\" | \"MIDDLE\"",
        "\"RIGHT\" | 1",
        "\"version\" : 1 | \"version\" : 2",
        "\"leastVelocity\" : 11 | \"leastVelocity\" : 0",
        "\"leastVelocity\" : 11 | \"leastVelocity\" : \"11\"",
        "\"leastVelocity\" : 11 | \"leastVelocity\" : 11.5",
        "\"channel\" : 10 | \"channel\" : 17",
        "\"player\" : \"\" | \"player\" : null",
        "pad two | pad one",
      })
  void aValueThatCannotBeIsRefusedAndTheFileIsPutAside(String right, String wrong)
      throws IOException {
    InputSettings.file(folder).write(KEPT);
    Path file = folder.resolve(InputSettings.NAME);
    assertThat(file).content().contains(right);
    Files.writeString(file, Files.readString(file).replace(right, wrong));
    assertThat(InputSettings.file(folder).read())
        .isEqualTo(new KeptFile.Found<>(InputSettings.FIRST, "input.unreadable-1.json"));
    assertThat(folder.resolve("input.unreadable-1.json")).content().contains(wrong);
  }
}
