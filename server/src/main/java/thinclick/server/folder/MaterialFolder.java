package thinclick.server.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.json.BadInput;
import thinclick.server.material.DrillCheck;
import thinclick.server.material.Nearest;
import thinclick.server.material.Stock;

/**
 * The stock and a folder of one's own: files that end in {@code .drill.json} and {@code
 * .lesson.json}. A drill of one's own comes before one of the stock with the same title.
 */
public final class MaterialFolder {
  private static final String DRILL = ".drill.json";
  private static final String LESSON = ".lesson.json";

  private final List<Drill> drills;
  private final List<Lesson> lessons;

  private MaterialFolder(List<Drill> drills, List<Lesson> lessons) {
    this.drills = List.copyOf(drills);
    this.lessons = List.copyOf(lessons);
  }

  /** The stock alone. */
  public static MaterialFolder stockOnly() {
    return new MaterialFolder(List.of(), List.of());
  }

  /**
   * Reads every drill and lesson of a folder. A wrong file is refused with its name and place, two
   * of one title and lessons of unknown drills as well; other files are left alone.
   */
  public static MaterialFolder read(Path folder) {
    if (!Files.isDirectory(folder)) {
      throw new BadInput(folder.toString(), "expected a folder of drills and lessons, found none");
    }
    List<Drill> drills =
        readAll(folder, DRILL, bytes -> DrillCheck.checked(FileCodec.readDrill(bytes)));
    List<Lesson> lessons = readAll(folder, LESSON, FileCodec::readLesson);
    unique(folder, drills.stream().map(Drill::title).toList());
    unique(folder, lessons.stream().map(Lesson::title).toList());
    MaterialFolder material = new MaterialFolder(drills, lessons);
    for (Lesson lesson : lessons) {
      for (int i = 0; i < lesson.drills().size(); i++) {
        try {
          material.drill(lesson.drills().get(i).drill());
        } catch (BadInput bad) {
          throw new BadInput(
              folder + ", lesson \"" + lesson.title() + "\": drills[" + i + "]", bad.says());
        }
      }
    }
    return material;
  }

  private static <T> List<T> readAll(Path folder, String suffix, Function<byte[], T> reading) {
    List<Path> files;
    try (Stream<Path> all = Files.list(folder)) {
      files = all.filter(file -> file.toString().endsWith(suffix)).sorted().toList();
    } catch (IOException problem) {
      throw new BadInput(
          folder.toString(), "expected a readable folder, found " + problem.getMessage());
    }
    List<T> read = new ArrayList<>();
    for (Path file : files) {
      try {
        read.add(reading.apply(Files.readAllBytes(file)));
      } catch (BadInput bad) {
        throw new BadInput(
            bad.where().isEmpty() ? file.toString() : file + ": " + bad.where(), bad.says());
      } catch (IOException problem) {
        throw new BadInput(
            file.toString(), "expected a readable file, found " + problem.getMessage());
      }
    }
    return read;
  }

  private static void unique(Path folder, List<String> titles) {
    for (int i = 0; i < titles.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (Nearest.folded(titles.get(i)).equals(Nearest.folded(titles.get(j)))) {
          throw new BadInput(
              folder.toString(),
              "expected titles only once, found \"" + titles.get(i) + "\" twice");
        }
      }
    }
  }

  /** One's own drills, then the stock's. */
  public List<Drill> drills() {
    return Stream.concat(
            drills.stream(), Stock.drills().stream().filter(drill -> !own(drill.title())))
        .toList();
  }

  /** True where a title is one of the folder's own drills. */
  public boolean own(String title) {
    return drills.stream()
        .anyMatch(drill -> Nearest.folded(drill.title()).equals(Nearest.folded(title)));
  }

  /** The drill of a title, as {@link Stock#find}, one's own first. */
  public Drill drill(String title) {
    for (Drill drill : drills()) {
      if (Nearest.folded(drill.title()).equals(Nearest.folded(title))) {
        return drill;
      }
    }
    throw miss("drill", title, drills().stream().map(Drill::title).toList());
  }

  /** One's own lessons, then the stock's. */
  public List<Lesson> lessons() {
    return Stream.concat(lessons.stream(), Stock.lessons().stream()).toList();
  }

  /** The lesson of a title, one's own first. */
  public Lesson lesson(String title) {
    for (Lesson lesson : lessons()) {
      if (Nearest.folded(lesson.title()).equals(Nearest.folded(title))) {
        return lesson;
      }
    }
    throw miss("lesson", title, lessons().stream().map(Lesson::title).toList());
  }

  private static BadInput miss(String kind, String title, List<String> titles) {
    return new BadInput(
        kind,
        "expected a known title, found \"" + title + "\"; " + Nearest.didYouMean(title, titles));
  }
}
