package thinclick.client.window.lectern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import javafx.scene.Node;
import thinclick.client.window.look.WidthFirst;

/**
 * Commands in rows on one grid of columns: four where they have room, else two, else one. Some
 * commands are two columns wide, and the last ones of a row share what it leaves over, so that
 * every row is filled and every edge meets one of the rows above and below, also of a grid that
 * stands elsewhere on the page and has the same columns.
 */
final class CommandGrid extends WidthFirst {
  private static final int[] COLUMNS = {4, 2, 1};

  private final double across;
  private final double down;
  private final Set<Node> wide;
  private final List<CommandGrid> alike;
  private boolean asking;

  /** A command, the column where it begins, and how many it takes. */
  private record Cell(Node node, int column, int span) {}

  private record Place(Node node, double x, double y, double width, double height) {}

  /**
   * Grids that share their columns, so that what stands below each other is as wide.
   *
   * @param across pixels between neighbours
   * @param down pixels between rows
   * @param wide those that take two columns
   * @param rows the commands of each grid, in order
   * @return a grid for each, all of the same columns
   */
  static List<CommandGrid> alike(
      double across, double down, Set<Node> wide, List<List<Node>> rows) {
    List<CommandGrid> grids = new ArrayList<>();
    for (List<Node> commands : rows) {
      grids.add(new CommandGrid(across, down, wide, grids, commands));
    }
    return grids;
  }

  private CommandGrid(
      double across, double down, Set<Node> wide, List<CommandGrid> alike, List<Node> commands) {
    this.across = across;
    this.down = down;
    this.wide = wide;
    this.alike = alike;
    getChildren().setAll(commands);
  }

  /** What comes or goes in one grid may change the columns of all. */
  @Override
  public void requestLayout() {
    super.requestLayout();
    if (alike != null && !asking) { // null while the pane itself is being made
      asking = true;
      alike.stream().filter(other -> other != this).forEach(CommandGrid::follow);
      asking = false;
    }
  }

  private void follow() {
    asking = true;
    requestLayout();
    asking = false;
  }

  // ---------------------------------------------------------------- rows

  private List<List<Cell>> rows(List<Node> commands, int columns) {
    List<List<Cell>> rows = new ArrayList<>();
    List<Node> row = new ArrayList<>();
    int taken = 0;
    for (Node node : commands) {
      int span = span(node, columns);
      if (taken + span > columns) {
        rows.add(filled(row, columns));
        row.clear();
        taken = 0;
      }
      row.add(node);
      taken += span;
    }
    if (!row.isEmpty()) {
      rows.add(filled(row, columns));
    }
    return rows;
  }

  private int span(Node node, int columns) {
    return Math.min(columns, wide.contains(node) ? 2 : 1);
  }

  /** What a row leaves over is shared out from its beginning. */
  private List<Cell> filled(List<Node> row, int columns) {
    int over = columns - row.stream().mapToInt(node -> span(node, columns)).sum();
    List<Cell> cells = new ArrayList<>();
    int at = 0;
    for (int i = 0; i < row.size(); i++) {
      int more = over / row.size() + (i < over % row.size() ? 1 : 0);
      int span = span(row.get(i), columns) + more;
      cells.add(new Cell(row.get(i), at, span));
      at += span;
    }
    return cells;
  }

  // ---------------------------------------------------------------- columns

  /** How wide each column is, whole pixels that fill the width with what is between them. */
  private double[] columns(double width) {
    for (int columns : COLUMNS) {
      double[] even = new double[columns];
      Arrays.fill(even, Math.floor((width - (columns - 1) * across) / columns));
      if (holds(even)) {
        return filling(even, width);
      }
      double[] least = least(columns);
      if (columns > 1 && sum(least) + (columns - 1) * across <= width) {
        return filling(least, width);
      }
    }
    return new double[] {Math.floor(width)};
  }

  private boolean holds(double[] columns) {
    return cells(columns.length).stream().allMatch(cell -> wide(columns, cell) >= need(cell));
  }

  /** Of all commands, so that none changes its width when others come or go. */
  private List<Cell> cells(int columns) {
    return alike.stream()
        .flatMap(grid -> grid.rows(grid.getChildren(), columns).stream())
        .flatMap(List::stream)
        .toList();
  }

  /** The narrowest columns that hold all commands: those of one column first, then the others. */
  private double[] least(int columns) {
    double[] least = new double[columns];
    List<Cell> cells = cells(columns);
    for (int span = 1; span <= columns; span++) {
      for (Cell cell : cells) {
        double missing = cell.span() == span ? need(cell) - wide(least, cell) : 0;
        for (int i = 0; missing > 0 && i < span; i++) {
          least[cell.column() + i] += Math.ceil(missing / span);
        }
      }
    }
    return least;
  }

  /** Every column grows by as much; the last takes the pixels that cannot be shared. */
  private double[] filling(double[] columns, double width) {
    int last = columns.length - 1;
    double over = Math.floor(width) - sum(columns) - last * across;
    double each = Math.floor(over / columns.length);
    for (int i = 0; i <= last; i++) {
      columns[i] += i == last ? over - last * each : each;
    }
    return columns;
  }

  private double wide(double[] columns, Cell cell) {
    double wide = (cell.span() - 1) * across;
    for (int i = 0; i < cell.span(); i++) {
      wide += columns[cell.column() + i];
    }
    return wide;
  }

  private static double need(Cell cell) {
    return need(cell.node());
  }

  private static double need(Node node) {
    return Math.ceil(Math.max(node.minWidth(-1), node.prefWidth(-1)));
  }

  private static double sum(double[] columns) {
    return Arrays.stream(columns).sum();
  }

  // ---------------------------------------------------------------- places

  private List<Place> places(double width) {
    double[] columns = columns(width);
    List<Place> places = new ArrayList<>();
    double y = 0;
    for (List<Cell> row : rows(getManagedChildren(), columns.length)) {
      double high =
          row.stream().mapToDouble(cell -> Math.ceil(cell.node().prefHeight(-1))).max().orElse(0);
      double x = 0;
      for (Cell cell : row) {
        double wide = wide(columns, cell);
        places.add(new Place(cell.node(), x, y, wide, high));
        x += wide + across;
      }
      y += high + down;
    }
    return places;
  }

  @Override
  protected double computeMinWidth(double height) {
    return getManagedChildren().stream().mapToDouble(CommandGrid::need).max().orElse(0);
  }

  @Override
  protected double computePrefWidth(double height) {
    return sum(least(COLUMNS[0])) + (COLUMNS[0] - 1) * across;
  }

  @Override
  protected double heightAt(double width) {
    return places(width).stream().mapToDouble(place -> place.y() + place.height()).max().orElse(0);
  }

  @Override
  protected void place() {
    for (Place place : places(getWidth())) {
      place.node().resizeRelocate(place.x(), place.y(), place.width(), place.height());
    }
  }
}
