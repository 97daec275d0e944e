package thinclick.server.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.function.Function;
import thinclick.protocol.json.BadInput;

/** A file that a command was given; every complaint about it begins with its name. */
final class InputFile {
  private InputFile() {}

  /**
   * Reads a file whole.
   *
   * @param reading from the file's bytes to what it says; its {@link BadInput} gets the name
   * @throws BadInput also where the file cannot be read
   */
  static <T> T read(Path file, Function<byte[], T> reading) {
    byte[] bytes = bytes(file);
    try {
      return reading.apply(bytes);
    } catch (BadInput bad) {
      throw new BadInput(
          bad.where().isEmpty() ? file.toString() : file + ": " + bad.where(), bad.says());
    }
  }

  private static byte[] bytes(Path file) {
    if (Files.isDirectory(file)) {
      throw new BadInput(file.toString(), "expected a file, found a folder");
    }
    try {
      return Files.readAllBytes(file);
    } catch (NoSuchFileException missing) {
      throw new BadInput(file.toString(), "expected a file, found none");
    } catch (IOException | OutOfMemoryError unreadable) {
      throw new BadInput(
          file.toString(), "expected a readable file, found " + unreadable.getMessage());
    }
  }
}
