package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Stage;

/**
 * How long a lesson lasts: takes with their count-ins, what is said before each drill, and a moment
 * after each take. The moments are our own estimate.
 */
public final class LessonClock {
  private static final int COUNT_IN_BARS = 2;

  /** A calm pace for a class, words a second. */
  private static final double WORDS_A_SECOND = 2;

  /** Turning to a new drill, handing out parts, seconds. */
  private static final double TURNING_SECONDS = 60;

  /** Hearing what was held, and a question, after each take, seconds. */
  private static final double AFTER_TAKE_SECONDS = 40;

  private static final int MOST_TAKES = 20;

  private LessonClock() {}

  /** Seconds that one drill of a lesson takes at the tempo it starts with. */
  public static double seconds(Lesson.Item item, Drill drill) {
    int bars = drill.stages().stream().mapToInt(Stage::bars).sum() + COUNT_IN_BARS;
    double take = bars * drill.meter().beatsPerBar() * 60 / drill.tempo().start();
    double talk =
        item.say().isBlank() ? 0 : item.say().strip().split("\\s+", -1).length / WORDS_A_SECOND;
    return TURNING_SECONDS + talk + item.takes() * (take + AFTER_TAKE_SECONDS);
  }

  /** Minutes that a whole lesson takes. */
  public static double minutes(Lesson lesson, Function<String, Drill> drills) {
    return lesson.drills().stream()
            .mapToDouble(item -> seconds(item, drills.apply(item.drill())))
            .sum()
        / 60;
  }

  /**
   * The lesson with more or fewer takes, so that it fills a class hour and does not run over it;
   * later drills gain and lose first. Where one take of each is too long, the last drills are left
   * out.
   */
  public static Lesson fit(Lesson lesson, int minutes, Function<String, Drill> drills) {
    List<Lesson.Item> items = new ArrayList<>(lesson.drills());
    while (length(items, drills) > minutes) {
      int most = most(items);
      if (items.get(most).takes() > 1) {
        items.set(most, withTakes(items.get(most), items.get(most).takes() - 1));
      } else if (items.size() > 1) {
        items.remove(items.size() - 1);
      } else {
        throw new BadInput(
            "minutes",
            "expected at least "
                + (int) Math.ceil(length(items, drills))
                + " for the first drill alone, found "
                + minutes);
      }
    }
    boolean more = true;
    while (more) {
      more = false;
      for (int i = items.size() - 1; i >= 0; i--) {
        Lesson.Item longer = withTakes(items.get(i), items.get(i).takes() + 1);
        List<Lesson.Item> tried = new ArrayList<>(items);
        tried.set(i, longer);
        if (longer.takes() > items.get(i).takes()
            && longer.takes() <= 2 * lesson.drills().get(i).takes()
            && length(tried, drills) <= minutes) {
          items = tried;
          more = true;
        }
      }
    }
    return new Lesson(lesson.format(), lesson.version(), lesson.title(), minutes, items);
  }

  private static double length(List<Lesson.Item> items, Function<String, Drill> drills) {
    return items.stream().mapToDouble(item -> seconds(item, drills.apply(item.drill()))).sum() / 60;
  }

  private static int most(List<Lesson.Item> items) {
    int most = items.size() - 1;
    for (int i = items.size() - 1; i >= 0; i--) {
      if (items.get(i).takes() > items.get(most).takes()) {
        most = i;
      }
    }
    return most;
  }

  private static Lesson.Item withTakes(Lesson.Item item, int takes) {
    return new Lesson.Item(item.drill(), Math.min(takes, MOST_TAKES), item.say());
  }
}
