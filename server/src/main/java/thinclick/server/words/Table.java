package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Plain text in columns: the first to the left, the others to the right, unless said otherwise.
 * Terminals of some systems have neither minus nor dash; here both are the hyphen.
 */
public final class Table {
  /** The widest page, columns. */
  static final int WIDTH = 79;

  /** Between columns that have the room. */
  private static final int GAP = 2;

  private final List<String> heads;
  private final List<Boolean> left;
  private final List<List<String>> rows = new ArrayList<>();

  /**
   * @param heads the columns' heads; one that begins with {@code <} stands to the left
   */
  public Table(List<String> heads) {
    this.heads =
        heads.stream().map(head -> head.startsWith("<") ? head.substring(1) : head).toList();
    left = heads.stream().map(head -> head.startsWith("<")).toList();
  }

  /** A row, a cell for each head. */
  public void add(List<String> cells) {
    rows.add(cells);
  }

  /**
   * The lines, none longer than the page: the columns stand closer where needed, and where that is
   * not enough the widest column to the left is cut.
   */
  public List<String> lines() {
    int[] widths = new int[heads.size()];
    for (int column = 0; column < widths.length; column++) {
      int at = column;
      widths[column] =
          Math.max(
              length(heads.get(column)),
              rows.stream().mapToInt(row -> length(row.get(at))).max().orElse(0));
    }
    String gap = whole(widths, GAP) > WIDTH ? " " : " ".repeat(GAP);
    shrink(widths, gap.length());
    List<String> lines = new ArrayList<>();
    lines.add(line(heads, widths, gap));
    rows.forEach(row -> lines.add(line(row, widths, gap)));
    return lines;
  }

  private static int whole(int[] widths, int gap) {
    return gap * (widths.length - 1) + IntStream.of(widths).sum();
  }

  private void shrink(int[] widths, int gap) {
    int whole = whole(widths, gap);
    while (whole > WIDTH) {
      int widest = -1;
      for (int column = 0; column < widths.length; column++) {
        if (left.get(column) && (widest < 0 || widths[column] > widths[widest])) {
          widest = column;
        }
      }
      if (widest < 0 || widths[widest] < 4) {
        return;
      }
      widths[widest]--;
      whole--;
    }
  }

  private String line(List<String> cells, int[] widths, String between) {
    StringBuilder line = new StringBuilder();
    for (int column = 0; column < widths.length; column++) {
      String cell = cut(cells.get(column), widths[column]);
      String gap = " ".repeat(widths[column] - length(cell));
      line.append(column == 0 ? "" : between).append(left.get(column) ? cell + gap : gap + cell);
    }
    return plain(line.toString().stripTrailing());
  }

  private static String plain(String line) {
    return line.replace(Quantity.MINUS, '-').replace('\u2013', '-');
  }

  static String cut(String text, int width) {
    if (length(text) <= width) {
      return text;
    }
    return text.substring(0, text.offsetByCodePoints(0, width - 1)) + "…";
  }

  private static int length(String text) {
    return text.codePointCount(0, text.length());
  }

  /** Sentences as a paragraph of lines. */
  public static List<String> wrap(String text, String indent) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : Unbroken.pieces(text)) {
      if (line.length() > 0 && length(line.toString()) + 1 + length(word) > WIDTH) {
        lines.add(line.toString());
        line.setLength(0);
        line.append(indent);
      } else if (line.length() > 0) {
        line.append(' ');
      }
      line.append(word);
    }
    lines.add(line.toString());
    lines.replaceAll(Table::plain);
    return lines;
  }
}
