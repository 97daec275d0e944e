package thinclick.server.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.InstantSource;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import thinclick.protocol.disk.OutputFile;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.server.host.ClassBook;
import thinclick.server.store.Store;

/** {@code take list|export|import}: the takes in a host's database, also while it is hosting. */
@Command(
    name = "take",
    mixinStandardHelpOptions = true,
    description = "Lists, exports and imports the takes in a host's database.")
public final class TakeCommand implements Runnable {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT).withZone(ZoneId.systemDefault());

  @Mixin private DatabaseOption database = new DatabaseOption();

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  @Command(
      name = "list",
      mixinStandardHelpOptions = true,
      description = "Prints a line for every take, the oldest first.")
  void list() {
    List<Store.TakeLine> takes = with(Store::takes);
    PrintWriter out = spec.commandLine().getOut();
    for (Store.TakeLine take : takes) {
      String ended = take.ended();
      out.printf(
          "%s  %s  %s  %s  %d %s  %s%n",
          take.id(),
          WHEN.format(take.begunAt()),
          take.title(),
          String.join(", ", take.players()),
          take.attacks(),
          Counted.plural(take.attacks(), "attack"),
          ended == null ? "running" : ended);
    }
    out.flush();
  }

  @Command(
      name = "export",
      mixinStandardHelpOptions = true,
      description = "Writes a take to a take file.")
  void export(
      @Parameters(paramLabel = "ID", description = "As take list prints it.") String id,
      @Parameters(paramLabel = "FILE", description = "Take file to write.") Path file,
      @Option(names = "--replace", description = "Write over a file that is there.")
          boolean replace) {
    OutputFile.check(file, replace);
    Take take =
        with(store -> store.take(id))
            .orElseThrow(
                () ->
                    new BadInput(
                        "ID",
                        "expected a take in " + database.file() + ", found none named " + id));
    OutputFile.write(file, FileCodec.write(take), replace);
  }

  @Command(
      name = "import",
      mixinStandardHelpOptions = true,
      description = "Takes a take file in and prints its new id.")
  void importFile(
      @Parameters(paramLabel = "FILE", description = "Take file to read.") Path file,
      @Option(names = "--class", paramLabel = "TITLE", description = "The class it belongs to.")
          @Nullable String classTitle) {
    Take take = InputFile.read(file, FileCodec::readTake);
    String id =
        "file"
            + new SecureRandom()
                .ints(12, 0, 32)
                .mapToObj(TakeCommand::digit)
                .reduce("", String::concat);
    with(store -> store.importTake(id, take));
    if (classTitle != null) {
      try (ClassBook book = database.classes()) {
        book.adopt(classTitle, id);
      }
    }
    PrintWriter out = spec.commandLine().getOut();
    out.println(id);
    out.flush();
  }

  @Command(
      name = "remove",
      mixinStandardHelpOptions = true,
      description = "Removes a take with all that belongs to it, from backups too.")
  void remove(@Parameters(paramLabel = "ID", description = "As take list prints it.") String id) {
    if (!with(store -> store.removeTake(id))) {
      throw new BadInput(
          "ID", "expected an ended take in " + database.file() + ", found none named " + id);
    }
    PrintWriter out = spec.commandLine().getOut();
    out.println(dropped(id));
    out.flush();
  }

  /** What went at once, and what goes when a host is there to do it. */
  static String dropped(String id) {
    return id
        + " is dropped. A host that makes backups (serve --backup-to) drops it from them at its start"
        + " and once a day.";
  }

  @Command(
      name = "rename",
      mixinStandardHelpOptions = true,
      description = "Renames a player in every take that has ended.")
  void rename(
      @Parameters(paramLabel = "OLD", description = "The name so far.") String from,
      @Parameters(paramLabel = "NEW", description = "The name from now on.") String to) {
    Check.length("NEW", to, 1, 64);
    Store.Renamed renamed = with(store -> store.renamePlayer(from, to));
    if (renamed.takenIn() != null) {
      throw new BadInput(
          "NEW",
          "expected a name that nobody has, found \"" + to + "\" in take " + renamed.takenIn());
    }
    int takes = renamed.takes();
    if (takes == 0) {
      throw new BadInput("OLD", "expected a player of an ended take, found \"" + from + "\"");
    }
    PrintWriter out = spec.commandLine().getOut();
    out.println(from + " is " + to + " now, in " + Counted.of(takes, "take") + ".");
    int rooms = with(store -> store.openRoomsNaming(from));
    if (rooms > 0) {
      out.println(StillSaid.says(rooms, from, to));
    }
    out.flush();
  }

  private static String digit(int value) {
    return Integer.toString(value, 32);
  }

  private <T> T with(Function<Store, CompletableFuture<T>> asking) {
    database.check();
    try (Store store = Store.open(database.file(), InstantSource.system(), available -> {})) {
      return asking.apply(store).join();
    } catch (CompletionException problem) {
      throw new BadInput(
          "--db", "expected a database that can be used, found " + problem.getCause());
    }
  }
}
