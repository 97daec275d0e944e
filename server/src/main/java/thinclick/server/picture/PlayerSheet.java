package thinclick.server.picture;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.engraving.Face;
import thinclick.server.picture.Drawing.Anchor;

/** A player's review as a sheet to keep or print: the words and the pictures of the screen. */
public final class PlayerSheet {
  private static final double MARGIN = 36;
  private static final double WIDTH = PlayerPicture.WIDTH + 2 * MARGIN;
  private static final double LINE = 21;
  private static final double COLUMN_AIR = 30;

  private PlayerSheet() {}

  /**
   * A table.
   *
   * @param title what stands above it
   * @param heads of the columns
   * @param lines a cell a column
   * @param wordColumns how many columns from the left are words; the others are figures
   */
  public record Table(String title, List<String> heads, List<List<String>> lines, int wordColumns) {
    public Table {
      heads = List.copyOf(heads);
      lines = List.copyOf(lines);
    }
  }

  /**
   * What stands on the sheet, from above.
   *
   * @param title the drill's
   * @param head meter, tempo and tolerance
   * @param slip what is said to the player alone; empty for a listener
   * @param attacks the own attacks; null where none are known
   * @param band what is said to all
   * @param tables stages and players
   * @param course the last takes; null before the second
   */
  public record Content(
      String title,
      String head,
      List<String> slip,
      @Nullable Drawing attacks,
      List<String> band,
      List<Table> tables,
      @Nullable Drawing course) {
    public Content {
      slip = List.copyOf(slip);
      band = List.copyOf(band);
      tables = List.copyOf(tables);
    }
  }

  /** Draws it. */
  public static Drawing of(Content content) {
    Easel easel = new Easel();
    double y = MARGIN + 22;
    words(easel, MARGIN, y, 24, Face.SEMIBOLD, content.title(), Tint.INK);
    y += 22;
    words(easel, MARGIN, y, Easel.BODY, Face.REGULAR, content.head(), Tint.SOFT);
    y = prose(easel, content.slip(), y + 14);
    y = picture(easel, content.attacks(), y + 18);
    y = prose(easel, content.band(), y + 10);
    for (Table table : content.tables()) {
      y = table(easel, table, y + 40);
    }
    y = picture(easel, content.course(), y + 18) + MARGIN;
    Easel sheet = new Easel();
    sheet.box(0, 0, WIDTH, y, Tint.PAPER);
    easel.items().forEach(sheet::add);
    List<String> says = new ArrayList<>(content.slip());
    says.addAll(content.band());
    return new Drawing(WIDTH, y, content.title(), String.join(" ", says), sheet.items());
  }

  private static double prose(Easel easel, List<String> sentences, double top) {
    double y = top;
    for (String sentence : sentences) {
      for (String line : Easel.wrap(sentence, Easel.BODY, PlayerPicture.WIDTH)) {
        y += LINE;
        words(easel, MARGIN, y, Easel.BODY, Face.REGULAR, line, Tint.INK);
      }
    }
    return y;
  }

  private static double picture(Easel easel, @Nullable Drawing drawing, double top) {
    if (drawing == null) {
      return top;
    }
    double left = MARGIN + (PlayerPicture.WIDTH - drawing.width()) / 2;
    drawing.items().forEach(item -> easel.add(item.shifted(left, top)));
    return top + drawing.height();
  }

  private static double table(Easel easel, Table table, double top) {
    words(easel, MARGIN, top, 15, Face.SEMIBOLD, table.title(), Tint.INK);
    double y = top + LINE + 2;
    double x = MARGIN;
    for (int column = 0; column < table.heads().size(); column++) {
      List<String> cells = new ArrayList<>();
      cells.add(table.heads().get(column));
      for (List<String> line : table.lines()) {
        cells.add(line.get(column));
      }
      double width =
          cells.stream().mapToDouble(cell -> Face.REGULAR.width(cell, Easel.BODY)).max().orElse(0);
      for (int line = 0; line < cells.size(); line++) {
        String cell = cells.get(line);
        double lead =
            column < table.wordColumns() ? 0 : width - Face.REGULAR.width(cell, Easel.BODY);
        Tint tint = line == 0 ? Tint.SOFT : Tint.INK;
        words(easel, x + lead, y + line * LINE, Easel.BODY, Face.REGULAR, cell, tint);
      }
      x += width + COLUMN_AIR;
    }
    return y + table.lines().size() * LINE;
  }

  private static void words(
      Easel easel, double x, double y, double size, Face face, String text, Tint tint) {
    easel.add(new Drawing.Words(x, y, size, face, Anchor.START, text, tint));
  }
}
