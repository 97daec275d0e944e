package thinclick.server.history;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.Figure;
import thinclick.server.words.ClickWords;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;
import thinclick.server.words.Table;

/** Courses as a page of plain text under 80 columns: for each, words first and then its takes. */
public final class HistoryPage {
  private final Speaker speaker;
  private final ZoneId zone;
  private final List<String> lines = new ArrayList<>();

  private HistoryPage(Speaker speaker, ZoneId zone) {
    this.speaker = speaker;
    this.zone = zone;
  }

  /**
   * The page.
   *
   * @param zone where the days begin
   */
  public static String of(List<CourseSheet> courses, ZoneId zone, Speaker speaker) {
    HistoryPage page = new HistoryPage(speaker, zone);
    for (CourseSheet course : courses) {
      if (!page.lines.isEmpty()) {
        page.lines.add("");
      }
      page.course(course);
    }
    if (courses.isEmpty()) {
      page.lines.add(speaker.say("history.none"));
    }
    return String.join("\n", page.lines) + "\n";
  }

  private void course(CourseSheet course) {
    lines.addAll(Table.wrap(String.join(" ", sentences(course, zone, speaker)), ""));
    lines.add("");
    List<String> heads = new ArrayList<>();
    heads.add("<" + speaker.say("history.played"));
    heads.add("<" + speaker.say("history.take"));
    heads.add(speaker.say("page.stages.hold"));
    heads.add(speaker.say("page.stages.spread"));
    if (course.player() == null) {
      heads.add("<" + speaker.say("history.thinnest"));
    } else {
      heads.add(speaker.say("page.stages.lean"));
      heads.add(speaker.say("page.stages.dropped"));
      heads.add(speaker.say("page.stages.added"));
    }
    Table table = new Table(heads);
    course.takes().forEach(take -> table.add(row(course, take)));
    lines.addAll(table.lines());
  }

  /** What can be said of a course: what it is, how it went, the fewest clicks held, what is due. */
  static List<String> sentences(CourseSheet course, ZoneId zone, Speaker speaker) {
    Entry.Key key = course.key();
    List<String> said = new ArrayList<>();
    int takes = course.takes().size();
    said.add(
        speaker.say(
            Said.of(
                course.player() == null ? "history.head" : "history.headPlayer",
                key.title(),
                Quantity.exact(key.tempo()),
                takes,
                Speaker.number(takes),
                String.valueOf(course.player()))));
    if (takes > 1) {
      said.add(
          speaker.say(
              Change.said(
                  course.span(),
                  course.first().hold(),
                  course.last().hold(),
                  course.first().spread(),
                  course.last().spread())));
    }
    FewestClicks fewest = course.fewest();
    if (fewest != null) {
      String day = speaker.days().withZone(zone).format(fewest.begunAt());
      said.add(speaker.say(Said.of("history.fewest", fewest.click(), day)));
    }
    if (course.next() != null) {
      said.add(speaker.say("history.next." + course.next()));
    }
    return said;
  }

  private List<String> row(CourseSheet course, CourseLine take) {
    List<String> row = new ArrayList<>();
    row.add(speaker.minutes().withZone(zone).format(take.begunAt()));
    row.add(take.id());
    row.add(percent(take.hold()));
    row.add(millis(take.spread()));
    if (course.player() == null) {
      row.add(thinnest(course.key(), take.heldThrough()));
      return row;
    }
    CourseLine.Own own = take.own();
    row.add(own == null ? "-" : millis(own.leanMillis()));
    row.add(own == null ? "-" : Integer.toString(own.dropped()));
    row.add(own == null ? "-" : Integer.toString(own.added()));
    return row;
  }

  private String thinnest(Entry.Key key, int held) {
    return held < 0 || held >= key.stages().size()
        ? speaker.say("history.noneHeld")
        : speaker.say(ClickWords.of(key.stages().get(held), key.meter(), key.stepsPerBeat()));
  }

  private String percent(@Nullable Figure figure) {
    return figure == null || !figure.known()
        ? "-"
        : speaker.shown(Quantity.percent(figure), figure.interval());
  }

  private String millis(@Nullable Figure figure) {
    return figure == null || !figure.known()
        ? "-"
        : speaker.shown(Quantity.millis(figure), figure.interval());
  }
}
