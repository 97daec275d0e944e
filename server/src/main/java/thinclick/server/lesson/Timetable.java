package thinclick.server.lesson;

import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.server.material.LessonClock;

/** A lesson on paper: which drill begins when, and what is said before it. */
public final class Timetable {
  private Timetable() {}

  /**
   * The lines, the lesson's own first.
   *
   * @param drills the drill of a title
   * @param script with all that is said and done round each take
   */
  public static List<String> lines(
      Lesson lesson, Function<String, Drill> drills, boolean script, Locale locale) {
    List<String> lines = new ArrayList<>();
    lines.add(
        say(
            locale,
            "timetable.head",
            lesson.title(),
            lesson.minutes(),
            whole(LessonClock.minutes(lesson, drills))));
    double at = 0;
    for (int i = 0; i < lesson.drills().size(); i++) {
      Lesson.Item item = lesson.drills().get(i);
      Drill drill = drills.apply(item.drill());
      lines.add(
          say(
              locale,
              "timetable.item",
              String.format(Locale.ROOT, "%3d", whole(at)),
              item.drill(),
              item.takes(),
              LessonScript.says(item, locale)));
      at += LessonClock.seconds(item, drill) / 60;
      boolean last = i == lesson.drills().size() - 1;
      for (int take = 1; script && take <= item.takes(); take++) {
        lines.add("         " + say(locale, "timetable.take", take, item.takes()));
        LessonScript.of(item, drill, take, last, locale)
            .text(locale)
            .forEach(line -> lines.add("           " + line));
      }
    }
    return lines;
  }

  private static int whole(double minutes) {
    return (int) Math.round(minutes);
  }

  private static String say(Locale locale, String key, Object... values) {
    return new MessageFormat(LessonScript.messages(locale).getString(key), locale).format(values);
  }
}
