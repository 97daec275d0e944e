package thinclick.server.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import thinclick.protocol.json.BadInput;
import thinclick.server.host.HostLock;
import thinclick.server.store.Eraser;

/** {@code erase NAME}: takes a person out of the host's database and its backups. */
@Command(
    name = "erase",
    mixinStandardHelpOptions = true,
    description =
        "Erases a person's name from the database and its backups; the host must be stopped.")
public final class EraseCommand implements Runnable {
  @Parameters(paramLabel = "NAME", description = "The nickname, in any case.")
  private String name = "";

  @Option(
      names = "--db",
      paramLabel = "FILE",
      defaultValue = "thinclick.db",
      description = "Database file of the host (default: ${DEFAULT-VALUE}).")
  private Path database = Path.of("thinclick.db");

  @Option(
      names = "--backups",
      paramLabel = "FOLDER",
      description =
          "Folder that serve --backup-to writes to; the name goes from every backup in it.")
  private @Nullable Path backups;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public void run() {
    List<Path> files = files();
    PrintWriter out = spec.commandLine().getOut();
    HostLock lock = HostLock.of(database);
    try {
      for (Path file : files) {
        out.println(file + ": " + says(Eraser.erase(file, name)));
      }
    } finally {
      lock.close();
    }
    out.println(
        "Not reached from here: take files, slips and pages that were exported, printed or sent;"
            + " what a player's own computer has not handed in yet; copies made by other means.");
    out.flush();
  }

  private List<Path> files() {
    if (!Files.exists(database)) {
      throw new BadInput("--db", "expected a host's database, found no file " + database);
    }
    List<Path> files = new ArrayList<>(List.of(database));
    Path folder = backups;
    if (folder != null) {
      try (Stream<Path> found = Files.list(folder)) {
        found.filter(file -> file.toString().endsWith(".db")).sorted().forEach(files::add);
      } catch (IOException missing) {
        throw new BadInput("--backups", "expected a folder, found " + folder);
      }
    }
    return files;
  }

  private static String says(Eraser.Erased erased) {
    if (erased.nothing()) {
      return "the name was not in it";
    }
    return "name replaced in "
        + counted(erased.takes().size(), "take")
        + (erased.takes().isEmpty() ? "" : " (" + String.join(", ", erased.takes()) + ")")
        + ", "
        + counted(erased.reviews(), "stored review")
        + " deleted, "
        + counted(erased.rooms(), "open room")
        + " closed";
  }

  private static String counted(int count, String what) {
    return count + " " + what + (count == 1 ? "" : "s");
  }
}
