package thinclick.client.window;

import java.io.UncheckedIOException;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.window.door.DoorModel;
import thinclick.client.window.settings.InputSettings;
import thinclick.client.window.settings.KeptFile;
import thinclick.client.window.settings.Settings;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.settings.SettingsModel;
import thinclick.client.window.settings.SoundSettings;
import thinclick.protocol.json.BadInput;

/**
 * What a window remembers from one evening to the next: read as it opens, kept whenever something
 * of it has changed outside a take, so that a program that is killed has not forgotten it.
 */
final class Remembered {
  private static final Logger LOG = LoggerFactory.getLogger(Remembered.class);

  private final SettingsFile file;
  private final SettingsFile.Found found;
  private final KeptFile<SoundSettings> soundFile;
  private final KeptFile.Found<SoundSettings> foundSound;
  private final KeptFile<InputSettings> inputFile;
  private final KeptFile.Found<InputSettings> foundInput;
  private final SettingsModel looks;
  private @Nullable Settings kept;
  private @Nullable SoundSettings keptSound;
  private @Nullable InputSettings keptInput;

  /**
   * @param found what the file was found to say; it is read once
   */
  Remembered(SettingsFile file, SettingsFile.Found found) {
    this.file = file;
    this.found = found;
    soundFile = SoundSettings.file(file.folder());
    foundSound = soundFile.read();
    inputFile = InputSettings.file(file.folder());
    foundInput = inputFile.read();
    looks = new SettingsModel(found.settings());
  }

  /** How the window looks. */
  SettingsModel looks() {
    return looks;
  }

  /** Of outputs, levels and what chairs were measured at. */
  SoundSettings sound() {
    return foundSound.value();
  }

  /** Of letters and pads. */
  InputSettings input() {
    return foundInput.value();
  }

  /** Where what could not be read was put; empty for nowhere. */
  String putAside() {
    return Stream.of(found.putAside(), foundSound.putAside(), foundInput.putAside())
        .filter(name -> !name.isEmpty())
        .collect(Collectors.joining(", "));
  }

  /** Writes at the door who came last, and where to. */
  void writeAt(DoorModel door) {
    door.name().write(found.settings().name());
    door.address().write(found.settings().address());
  }

  /** Keeps what has changed; a folder that cannot be written is no reason to fail. */
  void keep(SoundSettings sound, InputSettings input, DoorModel door) {
    try {
      if (!sound.equals(keptSound)) {
        soundFile.write(sound);
        keptSound = sound;
      }
      if (!input.equals(keptInput)) {
        inputFile.write(input);
        keptInput = input;
      }
      Settings now =
          new Settings(
              Settings.FORMAT,
              Settings.VERSION,
              looks.lookProperty().get(),
              looks.languageProperty().get(),
              door.name().written(),
              door.address().written());
      if (!now.equals(kept)) {
        file.write(now);
        kept = now;
      }
    } catch (UncheckedIOException | BadInput unkept) {
      LOG.warn("the settings cannot be kept: {}", unkept.getMessage());
    }
  }
}
