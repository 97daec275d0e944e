package thinclick.protocol.disk;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import thinclick.protocol.json.BadInput;

/**
 * Names of files that are made of what others have written: a title, an id from a host. Whatever
 * they say, the file lies in the folder that was meant, is new, and has a name that every system
 * takes.
 */
public final class SafeName {
  private static final String PREFIX = "thinclick-";
  private static final int LONGEST = 60;
  private static final int MOST_OF_A_NAME = 10_000;

  private SafeName() {}

  /**
   * A stem of small letters, digits and single hyphens. It begins with our own word, so that it is
   * never hidden, empty, or a device's name.
   */
  public static String stem(String said) {
    String plain =
        said.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
    String cut = plain.substring(0, Math.min(LONGEST, plain.length()));
    return (PREFIX + cut).replaceAll("-$", "");
  }

  /**
   * Writes a new file named after what was said; where there is one already, numbered on. A link
   * that stands in its place is not followed.
   *
   * @param ending without the dot
   * @return where it is now
   * @throws IOException where the folder cannot be written
   */
  public static Path write(Path folder, String said, String ending, byte[] content)
      throws IOException {
    Path real = folder.toRealPath();
    String stem = stem(said);
    for (int number = 1; number <= MOST_OF_A_NAME; number++) {
      Path file = real.resolve(stem + (number == 1 ? "" : "-" + number) + "." + ending);
      try {
        Files.write(file, content, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        return file;
      } catch (FileAlreadyExistsException taken) {
        // the next number
      }
    }
    throw new IOException("there are " + MOST_OF_A_NAME + " files named " + stem);
  }

  /**
   * A file of our own in a folder, named by an id.
   *
   * @param ending without the dot
   * @throws BadInput where the id is not one of small letters, digits and hyphens
   */
  public static Path ofId(Path folder, String id, String ending) {
    if (!id.matches("[a-z0-9][a-z0-9-]{0,63}")) {
      throw new BadInput("id", "expected small letters, digits and hyphens, found \"" + id + "\"");
    }
    return folder.resolve(id + "." + ending);
  }
}
