package thinclick.server.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.server.engraving.Face;
import thinclick.server.picture.Drawing.Anchor;
import thinclick.server.picture.PlayerSheet.Section;
import thinclick.server.picture.PlayerSheet.Table;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.words.Comparison;
import thinclick.server.words.Comparison.Kind;
import thinclick.server.words.Comparison.Row;
import thinclick.server.words.Comparison.Verdict;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;

/**
 * Two takes beside each other: for the band, each click and each player two upright columns on one
 * scale, the first take's open and the second's filled, each with its interval as a stroke; once
 * for how much was held and once for the spread.
 */
public final class ComparePicture {
  /** How high a figure that reaches the top of the scale stands, in units. */
  static final double PLOT = 110;

  /** How wide a column is. */
  static final double COLUMN = 22;

  private static final double AXIS = 44;
  private static final double LINE = 14;
  private static final int MOST_LINES = 3;
  private static final int MOST_GROUPS = 8;
  private static final int FEWEST_GROUPS = 4;
  private static final double SPREAD_STEP = 20;

  private final Comparison comparison;
  private final Speaker speaker;
  private final Easel easel = new Easel();

  /** How many groups have room beside each other: few do not leave half of the scale empty. */
  private final int groups;

  private ComparePicture(Comparison comparison, Speaker speaker) {
    this.comparison = comparison;
    this.speaker = speaker;
    groups = Math.max(FEWEST_GROUPS, Math.min(MOST_GROUPS, rows(Kind.HOLD).size()));
  }

  /** Draws it, as wide as a player's own picture. */
  public static Drawing of(Comparison comparison, Speaker speaker) {
    return new ComparePicture(comparison, speaker).draw();
  }

  /** What two takes come to, as a sheet to keep: the sentence, the picture, the table. */
  public static PlayerSheet.Content sheet(Comparison comparison, Speaker speaker) {
    List<List<String>> lines = new ArrayList<>();
    comparison.rows().forEach(row -> lines.add(comparison.cells(row, speaker)));
    return new PlayerSheet.Content(
        comparison.title(),
        speaker.say(Said.of("compare.plan", Quantity.exact(comparison.tempo()))),
        List.of(
            Section.words("verdict", null, List.of(speaker.say(comparison.verdict()))),
            Section.picture("columns", null, of(comparison, speaker)),
            Section.table(
                "figures",
                speaker.say("compare.figures"),
                new Table(comparison.heads(speaker), lines, Set.of(0, 3)))));
  }

  private Drawing draw() {
    List<Row> holds = rows(Kind.HOLD);
    List<Row> spreads = rows(Kind.SPREAD);
    double y = key(0);
    for (int from = 0; from < holds.size(); from += MOST_GROUPS) {
      int to = Math.min(holds.size(), from + MOST_GROUPS);
      y = panel(holds.subList(from, to), Kind.HOLD, 100, y);
      y = panel(spreads.subList(from, to), Kind.SPREAD, top(spreads), y);
    }
    return new Drawing(
        PlayerPicture.WIDTH,
        y,
        comparison.title(),
        speaker.say(comparison.verdict()),
        easel.items());
  }

  private List<Row> rows(Kind kind) {
    return comparison.rows().stream().filter(row -> row.kind() == kind).toList();
  }

  /** The top of the scale of all spreads, a whole number of steps. */
  static double top(List<Row> spreads) {
    double most = SPREAD_STEP;
    for (Row row : spreads) {
      most = Math.max(most, Math.max(highest(row.first()), highest(row.second())));
    }
    return SPREAD_STEP * Math.ceil(most / SPREAD_STEP);
  }

  private static double highest(Figure figure) {
    Interval interval = figure.interval();
    return interval != null ? interval.high() : figure.known() ? figure.get() : 0;
  }

  /** Which column is which take's. */
  private double key(double top) {
    double x = 0;
    for (boolean second : new boolean[] {false, true}) {
      String name = speaker.say(second ? "compare.second" : "compare.first");
      box(x, top + 4, 12, 12, second);
      easel.words(x + 18, top + 14, Easel.SMALL, Anchor.START, name, Tint.SOFT);
      x += 18 + Face.REGULAR.width(name, Easel.SMALL) + 20;
    }
    return top + 30;
  }

  private double panel(List<Row> rows, Kind kind, double most, double top) {
    String scale = speaker.say(kind == Kind.HOLD ? "history.scaleHold" : "history.scaleSpread");
    easel.words(0, top + 12, Easel.SMALL, Anchor.START, scale, Tint.SOFT);
    double plotTop = top + 34;
    double base = plotTop + PLOT;
    double width = PlayerPicture.WIDTH - AXIS;
    for (int i = 0; i <= 4; i++) {
      double y = base - PLOT * i / 4;
      String number = speaker.shown(new Quantity(most * i / 4, 0, 1));
      easel.line(AXIS, y, AXIS + width, y, i == 0 ? 1 : .4, Tint.RULE);
      easel.words(AXIS - 6, y + 4, Easel.SMALL, Anchor.END, number, Tint.SOFT);
    }
    double group = width / groups;
    int lines = 1;
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      double middle = AXIS + (i + .5) * group;
      column(row.first(), kind, most, middle - COLUMN - 2, base, false);
      column(row.second(), kind, most, middle + 2, base, true);
      lines = Math.max(lines, names(row, middle, base, group));
    }
    return base + 6 + lines * LINE + 16;
  }

  /**
   * What is compared, below its columns, and whether the two can be told apart.
   *
   * @return how many lines it took
   */
  private int names(Row row, double middle, double base, double group) {
    List<String> names = new ArrayList<>(Easel.wrap(speaker.say(row.of()), Easel.SMALL, group - 8));
    List<String> shown = new ArrayList<>(names.subList(0, Math.min(MOST_LINES, names.size())));
    for (int line = 0; line < shown.size(); line++) {
      String cut = Easel.cut(shown.get(line), Easel.SMALL, group - 4);
      easel.words(middle, base + 6 + (line + 1) * LINE, Easel.SMALL, Anchor.MIDDLE, cut, Tint.INK);
    }
    if (row.verdict() != Verdict.OPEN) {
      easel.add(
          new Drawing.Words(
              middle,
              base + 6 + (shown.size() + 1) * LINE,
              Easel.SMALL,
              Face.ITALIC,
              Anchor.MIDDLE,
              speaker.say("compare." + row.verdict()),
              Tint.INK));
      return shown.size() + 1;
    }
    return shown.size();
  }

  private void column(
      Figure figure, Kind kind, double most, double left, double base, boolean second) {
    if (!figure.known()) {
      easel.words(left + COLUMN / 2, base - 4, Easel.SMALL, Anchor.MIDDLE, "\u2013", Tint.SOFT);
      return;
    }
    double height = height(figure.get(), most);
    box(left, base - height, COLUMN, height, second);
    @Nullable Interval interval = figure.interval();
    double end = height;
    if (interval != null) {
      double x = left + COLUMN / 2;
      double high = height(interval.high(), most);
      easel.line(x, base - height(interval.low(), most), x, base - high, 1.2, Tint.INK);
      end = Math.max(end, high);
    }
    String shown = speaker.shown(kind.shown(figure));
    double wide = Face.REGULAR.width(shown, Easel.SMALL) + 2;
    double middle = left + COLUMN / 2;
    // No rule of the scale goes through a number.
    easel.box(middle - wide / 2, base - end - 14, wide, 12, Tint.PAPER);
    easel.words(middle, base - end - 4, Easel.SMALL, Anchor.MIDDLE, shown, Tint.INK);
  }

  private static double height(double value, double most) {
    return PLOT * Math.max(0, Math.min(1, value / most));
  }

  /** Open for the first take, filled for the second. */
  private void box(double x, double y, double width, double height, boolean second) {
    easel.box(x, y, width, height, second ? Tint.BAND : Tint.SHEET);
    easel.line(x, y, x, y + height, 1, Tint.INK);
    easel.line(x + width, y, x + width, y + height, 1, Tint.INK);
    easel.line(x - .5, y, x + width + .5, y, 1, Tint.INK);
    easel.line(x - .5, y + height, x + width + .5, y + height, 1, Tint.INK);
  }
}
