package thinclick.server.season;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import thinclick.server.history.Course;
import thinclick.server.history.CourseSheet;
import thinclick.server.history.HistoryPicture;
import thinclick.server.picture.Drawing;
import thinclick.server.picture.Drawing.Anchor;
import thinclick.server.picture.Easel;
import thinclick.server.picture.Tint;
import thinclick.server.words.Speaker;

/**
 * A season as a sheet: who took part in which week, a tick a take; below, the courses of the drills
 * that came back in a later take. For the leader alone.
 */
public final class SeasonPicture {
  private static final double NAMES = 190;
  private static final double ROW = 20;
  private static final double NARROWEST_WEEK = 46;
  private static final double WIDEST_WEEK = 160;
  private static final int MOST_TICKS = 6;
  private static final double TICK_GAP = 6;
  private static final int MOST_COURSES = 6;

  /** Below more rows than these the heads stand once more: the first are out of view there. */
  private static final int MOST_BELOW_HEADS = 12;

  private SeasonPicture() {}

  /** What stands above it. */
  public static String title(Speaker speaker) {
    return speaker.say("season.picture");
  }

  /**
   * Draws it.
   *
   * @param zone where the days begin
   */
  public static Drawing of(Season season, ZoneId zone, Speaker speaker) {
    return draw(season, zone, speaker, HistoryPicture.WIDTH, true);
  }

  /**
   * The same without margins and without the sentences at its head, for a page that has its own.
   *
   * @param width that it is drawn for
   */
  public static Drawing plain(Season season, ZoneId zone, Speaker speaker, double width) {
    double sheet = width + 2 * HistoryPicture.MARGIN;
    return draw(season, zone, speaker, sheet, false).trimmed(HistoryPicture.MARGIN);
  }

  private static Drawing draw(
      Season season, ZoneId zone, Speaker speaker, double width, boolean headed) {
    SeasonWords words = new SeasonWords(season, zone, speaker);
    Easel easel = new Easel();
    List<String> says = new ArrayList<>(List.of(words.head()));
    says.addAll(words.lastWeek());
    double y = HistoryPicture.MARGIN;
    double inner = width - 2 * HistoryPicture.MARGIN;
    List<String> lines = headed ? Easel.wrap(String.join(" ", says), Easel.BODY, inner) : List.of();
    for (String line : lines) {
      y += 20;
      easel.words(HistoryPicture.MARGIN, y, Easel.BODY, Anchor.START, line, Tint.INK);
    }
    List<Week> weeks = season.weeks(zone);
    if (!weeks.isEmpty()) {
      y = attendance(easel, season.pupils(), shown(weeks, inner), y + 18, inner, speaker);
    }
    List<Course> again =
        season.courses().stream()
            .filter(course -> course.entries().size() > 1)
            .limit(MOST_COURSES)
            .toList();
    if (!again.isEmpty()) {
      y =
          HistoryPicture.draw(
              easel, y + 14, width, CourseSheet.of(again, null), zone, speaker, says);
    }
    double height = y + HistoryPicture.MARGIN;
    Easel sheet = new Easel();
    sheet.box(0, 0, width, height, Tint.PAPER);
    List<Drawing.Item> items = new ArrayList<>(sheet.items());
    items.addAll(easel.items());
    return new Drawing(width, height, title(speaker), String.join(" ", says), items);
  }

  /** The newest weeks, as many as find room. */
  private static List<Week> shown(List<Week> weeks, double inner) {
    int room = Math.max(1, (int) ((inner - NAMES) / NARROWEST_WEEK));
    return weeks.subList(Math.max(0, weeks.size() - room), weeks.size());
  }

  private static double attendance(
      Easel easel,
      List<Pupil> pupils,
      List<Week> weeks,
      double top,
      double inner,
      Speaker speaker) {
    double left = HistoryPicture.MARGIN + NAMES;
    double right = HistoryPicture.MARGIN + inner;
    double width = Math.min(WIDEST_WEEK, (right - left) / weeks.size());
    double y = top + 12;
    remark(easel, y, speaker.say("season.strokes"));
    y += 18;
    heads(easel, y, weeks, width, speaker);
    y += 7;
    easel.box(
        HistoryPicture.MARGIN, y, right - HistoryPicture.MARGIN, ROW * pupils.size(), Tint.SHEET);
    easel.line(HistoryPicture.MARGIN, y, right, y, 1, Tint.RULE);
    for (Pupil pupil : pupils) {
      String chair = pupil.chair() == null ? "-" : Integer.toString(pupil.chair());
      double base = y + ROW - 6;
      easel.words(HistoryPicture.MARGIN + 22, base, Easel.SMALL, Anchor.END, chair, Tint.SOFT);
      easel.words(
          HistoryPicture.MARGIN + 32,
          base,
          Easel.BODY,
          Anchor.START,
          Easel.cut(pupil.name(), Easel.BODY, NAMES - 44),
          Tint.INK);
      for (int i = 0; i < weeks.size(); i++) {
        ticks(easel, weeks.get(i).takesOf(pupil.key()), left + width * (i + 0.5), base);
      }
      y += ROW;
      easel.line(HistoryPicture.MARGIN, y, right, y, .4, Tint.RULE);
    }
    if (pupils.size() > MOST_BELOW_HEADS) {
      y += 14;
      heads(easel, y, weeks, width, speaker);
    }
    return y;
  }

  /** The weeks' Mondays over their columns, and what they are. */
  private static void heads(
      Easel easel, double y, List<Week> weeks, double width, Speaker speaker) {
    remark(easel, y, speaker.say("season.tookPart"));
    for (int i = 0; i < weeks.size(); i++) {
      easel.words(
          HistoryPicture.MARGIN + NAMES + width * (i + 0.5),
          y,
          Easel.SMALL,
          Anchor.MIDDLE,
          speaker.daysOfTheYear().format(weeks.get(i).monday()),
          Tint.SOFT);
    }
  }

  private static void remark(Easel easel, double y, String says) {
    easel.words(HistoryPicture.MARGIN, y, Easel.SMALL, Anchor.START, says, Tint.SOFT);
  }

  /** A plain tick a take; many are a number. */
  private static void ticks(Easel easel, int takes, double middle, double base) {
    if (takes > MOST_TICKS) {
      easel.words(middle, base, Easel.SMALL, Anchor.MIDDLE, Integer.toString(takes), Tint.INK);
      return;
    }
    double x = middle - TICK_GAP * (takes - 1) / 2;
    for (int i = 0; i < takes; i++) {
      easel.line(x, base + 1, x, base - 9, 1.4, Tint.INK);
      x += TICK_GAP;
    }
  }
}
