package thinclick.server.history;

import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.words.NextRung;

/**
 * A course as it is told: the band's or one player's, with nobody else's figures in it.
 *
 * @param key what the takes share
 * @param player whose; null for the band's
 * @param takes the oldest first, at least one
 * @param next what is due after the newest; null in a player's course
 * @param fewest the fewest clicks that were held in these takes; null where nothing was, and in a
 *     player's course
 */
public record CourseSheet(
    Entry.Key key,
    @Nullable String player,
    List<CourseLine> takes,
    NextRung.@Nullable Move next,
    @Nullable FewestClicks fewest) {
  public CourseSheet {
    takes = List.copyOf(takes);
  }

  /**
   * Of takes that are known whole.
   *
   * @param player whose; null for the band's
   */
  public static CourseSheet of(Course course, @Nullable String player) {
    List<CourseLine> lines =
        course.entries().stream().map(entry -> CourseLine.of(entry, player)).toList();
    if (player != null) {
      return new CourseSheet(course.key(), player, lines, null, null);
    }
    Entry.Key key = course.key();
    return new CourseSheet(
        key,
        null,
        lines,
        course.next(),
        FewestClicks.of(course.entries(), key.title(), key.tempo()).orElse(null));
  }

  /** The same of several. */
  public static List<CourseSheet> of(List<Course> courses, @Nullable String player) {
    return courses.stream().map(course -> of(course, player)).toList();
  }

  /** The same, for a page that says itself what comes next. */
  CourseSheet withoutNext() {
    return new CourseSheet(key, player, takes, null, fewest);
  }

  /** The first take. */
  CourseLine first() {
    return takes.get(0);
  }

  /** The newest take. */
  CourseLine last() {
    return takes.get(takes.size() - 1);
  }

  /** From the first take to the newest. */
  Duration span() {
    return Duration.between(first().begunAt(), last().begunAt());
  }
}
