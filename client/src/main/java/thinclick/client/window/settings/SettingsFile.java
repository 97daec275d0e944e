package thinclick.client.window.settings;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.json.BadInput;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * The settings on disk. Written whole: beside the old file first, then in its place. A file that
 * cannot be read is put aside, never deleted and never written over.
 */
public final class SettingsFile {
  /** What it is called in its folder. */
  public static final String NAME = "settings.json";

  private static final Logger LOG = LoggerFactory.getLogger(SettingsFile.class);
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(SerializationFeature.INDENT_OUTPUT)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private final Path file;

  public SettingsFile(Path folder) {
    this.file = folder.resolve(NAME);
  }

  /**
   * What was found.
   *
   * @param settings the remembered ones, or those of a first run
   * @param putAside the name under which an unreadable file was put aside; empty where none was
   */
  public record Found(Settings settings, String putAside) {}

  /** Reads them. */
  public Found read() {
    if (!Files.exists(file)) {
      return new Found(Settings.FIRST, "");
    }
    try {
      return new Found(MAPPER.readValue(Files.readAllBytes(file), Settings.class), "");
    } catch (IOException | JacksonException | BadInput unreadable) {
      LOG.warn("settings that cannot be read: {}", unreadable.getMessage());
      return new Found(Settings.FIRST, putAside());
    }
  }

  private String putAside() {
    for (int number = 1; ; number++) {
      Path aside = file.resolveSibling("settings.unreadable-" + number + ".json");
      if (!Files.exists(aside)) {
        try {
          Files.move(file, aside);
          return aside.getFileName().toString();
        } catch (IOException stays) {
          LOG.warn("it stays where it is: {}", stays.getMessage());
          return "";
        }
      }
    }
  }

  /** Writes them; what was there before stays whole until the new file is. */
  public void write(Settings settings) {
    Path beside = file.resolveSibling(NAME + ".new");
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      Files.write(beside, MAPPER.writeValueAsBytes(settings));
      Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException unwritable) {
      throw new UncheckedIOException(unwritable);
    }
  }
}
