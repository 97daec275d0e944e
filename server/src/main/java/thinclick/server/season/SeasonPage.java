package thinclick.server.season;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import thinclick.server.history.CourseSheet;
import thinclick.server.history.HistoryPage;
import thinclick.server.words.Speaker;
import thinclick.server.words.Table;

/**
 * A season as a page of plain text under 80 columns: the class, its weeks, each in it, its drills.
 */
public final class SeasonPage {
  private SeasonPage() {}

  /**
   * The page.
   *
   * @param zone where the days begin
   */
  public static String of(Season season, ZoneId zone, Speaker speaker) {
    SeasonWords words = new SeasonWords(season, zone, speaker);
    List<String> lines = new ArrayList<>();
    List<String> head = new ArrayList<>(List.of(words.head()));
    head.addAll(words.lastWeek());
    lines.addAll(Table.wrap(String.join(" ", head), ""));
    lines.add("");
    lines.addAll(members(season, words, speaker));
    for (Pupil pupil : season.pupils()) {
      lines.add("");
      lines.addAll(Table.wrap(String.join(" ", words.known(pupil)), ""));
    }
    String without = words.withoutForecast();
    if (without != null) {
      lines.add("");
      lines.addAll(Table.wrap(without, ""));
    }
    if (season.takes().isEmpty()) {
      return String.join("\n", lines) + "\n";
    }
    lines.add("");
    return String.join("\n", lines)
        + "\n"
        + HistoryPage.of(CourseSheet.of(season.courses(), null), zone, speaker);
  }

  private static List<String> members(Season season, SeasonWords words, Speaker speaker) {
    List<String> heads = SeasonWords.heads(speaker);
    Table table =
        new Table(
            List.of(
                heads.get(0),
                "<" + heads.get(1),
                heads.get(2),
                "<" + heads.get(3),
                heads.get(4),
                "<" + heads.get(5)));
    for (Pupil pupil : season.pupils()) {
      table.add(
          List.of(
              pupil.chair() == null ? "-" : Integer.toString(pupil.chair()),
              pupil.name(),
              words.weeksOf(pupil),
              words.date(pupil),
              pupil.standing().map(one -> Integer.toString(one.level())).orElse("-"),
              pupil.rung().map(one -> speaker.say(one.click())).orElse("-")));
    }
    return table.lines();
  }
}
