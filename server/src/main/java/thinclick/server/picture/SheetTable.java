package thinclick.server.picture;

import java.util.ArrayList;
import java.util.List;
import thinclick.server.engraving.Face;
import thinclick.server.picture.Drawing.Anchor;
import thinclick.server.picture.PlayerSheet.Table;

/** A table as it stands on a sheet: words begin in line, figures end in line, unit under unit. */
final class SheetTable {
  private static final double AIR = 30;

  private final Table table;
  private final double[] widths;

  /** How far each cell of a column ends before the column does, a list a column. */
  private final List<List<Double>> slack = new ArrayList<>();

  /** The same of the heads. */
  private final double[] headSlack;

  /**
   * @param names how wide the first column is at least
   */
  SheetTable(Table table, double names) {
    this.table = table;
    widths = new double[table.heads().size()];
    headSlack = new double[widths.length];
    for (int column = 0; column < widths.length; column++) {
      List<String> cells = cells(table, column);
      List<Double> ends =
          table.isFigures(column)
              ? Tails.slack(cells, SheetTable::width)
              : cells.stream().map(cell -> 0.0).toList();
      slack.add(ends);
      headSlack[column] = table.isFigures(column) ? Tails.longest(cells, SheetTable::width) : 0;
      double head = width(table.heads().get(column)) + headSlack[column];
      widths[column] = Math.max(column == 0 ? names : 0, head);
      for (int line = 0; line < cells.size(); line++) {
        widths[column] = Math.max(widths[column], width(cells.get(line)) + ends.get(line));
      }
    }
  }

  /** How wide the first column of a table is. */
  static double names(Table table) {
    return new SheetTable(table, 0).widths[0];
  }

  private static List<String> cells(Table table, int column) {
    return table.lines().stream().map(line -> line.get(column)).toList();
  }

  private static double width(String words) {
    return Face.REGULAR.width(words, Easel.BODY);
  }

  /** Draws the heads, each above its column. */
  void heads(Easel easel, double y) {
    double x = PlayerSheet.MARGIN;
    for (int column = 0; column < widths.length; column++) {
      words(easel, x, y, column, table.heads().get(column), headSlack[column], Tint.SOFT);
      x += widths[column] + AIR;
    }
  }

  /** Draws a line. */
  void line(Easel easel, double y, int line) {
    double x = PlayerSheet.MARGIN;
    for (int column = 0; column < widths.length; column++) {
      String cell = table.lines().get(line).get(column);
      words(easel, x, y, column, cell, slack.get(column).get(line), Tint.INK);
      x += widths[column] + AIR;
    }
  }

  private void words(
      Easel easel, double x, double y, int column, String said, double before, Tint tint) {
    double lead = table.isFigures(column) ? widths[column] - before - width(said) : 0;
    easel.add(
        new Drawing.Words(x + lead, y + 15, Easel.BODY, Face.REGULAR, Anchor.START, said, tint));
  }
}
