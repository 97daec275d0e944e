package thinclick.server.history;

import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import thinclick.server.picture.Drawing;
import thinclick.server.picture.Drawing.Anchor;
import thinclick.server.picture.Easel;
import thinclick.server.picture.Tint;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.words.Quantity;
import thinclick.server.words.Speaker;

/** Courses as a sheet: for each, hold and spread over the days, each take with its interval. */
public final class HistoryPicture {
  /** Of a sheet. */
  public static final double WIDTH = 900;

  /** Left free on every side of it. */
  public static final double MARGIN = 36;

  private static final double AXIS = 44;
  private static final double PLOT = 110;
  private static final double GUTTER = 40;

  /** From the days below a picture to what comes next; nothing comes after the last one. */
  private static final double BELOW_DAYS = 22;

  private HistoryPicture() {}

  /**
   * Draws courses.
   *
   * @param zone where the days begin
   */
  public static Drawing of(List<CourseSheet> courses, ZoneId zone, Speaker speaker) {
    Easel easel = new Easel();
    List<String> says = new ArrayList<>();
    double y = draw(easel, MARGIN, WIDTH, courses, zone, speaker, says);
    return sheet(easel, y, speaker, says);
  }

  /**
   * Draws courses as a part of a review that is read where they were played: what comes next stands
   * there already.
   */
  public static Drawing inReview(List<CourseSheet> courses, ZoneId zone, Speaker speaker) {
    Easel easel = new Easel();
    List<String> says = new ArrayList<>();
    List<CourseSheet> plain = courses.stream().map(CourseSheet::withoutNext).toList();
    double y = draw(easel, MARGIN, WIDTH, plain, zone, speaker, says);
    return sheet(easel, y, speaker, says).trimmed(MARGIN);
  }

  private static Drawing sheet(Easel easel, double y, Speaker speaker, List<String> says) {
    Easel sheet = new Easel();
    sheet.box(0, 0, WIDTH, y + MARGIN, Tint.PAPER);
    List<Drawing.Item> items = new ArrayList<>(sheet.items());
    items.addAll(easel.items());
    return new Drawing(
        WIDTH, y + MARGIN, speaker.say("history.picture"), String.join(" ", says), items);
  }

  /**
   * Draws courses below something else on a sheet with {@link #MARGIN}s.
   *
   * @param top where they begin
   * @param width of the sheet, margins included
   * @param says takes what is said of them
   * @return where they end
   */
  public static double draw(
      Easel easel,
      double top,
      double width,
      List<CourseSheet> courses,
      ZoneId zone,
      Speaker speaker,
      List<String> says) {
    double y = top;
    double inner = width - 2 * MARGIN;
    double plot = (inner - GUTTER) / 2;
    for (CourseSheet course : courses) {
      String words = String.join(" ", HistoryPage.sentences(course, zone, speaker));
      says.add(words);
      for (String line : Easel.wrap(words, Easel.BODY, inner)) {
        y += 20;
        easel.words(MARGIN, y, Easel.BODY, Anchor.START, line, Tint.INK);
      }
      y += 20;
      panel(easel, course, true, MARGIN, y, plot, speaker);
      panel(easel, course, false, MARGIN + plot + GUTTER, y, plot, speaker);
      days(easel, course, zone, speaker, MARGIN + AXIS, y + PLOT + 38, plot - AXIS);
      days(easel, course, zone, speaker, MARGIN + plot + GUTTER + AXIS, y + PLOT + 38, plot - AXIS);
      y += PLOT + 66;
    }
    if (courses.isEmpty()) {
      y += 20;
      says.add(speaker.say("history.none"));
      easel.words(MARGIN, y, Easel.BODY, Anchor.START, speaker.say("history.none"), Tint.INK);
    }
    return courses.isEmpty() ? y : y - BELOW_DAYS;
  }

  private static void panel(
      Easel easel,
      CourseSheet course,
      boolean hold,
      double left,
      double top,
      double width,
      Speaker speaker) {
    easel.words(
        left,
        top + 9,
        Easel.SMALL,
        Anchor.START,
        speaker.say(hold ? "history.scaleHold" : "history.scaleSpread"),
        Tint.SOFT);
    double plotTop = top + 22;
    double axis = left + AXIS;
    double most = hold ? 100 : mostSpread(course);
    easel.box(axis, plotTop, width - AXIS, PLOT, Tint.SHEET);
    for (int i = 0; i <= 4; i++) {
      double at = plotTop + PLOT - PLOT * i / 4;
      easel.line(axis, at, left + width, at, i == 0 ? 1 : .4, Tint.RULE);
      easel.words(
          axis - 6,
          at + 4,
          Easel.SMALL,
          Anchor.END,
          speaker.shown(new Quantity(most * i / 4, 0, 1)),
          Tint.SOFT);
    }
    double beforeX = Double.NaN;
    double beforeY = Double.NaN;
    for (int i = 0; i < course.takes().size(); i++) {
      CourseLine take = course.takes().get(i);
      Figure figure = hold ? take.hold() : take.spread();
      if (figure == null || !figure.known()) {
        beforeX = Double.NaN;
        continue;
      }
      double x = axis + 10 + (width - AXIS - 20) * share(course, i);
      double y = plotTop + PLOT * (1 - Math.min(1, figure.get() / most));
      Interval interval = figure.interval();
      if (interval != null) {
        easel.line(
            x,
            plotTop + PLOT * (1 - clamp(interval.low() / most)),
            x,
            plotTop + PLOT * (1 - clamp(interval.high() / most)),
            1,
            Tint.SOFT);
      }
      if (!Double.isNaN(beforeX)) {
        easel.line(beforeX, beforeY, x, y, 1.2, Tint.INK);
      }
      easel.disc(x, y, 3, Tint.INK);
      beforeX = x;
      beforeY = y;
    }
  }

  /** The first and the last day, below a panel. */
  private static void days(
      Easel easel,
      CourseSheet course,
      ZoneId zone,
      Speaker speaker,
      double left,
      double y,
      double width) {
    String first = speaker.days().withZone(zone).format(course.first().begunAt());
    String last = speaker.days().withZone(zone).format(course.last().begunAt());
    easel.words(left, y, Easel.SMALL, Anchor.START, first, Tint.SOFT);
    if (!last.equals(first)) {
      easel.words(left + width, y, Easel.SMALL, Anchor.END, last, Tint.SOFT);
    }
  }

  private static double clamp(double share) {
    return Math.max(0, Math.min(1, share));
  }

  /** By time; takes of one moment side by side. */
  private static double share(CourseSheet course, int index) {
    Duration span = course.span();
    if (span.isZero()) {
      int others = course.takes().size() - 1;
      return others == 0 ? 0.5 : (double) index / others;
    }
    Duration since =
        Duration.between(course.first().begunAt(), course.takes().get(index).begunAt());
    return (double) since.toMillis() / span.toMillis();
  }

  private static double mostSpread(CourseSheet course) {
    double most = 20;
    for (CourseLine take : course.takes()) {
      Figure spread = take.spread();
      if (spread != null && spread.known()) {
        Interval interval = spread.interval();
        most = Math.max(most, interval == null ? spread.get() : interval.high());
      }
    }
    return 20 * Math.ceil(most / 20);
  }
}
