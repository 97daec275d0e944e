package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.WeakHashMap;
import java.util.function.IntPredicate;
import java.util.function.ToDoubleFunction;
import javafx.beans.binding.Bindings;
import javafx.geometry.HPos;
import javafx.geometry.Insets;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import thinclick.client.window.look.WholeWords;
import thinclick.server.picture.Tails;

/**
 * Tables of one page, whose columns stand below each other: the names in all of them, and beside
 * the names the figures, up to the first column of words. Where a table finds no room for that it
 * is narrower, and the others are not.
 */
final class SharedColumns {
  /** Tables that are gone hold nobody's column. */
  private final Set<TableGrid> tables = Collections.newSetFromMap(new WeakHashMap<>());

  /**
   * A table.
   *
   * @param figures which columns are numbers, which end in line
   */
  GridPane table(List<String> heads, List<List<String>> lines, IntPredicate figures) {
    TableGrid table = new TableGrid();
    for (int column = 0; column < heads.size(); column++) {
      int at = column;
      table.add(
          column,
          figures.test(column),
          heads.get(column),
          lines.stream().map(line -> line.get(at)).toList());
    }
    tables.add(table);
    table.sceneProperty().addListener(any -> tables.forEach(TableGrid::again));
    return table;
  }

  /** One of the tables, a list of cells a column, the head first. */
  private final class TableGrid extends GridPane {
    private final List<List<Label>> columns = new ArrayList<>();
    private final List<Region> struts = new ArrayList<>();

    TableGrid() {
      setHgap(22);
      setVgap(5);
    }

    void add(int column, boolean figures, String head, List<String> cells) {
      List<Label> labels = new ArrayList<>();
      Label above = WholeWords.in(new Label(head));
      above.getStyleClass().add("soft");
      labels.add(above);
      cells.forEach(cell -> labels.add(WholeWords.in(new Label(cell))));
      for (int row = 0; row < labels.size(); row++) {
        Label label = labels.get(row);
        add(label, column, row);
        setHalignment(label, figures ? HPos.RIGHT : HPos.LEFT);
        if (figures) {
          unitsInLine(label, cells, row - 1);
        }
      }
      columns.add(labels);
      if (column == 0 || (figures && struts.size() == column)) {
        Region strut = new Strut(column);
        struts.add(strut);
        add(strut, column, 0);
      }
    }

    /** Its columns may have become wider or narrower by another table. */
    void again() {
      struts.forEach(Region::requestLayout);
    }

    double widest(int column) {
      double widest = 0;
      if (column < struts.size()) {
        for (Label label : columns.get(column)) {
          widest = Math.max(widest, label.prefWidth(-1));
        }
      }
      return widest;
    }
  }

  /**
   * @param cell of the column, or -1 for its head
   */
  private static void unitsInLine(Label label, List<String> cells, int cell) {
    label
        .paddingProperty()
        .bind(
            Bindings.createObjectBinding(
                () -> {
                  Font font = label.getFont();
                  ToDoubleFunction<String> width = said -> width(said, font);
                  double slack =
                      cell < 0 ? Tails.longest(cells, width) : Tails.slack(cells, width).get(cell);
                  return new Insets(0, slack, 0, 0);
                },
                label.fontProperty()));
  }

  private static double width(String said, Font font) {
    Text text = new Text(said);
    text.setFont(font);
    return text.getLayoutBounds().getWidth();
  }

  /** Takes no room but the width that its column has in the widest table. */
  private final class Strut extends Region {
    private final int column;

    Strut(int column) {
      this.column = column;
      setMinSize(0, 0);
    }

    @Override
    protected double computePrefWidth(double height) {
      double widest = 0;
      for (TableGrid table : tables) {
        if (table.getScene() == getScene()) {
          widest = Math.max(widest, table.widest(column));
        }
      }
      return widest;
    }
  }
}
