package thinclick.server.material;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.json.BadInput;

/** The built-in library: drills and lessons by their titles, which are unique. */
public final class Stock {
  private static final Map<String, Drill> DRILLS =
      byTitle(
          Stream.of(StockCells.all(), StockEnsembles.all(), StockLines.all(), Demo.drills())
              .flatMap(List::stream)
              .map(StockDrill::drill)
              .toList());
  private static final Map<String, Lesson> LESSONS =
      StockLessons.all().stream()
          .collect(
              Collectors.toMap(
                  lesson -> Nearest.folded(lesson.title()),
                  lesson -> lesson,
                  (one, other) -> one,
                  LinkedHashMap::new));

  private Stock() {}

  private static Map<String, Drill> byTitle(List<Drill> drills) {
    Map<String, Drill> byTitle = new LinkedHashMap<>();
    for (Drill drill : drills) {
      if (byTitle.put(Nearest.folded(drill.title()), drill) != null) {
        throw new IllegalStateException("two drills are titled " + drill.title());
      }
    }
    return byTitle;
  }

  /** All drills: cells, ensembles, lines, demo. */
  public static List<Drill> drills() {
    return List.copyOf(DRILLS.values());
  }

  /**
   * The drill of a title, in any case and with hyphens for spaces; a title that is not there is
   * answered with the nearest ones.
   */
  public static Drill find(String title) {
    @Nullable Drill found = DRILLS.get(Nearest.folded(title));
    if (found == null) {
      throw miss("drill", title, drills().stream().map(Drill::title).toList());
    }
    return found;
  }

  /** True where a title belongs to the stock. */
  public static boolean has(String title) {
    return DRILLS.containsKey(Nearest.folded(title));
  }

  /** All lessons. */
  public static List<Lesson> lessons() {
    return List.copyOf(LESSONS.values());
  }

  /** The lesson of a title, as {@link #find}. */
  public static Lesson findLesson(String title) {
    @Nullable Lesson found = LESSONS.get(Nearest.folded(title));
    if (found == null) {
      throw miss("lesson", title, lessons().stream().map(Lesson::title).toList());
    }
    return found;
  }

  private static BadInput miss(String kind, String title, List<String> titles) {
    return new BadInput(
        kind,
        "expected a title of the stock, found \""
            + title
            + "\"; "
            + Nearest.didYouMean(title, titles));
  }
}
