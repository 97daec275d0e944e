package thinclick.client.window.settings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.client.window.look.Look;
import thinclick.client.window.words.Language;

/** What is remembered comes back, and nothing that was there is lost. */
class SettingsFileTest {
  @TempDir Path folder;

  @Test
  void aFirstRunOpensSoftAndLight() {
    SettingsFile.Found found = file().read();
    assertThat(found).isEqualTo(new SettingsFile.Found(Settings.FIRST, ""));
  }

  @Test
  void whatWasWrittenComesBack() {
    Settings settings = settings();
    file().write(Settings.FIRST);
    file().write(settings);
    assertThat(file().read()).isEqualTo(new SettingsFile.Found(settings, ""));
    assertThat(folder.toFile().list()).containsExactly(SettingsFile.NAME);
  }

  @Test
  void aFileOfBeforeThereWereTwoLanguagesIsRead() throws IOException {
    Files.writeString(
        folder.resolve(SettingsFile.NAME),
        "{\"format\":\"thinclick.settings\",\"version\":1,\"look\":{\"shade\":\"DARK\",\"contrast\":\"USUAL\","
            + "\"textSize\":15,\"partInWords\":false},\"name\":\"Ana\",\"address\":\"\"}");
    assertThat(file().read().settings().speaks()).isEqualTo(Language.SYSTEM);
    assertThat(file().read().settings().name()).isEqualTo("Ana");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "{",
        "[]",
        "noise \u0000 noise",
        "{\"format\":\"thinclick.settings\",\"version\":2}",
        "{\"format\":\"thinclick.take\",\"version\":1}",
        "{\"format\":\"thinclick.settings\",\"version\":1,\"look\":{\"shade\":\"PINK\",\"contrast\":\"USUAL\",\"textSize\":15,\"partInWords\":false},"
            + "\"name\":\"\",\"address\":\"\"}",
        "{\"format\":\"thinclick.settings\",\"version\":1,\"look\":{\"shade\":\"DARK\",\"contrast\":\"USUAL\",\"textSize\":99,\"partInWords\":false},"
            + "\"name\":\"\",\"address\":\"\"}",
      })
  void whatCannotBeReadIsPutAsideWhole(String content) throws IOException {
    Files.writeString(folder.resolve(SettingsFile.NAME), content);
    SettingsFile.Found found = file().read();
    assertThat(found)
        .isEqualTo(new SettingsFile.Found(Settings.FIRST, "settings.unreadable-1.json"));
    assertThat(folder.resolve(found.putAside())).hasContent(content);
    assertThat(folder.resolve(SettingsFile.NAME)).doesNotExist();
  }

  @Test
  void aSecondUnreadableFileDoesNotReplaceTheFirst() throws IOException {
    Files.writeString(folder.resolve(SettingsFile.NAME), "one");
    file().read();
    Files.writeString(folder.resolve(SettingsFile.NAME), "two");
    assertThat(file().read().putAside()).isEqualTo("settings.unreadable-2.json");
    assertThat(folder.resolve("settings.unreadable-1.json")).hasContent("one");
  }

  private SettingsFile file() {
    return new SettingsFile(folder);
  }

  private static Settings settings() {
    return new Settings(
        Settings.FORMAT,
        Settings.VERSION,
        Look.FIRST.with(Look.Shade.DARK).withText(19),
        Language.DE,
        "Ana",
        "192.168.1.20:7420");
  }
}
