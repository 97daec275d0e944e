package thinclick.client.window;

import java.io.UncheckedIOException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.window.door.DoorModel;
import thinclick.client.window.settings.KeptFile;
import thinclick.client.window.settings.Settings;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.settings.SettingsModel;
import thinclick.client.window.settings.SoundSettings;
import thinclick.protocol.json.BadInput;

/** What a window remembers from one evening to the next: read as it opens, kept as it closes. */
final class Remembered {
  private static final Logger LOG = LoggerFactory.getLogger(Remembered.class);

  private final SettingsFile file;
  private final SettingsFile.Found found;
  private final KeptFile<SoundSettings> soundFile;
  private final SettingsModel looks;

  /**
   * @param found what the file was found to say; it is read once
   */
  Remembered(SettingsFile file, SettingsFile.Found found) {
    this.file = file;
    this.found = found;
    soundFile = SoundSettings.file(file.folder());
    looks = new SettingsModel(found.settings());
  }

  /** How the window looks. */
  SettingsModel looks() {
    return looks;
  }

  /** Of outputs, levels and what chairs were measured at; read anew. */
  SoundSettings sound() {
    return soundFile.read().value();
  }

  /** Where settings that could not be read were put; empty for nowhere. */
  String putAside() {
    return found.putAside();
  }

  /** Writes at the door who came last, and where to. */
  void writeAt(DoorModel door) {
    door.nameProperty().set(found.settings().name());
    door.addressProperty().set(found.settings().address());
  }

  /** Keeps it all; a folder that cannot be written is no reason to fail. */
  void keep(SoundSettings sound, DoorModel door) {
    try {
      soundFile.write(sound);
      file.write(
          new Settings(
              Settings.FORMAT,
              Settings.VERSION,
              looks.lookProperty().get(),
              looks.languageProperty().get(),
              door.nameProperty().get(),
              door.addressProperty().get()));
    } catch (UncheckedIOException | BadInput unkept) {
      LOG.warn("the settings cannot be kept: {}", unkept.getMessage());
    }
  }
}
