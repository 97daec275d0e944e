package thinclick.client.window.settings;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.StrictJson;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * One remembered value on disk. Written whole: beside the old file first, then in its place. A file
 * that cannot be read is put aside, never deleted and never written over.
 *
 * @param <T> a record that checks itself
 */
public final class KeptFile<T> {
  private static final Logger LOG = LoggerFactory.getLogger(KeptFile.class);
  private static final int MOST_CHARACTERS = 1_000_000;

  /** What a later version wrote besides is passed over; a value of another kind is refused. */
  private static final JsonMapper MAPPER =
      StrictJson.mapper(false, MOST_CHARACTERS)
          .rebuild()
          .enable(SerializationFeature.INDENT_OUTPUT)
          .build();

  private final Path file;
  private final Class<T> type;
  private final T first;

  /**
   * @param name such as {@code settings.json}
   * @param first where nothing is remembered
   */
  public KeptFile(Path folder, String name, Class<T> type, T first) {
    this.file = folder.resolve(name);
    this.type = type;
    this.first = first;
  }

  /**
   * What was found.
   *
   * @param value the remembered one, or that of a first run
   * @param putAside the name under which an unreadable file was put aside; empty where none was
   */
  public record Found<T>(T value, String putAside) {}

  /** Reads it. */
  public Found<T> read() {
    if (!Files.exists(file)) {
      return new Found<>(first, "");
    }
    try {
      return new Found<>(MAPPER.readValue(Files.readAllBytes(file), type), "");
    } catch (JacksonException unreadable) {
      return unreadable(StrictJson.explain(unreadable).getMessage());
    } catch (IOException | BadInput unreadable) {
      return unreadable(unreadable.getMessage());
    }
  }

  private Found<T> unreadable(@Nullable String why) {
    LOG.warn("{} cannot be read: {}", file.getFileName(), why);
    return new Found<>(first, putAside());
  }

  private String putAside() {
    String stem = file.getFileName().toString().replaceFirst("\\.json$", "");
    for (int number = 1; ; number++) {
      Path aside = file.resolveSibling(stem + ".unreadable-" + number + ".json");
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

  /** Writes it; what was there before stays whole until the new file is. */
  public void write(T value) {
    Path beside = file.resolveSibling(file.getFileName() + ".new");
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      Files.write(beside, MAPPER.writeValueAsBytes(value));
      Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException unwritable) {
      throw new UncheckedIOException(unwritable);
    }
  }
}
