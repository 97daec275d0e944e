package thinclick.client.window.settings;

import java.nio.file.Path;

/** The settings on disk; see {@link KeptFile} for how they are kept. */
public final class SettingsFile {
  /** What it is called in its folder. */
  public static final String NAME = "settings.json";

  private final Path folder;
  private final KeptFile<Settings> file;

  public SettingsFile(Path folder) {
    this.folder = folder;
    this.file = new KeptFile<>(folder, NAME, Settings.class, Settings.FIRST);
  }

  /**
   * What was found.
   *
   * @param settings the remembered ones, or those of a first run
   * @param putAside the name under which an unreadable file was put aside; empty where none was
   */
  public record Found(Settings settings, String putAside) {}

  /** The folder it stands in. */
  public Path folder() {
    return folder;
  }

  /** Reads them. */
  public Found read() {
    KeptFile.Found<Settings> found = file.read();
    return new Found(found.value(), found.putAside());
  }

  /** Writes them. */
  public void write(Settings settings) {
    file.write(settings);
  }
}
