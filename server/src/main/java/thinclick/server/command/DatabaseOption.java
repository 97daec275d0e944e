package thinclick.server.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;
import thinclick.protocol.json.BadInput;
import thinclick.server.host.ClassBook;
import thinclick.server.words.Speaker;

/** The database of a host that has been there before; before or behind a subcommand. */
final class DatabaseOption {
  @Option(
      names = "--db",
      paramLabel = "FILE",
      defaultValue = "thinclick.db",
      scope = ScopeType.INHERIT,
      description = "Database file of the host (default: ${DEFAULT-VALUE}).")
  private Path file = Path.of("thinclick.db");

  /** The file, whether or not it is there. */
  Path file() {
    return file;
  }

  /**
   * The classes in it, made anew where there is none: {@link #check} before where it must be there.
   *
   * @throws BadInput where the file cannot be used
   */
  ClassBook classes() {
    return ClassBook.open(file, null, InstantSource.system(), Speaker.english());
  }

  /** Refuses a file that is not there: what was meant to be read would be made anew and empty. */
  void check() {
    if (!Files.exists(file)) {
      throw new BadInput("--db", "expected a host's database, found no file " + file);
    }
  }
}
