package thinclick.server.host;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletionException;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.server.season.ClassList;
import thinclick.server.season.Erased;
import thinclick.server.season.ErasedPlace;
import thinclick.server.store.ClassStore.KeptClass;
import thinclick.server.store.Eraser;
import thinclick.server.store.HostFiles;
import thinclick.server.store.Store;

/**
 * Erases a person or a class: in the database, in its backups and in the files beside it, with a
 * list of what went. A host that runs in this process may have the database open, none elsewhere
 * may.
 */
public final class Erasing {
  private final Store store;
  private final Path database;
  private final @Nullable Path backups;
  private final boolean hosting;

  Erasing(Store store, Path database, @Nullable Path backups, boolean hosting) {
    this.store = store;
    this.database = database;
    this.backups = backups;
    this.hosting = hosting;
  }

  /** What would go, place by place; nothing is touched. */
  public List<ErasedPlace> look(@Nullable String name, @Nullable String classTitle) {
    return run(name, classTitle, true);
  }

  /**
   * Erases.
   *
   * @param name who is meant; null for a whole class
   * @param classTitle where one class is meant; null for the whole host
   * @return what went, place by place
   * @throws BadInput where an open room names them, or there is no such class; nothing has gone
   */
  public List<ErasedPlace> erase(@Nullable String name, @Nullable String classTitle) {
    return run(name, classTitle, false);
  }

  private List<ErasedPlace> run(
      @Nullable String name, @Nullable String classTitle, boolean looking) {
    if (name == null && classTitle == null) {
      throw new BadInput("NAME", "expected a name, a class or both, found neither");
    }
    KeptClass one = classTitle == null ? null : kept(classTitle);
    List<ErasedPlace> places = new ArrayList<>();
    HostFiles files = HostFiles.beside(database, name, one == null ? null : one.list().title());
    files.knowTakes(one == null ? List.of() : takes(one));
    HostLock lock = hosting || looking ? null : HostLock.of(database);
    Erased here;
    try {
      Long number = one == null ? null : one.number();
      here = store.classes().erase(name, number, looking, hosting).join();
    } catch (CompletionException problem) {
      throw new BadInput(
          "--db", "expected a database that can be used, found " + problem.getCause());
    } finally {
      if (lock != null) {
        lock.close();
      }
    }
    if (hosting && here.rooms() > 0 && !looking) {
      throw new BadInput(
          name == null ? "CLASS" : "NAME",
          "expected nobody of them in an open room, found " + here.rooms() + "; close it first");
    }
    places.add(new ErasedPlace(shown(database), here, null));
    Path folder = backups;
    for (Path backup : folder == null ? List.<Path>of() : HostFiles.backups(folder)) {
      places.add(
          looking
              ? new ErasedPlace(shown(backup), null, ErasedPlace.Done.THE_SAME)
              : new ErasedPlace(shown(backup), in(backup, name, classTitle), null));
    }
    files.go(looking).forEach((file, done) -> places.add(new ErasedPlace(shown(file), null, done)));
    return places;
  }

  private static String shown(Path file) {
    return String.valueOf(file.getFileName());
  }

  private static Erased in(Path backup, @Nullable String name, @Nullable String classTitle) {
    return name != null
        ? Eraser.erase(backup, name, classTitle)
        : Eraser.eraseClass(backup, String.valueOf(classTitle));
  }

  private KeptClass kept(String title) {
    String key = ClassList.key(title);
    return store.classes().all().join().stream()
        .filter(one -> ClassList.key(one.list().title()).equals(key))
        .findFirst()
        .orElseThrow(
            () -> new BadInput("CLASS", "expected a class that there is, found \"" + title + "\""));
  }

  private List<Store.KeptTake> takes(KeptClass one) {
    return store.classes().takes(one.number()).join();
  }
}
