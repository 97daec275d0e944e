package thinclick.server.command;

import java.nio.file.Files;
import java.nio.file.Path;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;
import thinclick.protocol.json.BadInput;

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

  /** Refuses a file that is not there: what was meant to be read would be made anew and empty. */
  void check() {
    if (!Files.exists(file)) {
      throw new BadInput("--db", "expected a host's database, found no file " + file);
    }
  }
}
