package thinclick.server.picture;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.engraving.Face;
import thinclick.server.engraving.Ink;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Page;
import thinclick.server.engraving.Paper;
import thinclick.server.engraving.Place;
import thinclick.server.words.Unbroken;

/** A sheet of paper that is written from above: lines, paragraphs, a table, rules to write on. */
final class SlipSheet {
  private static final double SPACE_MM = 1.75;
  private static final double MARGIN_MM = 24;
  private static final double LEADING = 1.45;
  private static final double RULE = 0.1;
  private static final double COLUMN_AIR = 3;
  private static final double SHARE_WIDTH = 13;
  private static final double LEAST_SHARE = 5;
  private static final double BLANK = 5.2;

  /** The least share of the width that a last line takes, where breaking earlier can bring it. */
  private static final double LEAST_LAST = 0.25;

  /** How much narrower is tried, each time, and at the least. */
  private static final double NARROWER = 0.97;

  private static final double NARROWEST = 0.6;

  private final Paper paper;
  private final List<Mark> marks = new ArrayList<>();
  private double y = MARGIN_MM / SPACE_MM;

  SlipSheet(Paper paper) {
    this.paper = paper;
  }

  /**
   * A column of a table.
   *
   * @param head what stands above it
   * @param cells one a line
   * @param shares drawn shares in place of words, 0 to 1; null for none
   * @param words true where cells begin at the left
   */
  record Column(
      String head, List<String> cells, @Nullable List<@Nullable Double> shares, boolean words) {
    static Column words(String head, List<String> cells) {
      return new Column(head, cells, null, true);
    }

    static Column numbers(String head, List<String> cells) {
      return new Column(head, cells, null, false);
    }

    static Column shares(List<@Nullable Double> shares) {
      return new Column("", Collections.nCopies(shares.size(), ""), shares, true);
    }
  }

  private double left() {
    return MARGIN_MM / SPACE_MM;
  }

  private double width() {
    return (paper.width() - 2 * MARGIN_MM) / SPACE_MM;
  }

  void down(double spaces) {
    y += spaces;
  }

  void line(String text, Face face, double size, Ink ink) {
    y += size;
    text(text, face, size, ink, left());
    y += size * (LEADING - 1);
  }

  private void text(String text, Face face, double size, Ink ink, double x) {
    if (!text.isEmpty()) {
      marks.add(new Mark.Text(Place.saying(text), ink, text, face, size, x, y));
    }
  }

  void paragraph(String text, Face face, double size, Ink ink) {
    wrapped(text, face, size).forEach(line -> line(line, face, size, ink));
  }

  /** In as few lines as the width asks for; where the last were a lone word, broken earlier. */
  private List<String> wrapped(String text, Face face, double size) {
    List<String> words = Unbroken.pieces(text.strip());
    List<String> lines = face.lines(words, size, width());
    for (double narrower = NARROWER; narrower > NARROWEST; narrower *= NARROWER) {
      String last = lines.get(lines.size() - 1);
      List<String> earlier = face.lines(words, size, narrower * width());
      if (face.width(last, size) > LEAST_LAST * width() || earlier.size() > lines.size()) {
        return lines;
      }
      lines = earlier;
    }
    return lines;
  }

  void rule() {
    stroke(left(), left() + width(), y, RULE, Ink.RULE);
  }

  private void stroke(double from, double to, double at, double thickness, Ink ink) {
    marks.add(new Mark.Line(Place.NOWHERE, ink, from, at, to, at, thickness, false));
  }

  /** Rules to write on by hand. */
  void blanks(int lines) {
    for (int i = 0; i < lines; i++) {
      y += BLANK;
      rule();
    }
  }

  /** A table over the whole width; what is left over stands beside the second column. */
  void table(List<Column> columns, double size) {
    double[] widths = new double[columns.size()];
    double all = COLUMN_AIR * (columns.size() - 1);
    for (int i = 0; i < widths.length; i++) {
      Column column = columns.get(i);
      widths[i] = column.shares() == null ? widest(column, size) : SHARE_WIDTH;
      all += widths[i];
    }
    double more = Math.max(0, width() - all);
    double less = Math.max(0, all - width());
    y += size;
    double x = left();
    for (int i = 0; i < widths.length; i++) {
      Column column = columns.get(i);
      widths[i] += i == 1 ? more : 0;
      widths[i] -= column.shares() == null ? 0 : Math.min(less, widths[i] - LEAST_SHARE);
      cell(column, column.head(), size, Ink.SOFT, x, widths[i]);
      x += widths[i] + COLUMN_AIR;
    }
    y += size * 0.55;
    rule();
    for (int line = 0; line < columns.get(0).cells().size(); line++) {
      y += size * LEADING;
      x = left();
      for (int i = 0; i < widths.length; i++) {
        Column column = columns.get(i);
        @Nullable List<@Nullable Double> shares = column.shares();
        if (shares == null) {
          cell(column, column.cells().get(line), size, Ink.FULL, x, widths[i]);
        } else {
          share(shares.get(line), size, x, widths[i]);
        }
        x += widths[i] + COLUMN_AIR;
      }
    }
    y += size * 0.3;
  }

  private static double widest(Column column, double size) {
    double widest = Face.REGULAR.width(column.head(), size);
    for (String cell : column.cells()) {
      widest = Math.max(widest, Face.REGULAR.width(cell, size));
    }
    return widest;
  }

  private void cell(Column column, String text, double size, Ink ink, double x, double width) {
    double lead = column.words() ? 0 : width - Face.REGULAR.width(text, size);
    text(text, Face.REGULAR, size, ink, x + lead);
  }

  /** A rule as long as the whole, inked as far as the share goes. */
  private void share(@Nullable Double share, double size, double x, double width) {
    double middle = y - 0.32 * size;
    stroke(x, x + width, middle, RULE, Ink.RULE);
    if (share != null && share > 0) {
      stroke(x, x + share * width, middle, 0.34 * size, Ink.FULL);
    }
  }

  /** Two figures beside each other: name, value, name, value. */
  void pair(double size, List<String> cells) {
    y += size * LEADING;
    double half = (width() - 2 * COLUMN_AIR) / 2;
    for (int i = 0; i < 2; i++) {
      double x = left() + i * (half + 2 * COLUMN_AIR);
      text(cells.get(2 * i), Face.REGULAR, size, Ink.SOFT, x);
      String value = cells.get(2 * i + 1);
      text(value, Face.REGULAR, size, Ink.FULL, x + half - Face.REGULAR.width(value, size));
    }
  }

  /** The last lines of the page. */
  void foot(String text, double size) {
    List<String> lines = wrapped(text, Face.REGULAR, size);
    y = (paper.height() - MARGIN_MM) / SPACE_MM - lines.size() * size * LEADING;
    lines.forEach(line -> line(line, Face.REGULAR, size, Ink.SOFT));
  }

  Page page(String title) {
    return new Page(paper.width(), paper.height(), SPACE_MM, title, marks);
  }
}
