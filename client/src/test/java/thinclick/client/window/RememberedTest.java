package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.settings.SoundSettings;

/** What cannot be read is put aside and said, whichever of the two files it is. */
class RememberedTest {
  @TempDir Path folder;

  @Test
  void bothFilesThatCannotBeReadAreSaidToBeAside() throws IOException {
    Files.writeString(folder.resolve(SettingsFile.NAME), "{");
    Files.writeString(folder.resolve(SoundSettings.NAME), "[]");
    assertThat(remembered().putAside())
        .isEqualTo("settings.unreadable-1.json, sound.unreadable-1.json");
    assertThat(remembered().putAside()).as("once").isEmpty();
    assertThat(folder.resolve("sound.unreadable-1.json")).hasContent("[]");
  }

  private Remembered remembered() {
    SettingsFile file = new SettingsFile(folder);
    return new Remembered(file, file.read());
  }
}
