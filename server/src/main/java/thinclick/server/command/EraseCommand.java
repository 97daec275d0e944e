package thinclick.server.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import thinclick.protocol.json.BadInput;
import thinclick.server.host.HostLock;
import thinclick.server.season.ClassList;
import thinclick.server.season.Erased;
import thinclick.server.season.ErasedPlace;
import thinclick.server.store.ClassStore.KeptClass;
import thinclick.server.store.Eraser;
import thinclick.server.store.HostFiles;
import thinclick.server.store.Store;
import thinclick.server.words.Speaker;

/** {@code erase}: takes a person, or a class, out of all that a host keeps. */
@Command(
    name = "erase",
    mixinStandardHelpOptions = true,
    description = {
      "Erases a name, or a whole class, and says what went.",
      "It goes from the database, its backups and the take and season files beside it; the host"
          + " must be stopped."
    })
public final class EraseCommand implements Runnable {
  @Parameters(
      paramLabel = "NAME",
      arity = "0..1",
      description = "The nickname, in any case; left out where a whole class is meant.")
  private @Nullable String name;

  @Option(
      names = "--class",
      paramLabel = "TITLE",
      description = "The class to erase whole, or in which alone the name is erased.")
  private @Nullable String classTitle;

  @Mixin private DatabaseOption database = new DatabaseOption();

  @Option(
      names = "--backups",
      paramLabel = "FOLDER",
      description =
          "Folder that serve --backup-to writes to; the name goes from every backup in it.")
  private @Nullable Path backups;

  @Mixin private LanguageOption language = new LanguageOption();

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public void run() {
    if (name == null && classTitle == null) {
      throw new BadInput("NAME", "expected a name, or a class by --class, found neither");
    }
    List<Path> databases = databases();
    PrintWriter out = spec.commandLine().getOut();
    Speaker speaker = language.speaker();
    HostLock lock = HostLock.of(database.file());
    try {
      HostFiles files = HostFiles.beside(database.file(), name, classTitle);
      if (classTitle != null) {
        files.knowTakes(takes(classTitle));
      }
      for (Path file : databases) {
        out.println(new ErasedPlace(file.toString(), in(file), null).say(speaker));
      }
      files
          .go(false)
          .forEach(
              (file, done) ->
                  out.println(new ErasedPlace(file.toString(), null, done).say(speaker)));
    } finally {
      lock.close();
    }
    out.println(ErasedPlace.outsideHead(speaker));
    ErasedPlace.outside(speaker).forEach(line -> out.println("  " + line));
    out.flush();
  }

  private Erased in(Path file) {
    String person = name;
    return person != null
        ? Eraser.erase(file, person, classTitle)
        : Eraser.eraseClass(file, String.valueOf(classTitle));
  }

  /** The takes of the class, by which exported files are known; refuses one that is not there. */
  private List<Store.KeptTake> takes(String title) {
    try (Store store = Store.open(database.file(), InstantSource.system(), available -> {})) {
      KeptClass found =
          store.classes().all().join().stream()
              .filter(one -> ClassList.key(one.list().title()).equals(ClassList.key(title)))
              .findFirst()
              .orElseThrow(
                  () ->
                      new BadInput(
                          "--class", "expected a class that there is, found \"" + title + "\""));
      return store.classes().takes(found.number()).join();
    }
  }

  private List<Path> databases() {
    database.check();
    List<Path> files = new ArrayList<>(List.of(database.file()));
    if (backups != null) {
      files.addAll(HostFiles.backups(backups));
    }
    return files;
  }
}
