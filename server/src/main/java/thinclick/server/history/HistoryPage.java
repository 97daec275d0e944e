package thinclick.server.history;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.Check;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.words.ClickWords;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;
import thinclick.server.words.Table;

/** Courses as a page of plain text under 80 columns: for each, words first and then its takes. */
public final class HistoryPage {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd", Locale.ROOT);

  private final Speaker speaker;
  private final ZoneId zone;
  private final @Nullable String player;
  private final List<String> lines = new ArrayList<>();

  private HistoryPage(Speaker speaker, ZoneId zone, @Nullable String player) {
    this.speaker = speaker;
    this.zone = zone;
    this.player = player;
  }

  /**
   * The page.
   *
   * @param player whose course it is; null for the band's
   * @param zone where the days begin
   */
  public static String of(
      List<Course> courses, @Nullable String player, ZoneId zone, Speaker speaker) {
    HistoryPage page = new HistoryPage(speaker, zone, player);
    for (Course course : courses) {
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

  private void course(Course course) {
    lines.addAll(Table.wrap(String.join(" ", sentences(course, player, zone, speaker)), ""));
    lines.add("");
    List<String> heads = new ArrayList<>();
    heads.add("<" + speaker.say(Said.of("history.played", zone.getId())));
    heads.add("<" + speaker.say("history.take"));
    heads.add(speaker.say("page.stages.hold"));
    heads.add(speaker.say("page.stages.spread"));
    if (player == null) {
      heads.add("<" + speaker.say("history.thinnest"));
    } else {
      heads.add(speaker.say("page.stages.lean"));
      heads.add(speaker.say("page.stages.dropped"));
      heads.add(speaker.say("page.stages.added"));
    }
    Table table = new Table(heads);
    course.entries().forEach(entry -> table.add(row(entry)));
    lines.addAll(table.lines());
  }

  /** What can be said of a course: what it is, how it went, the fewest clicks held, what is due. */
  static List<String> sentences(
      Course course, @Nullable String player, ZoneId zone, Speaker speaker) {
    Entry.Key key = course.key();
    List<String> said = new ArrayList<>();
    int takes = course.entries().size();
    said.add(
        speaker.say(
            Said.of(
                player == null ? "history.head" : "history.headPlayer",
                key.title(),
                Check.number(key.tempo()),
                takes,
                Speaker.number(takes),
                String.valueOf(player))));
    if (takes > 1) {
      said.add(
          speaker.say(
              Change.said(
                  course.span(),
                  Course.hold(course.first(), player),
                  Course.hold(course.last(), player),
                  Course.spread(course.first(), player),
                  Course.spread(course.last(), player))));
    }
    if (player == null) {
      FewestClicks.of(course.entries(), key.title(), key.tempo())
          .ifPresent(
              fewest ->
                  said.add(
                      speaker.say(
                          Said.of(
                              "history.fewest",
                              fewest.click(),
                              DATE.withZone(zone).format(fewest.begunAt())))));
      said.add(speaker.say("history.next." + course.next()));
    }
    return said;
  }

  private List<String> row(Entry entry) {
    List<String> row = new ArrayList<>();
    row.add(DAY.withZone(zone).format(entry.begunAt()));
    row.add(entry.id());
    row.add(shown(Course.hold(entry, player)));
    row.add(shown(Course.spread(entry, player)));
    if (player == null) {
      row.add(thinnest(entry));
      return row;
    }
    PlayerReview own = entry.review().player(player);
    row.add(own == null ? "-" : shown(own.leanMillis()));
    row.add(own == null ? "-" : Integer.toString(own.dropped()));
    row.add(own == null ? "-" : Integer.toString(own.added()));
    return row;
  }

  private String thinnest(Entry entry) {
    int held = entry.review().ensemble().heldThrough();
    return held < 0 || held >= entry.key().stages().size()
        ? speaker.say("history.noneHeld")
        : speaker.say(
            ClickWords.of(
                entry.key().stages().get(held), entry.key().meter(), entry.key().stepsPerBeat()));
  }

  private static String shown(@Nullable Figure figure) {
    if (figure == null || !figure.known()) {
      return "-";
    }
    String value = new Quantity(figure.get(), 0, 1).shown(Locale.ROOT);
    Interval interval = figure.interval();
    return interval == null
        ? value
        : value
            + " ("
            + new Quantity(interval.low(), 0, 1).shown(Locale.ROOT)
            + (interval.low() < 0 ? " to " : "-")
            + new Quantity(interval.high(), 0, 1).shown(Locale.ROOT)
            + ")";
  }
}
