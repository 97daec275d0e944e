package thinclick.server.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.disk.OutputFile;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.SeasonFile;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.server.season.ClassList;
import thinclick.server.season.ErasedPlace.Done;
import thinclick.server.season.NameKey;

/**
 * The files beside a host's database: take and season files that were saved there are rewritten
 * without a name, or deleted with their class; any other file in which a name still stands is told.
 */
public final class HostFiles {
  private static final long LARGEST = 256L << 20;

  private final Path database;
  private final @Nullable String name;
  private final @Nullable String classTitle;
  private final List<Take> known = new ArrayList<>();
  private final Set<String> names = new TreeSet<>();

  private HostFiles(Path database, @Nullable String name, @Nullable String classTitle) {
    this.database = database;
    this.name = name;
    this.classTitle = classTitle;
    if (name != null) {
      names.add(name);
    }
  }

  /**
   * The files in the folder of a database.
   *
   * @param name who is erased; null for a whole class
   * @param classTitle the class that is erased, or the one in which somebody is; null for all
   */
  public static HostFiles beside(
      Path database, @Nullable String name, @Nullable String classTitle) {
    return new HostFiles(database.toAbsolutePath(), name, classTitle);
  }

  /** Takes of the class, by which files that were exported from it are known. */
  public void knowTakes(List<Store.KeptTake> takes) {
    for (Store.KeptTake kept : takes) {
      known.add(kept.take());
      if (name == null) {
        kept.take().parts().stream()
            .filter(part -> !part.standIn())
            .forEach(part -> names.add(part.player()));
      }
    }
  }

  /** The backups in a folder, by name. */
  public static List<Path> backups(Path folder) {
    try (Stream<Path> found = Files.list(folder)) {
      return found.filter(file -> file.toString().endsWith(".db")).sorted().toList();
    } catch (IOException missing) {
      throw new BadInput("--backups", "expected a folder, found " + folder);
    }
  }

  /**
   * Goes through them.
   *
   * @param looking true to be told what would happen, and change nothing
   * @return what happened to those it concerns, by file
   */
  public Map<Path, Done> go(boolean looking) {
    Map<Path, Done> done = new LinkedHashMap<>();
    Path folder = database.getParent();
    List<Path> files;
    try (Stream<Path> found = Files.list(folder)) {
      files = found.filter(this::concerns).sorted().toList();
    } catch (IOException unreadable) {
      throw new BadInput("--db", "expected a folder that can be read, found " + folder);
    }
    for (Path file : files) {
      Done what = file(file, looking);
      if (what != null) {
        done.put(file, what);
      }
    }
    return done;
  }

  /** The database, what belongs to it and other databases are not looked at here. */
  private boolean concerns(Path file) {
    String called = file.getFileName().toString();
    try {
      return Files.isRegularFile(file)
          && !called.startsWith(String.valueOf(database.getFileName()))
          && !called.endsWith(".db")
          && Files.size(file) <= LARGEST;
    } catch (IOException gone) {
      return false;
    }
  }

  private @Nullable Done file(Path file, boolean looking) {
    byte[] bytes;
    try {
      bytes = Files.readAllBytes(file);
    } catch (IOException unreadable) {
      return null;
    }
    byte[] changed = bytes;
    try {
      String format = FileCodec.formatOf(bytes);
      if (format.equals(Take.FORMAT)) {
        Take take = FileCodec.readTake(bytes);
        if (name == null && ofClass(take)) {
          return deleted(file, looking);
        }
        changed = name != null && concerns(take) ? FileCodec.write(without(take)) : bytes;
      } else if (format.equals(SeasonFile.FORMAT)) {
        SeasonFile season = FileCodec.readSeason(bytes);
        boolean same =
            classTitle == null || ClassList.key(season.title()).equals(ClassList.key(classTitle));
        if (name == null && same) {
          return deleted(file, looking);
        }
        changed =
            name != null && same && concerns(season)
                ? FileCodec.writeSeason(without(season))
                : bytes;
      }
    } catch (BadInput notOurs) {
      return stillNamed(bytes) ? Done.STILL_NAMED : null;
    }
    if (changed == bytes) {
      return stillNamed(bytes) ? Done.STILL_NAMED : null;
    }
    if (!looking) {
      OutputFile.write(file, changed, true);
    }
    return Done.REWRITTEN;
  }

  private static Done deleted(Path file, boolean looking) {
    try {
      if (!looking) {
        Files.deleteIfExists(file);
      }
      return Done.DELETED;
    } catch (IOException held) {
      return Done.STILL_NAMED;
    }
  }

  private boolean stillNamed(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    return names.stream().anyMatch(one -> named(one).matcher(text).find());
  }

  /** The name where a word begins: Mina and Minas, but not in every dominant chord. */
  private static Pattern named(String one) {
    return Pattern.compile(
        "(?<![\\p{L}\\p{N}])" + Pattern.quote(one),
        Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
  }

  private boolean is(String player) {
    return name != null && NameKey.of(player).equals(NameKey.of(name));
  }

  /** A take file is of the class where one of its takes began then and was written so. */
  private boolean ofClass(Take file) {
    return known.stream()
        .anyMatch(
            take ->
                take.startMicros() == file.startMicros()
                    && take.title().equals(file.title())
                    && players(take).equals(players(file)));
  }

  private static List<String> players(Take take) {
    return take.parts().stream().map(Part::player).toList();
  }

  /** In one class alone, only files of its takes are meant. */
  private boolean concerns(Take take) {
    return take.parts().stream().anyMatch(part -> is(part.player()))
        && (classTitle == null || ofClass(take));
  }

  private boolean concerns(SeasonFile season) {
    return season.members().stream().anyMatch(member -> is(member.name()))
        || season.takes().stream()
            .anyMatch(kept -> kept.take().parts().stream().anyMatch(part -> is(part.player())));
  }

  private Take without(Take take) {
    String nobody = Eraser.pseudonym(players(take));
    return take.renamed(player -> is(player) ? nobody : player);
  }

  private SeasonFile without(SeasonFile season) {
    return SeasonFile.of(
        season.title(),
        season.keepMonths(),
        season.members().stream().filter(member -> !is(member.name())).toList(),
        season.takes().stream()
            .map(
                kept ->
                    players(kept.take()).stream().anyMatch(this::is)
                        ? new SeasonFile.KeptTake(
                            kept.id(), kept.begunAt(), kept.ended(), without(kept.take()), null)
                        : kept)
            .toList());
  }
}
