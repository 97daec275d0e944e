package thinclick.protocol.disk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;
import thinclick.protocol.json.BadInput;

/** A file that a command writes: whole or not at all. */
public final class OutputFile {
  private OutputFile() {}

  /**
   * Refuses early what {@link #write} would refuse, so that no work is done in vain.
   *
   * @param replace whether a file that is there may be replaced
   */
  public static void check(Path file, boolean replace) {
    if (Files.isDirectory(file)) {
      throw new BadInput(file.toString(), "expected a file to write, found a folder");
    }
    if (Files.exists(file) && !replace) {
      throw new BadInput(
          file.toString(), "expected no file of this name, found one; --replace writes over it");
    }
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new BadInput(file.toString(), "expected a folder to write into, found none");
    }
  }

  /** Writes beside the place and then moves there, so that no reader ever sees a part of it. */
  public static void write(Path file, byte[] content, boolean replace) {
    check(file, replace);
    Path beside = file.resolveSibling("." + file.getFileName() + "." + UUID.randomUUID());
    try {
      Files.write(beside, content, StandardOpenOption.CREATE_NEW);
      Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException problem) {
      remove(beside);
      throw new BadInput(file.toString(), "expected to write it, found " + problem.getMessage());
    }
  }

  private static void remove(Path beside) {
    try {
      Files.deleteIfExists(beside);
    } catch (IOException stays) {
      throw new UncheckedIOException(stays);
    }
  }
}
