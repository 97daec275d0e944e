package thinclick.client.window.look;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.layout.GridPane;
import javafx.scene.text.Font;
import javafx.scene.text.Text;

/** The lines of one column of a sheet, as they stand in the window. */
final class ColumnLines {
  /** A part of a pixel that nobody sees missing. */
  static final double SLACK = 1;

  /** So far below the edge of the page the line may stand that a rule in view is ruled for. */
  private static final double REACH = 100;

  /** How high one line is: a page is looked at after each layout, and its fonts are few. */
  private static final Map<Font, Double> SINGLE = new HashMap<>();

  private final Node column;
  private final List<Line> lines = new ArrayList<>();

  /** What stands below each other on a page; what comes later may be cut where room is short. */
  enum Kind {
    WORDS,
    FRAME,
    PICTURE,
    HEADED,
    WHOLE
  }

  /**
   * A line of words in the window, or what else is not to be cut.
   *
   * @param begins its upper edge with the rule that stands above it, in the scene
   * @param top its own upper edge
   * @param foot its lower edge
   * @param ends its lower edge with the rule that closes what it is the last line of
   * @param focused whether it is a control that has the focus
   */
  private record Line(
      Kind kind, double begins, double top, double foot, double ends, boolean focused) {
    Line(Kind kind, double top, double foot, boolean focused) {
      this(kind, top, top, foot, foot, focused);
    }

    /** The frame of a button shows by less than a line of words does. */
    double slack() {
      return kind == Kind.WORDS ? SLACK : 0.1;
    }

    Line beginningAt(double y) {
      return new Line(kind, Math.min(y, begins), top, foot, ends, focused);
    }

    Line endingAt(double y) {
      return new Line(kind, begins, top, foot, Math.max(y, ends), focused);
    }
  }

  private ColumnLines(Node column) {
    this.column = column;
  }

  /** The columns of a sheet: what stands over its whole width, then each of two side by side. */
  static List<ColumnLines> of(Node sheet, double top, double foot) {
    List<ColumnLines> all = new ArrayList<>();
    ColumnLines whole = new ColumnLines(sheet);
    all.add(whole);
    whole.add(sheet, top, foot, all);
    return all;
  }

  /** What they stand in. */
  Node column() {
    return column;
  }

  /**
   * Where the first whole line below the upper edge of the page begins, or at the edge.
   *
   * @param most the last kind that is kept whole
   */
  double from(double edge, Kind most) {
    double from = edge;
    // What stands beside a line that is covered may reach further than it.
    for (boolean moved = true; moved; ) {
      moved = false;
      for (Line line : lines) {
        boolean kept = line.kind().compareTo(most) <= 0;
        if (kept && line.top() < from - line.slack() && line.ends() > from + line.slack()) {
          from = line.ends();
          moved = true;
        }
      }
    }
    return from;
  }

  /**
   * Where the last whole line above the lower edge of the page is over, or at the edge.
   *
   * @param most the last kind that is kept whole
   */
  double to(double edge, Kind most) {
    double to = edge;
    for (boolean moved = true; moved; ) {
      moved = false;
      for (Line line : lines) {
        boolean kept = line.kind().compareTo(most) <= 0;
        if (kept && line.begins() < to - line.slack() && line.foot() > to + line.slack()) {
          to = line.begins();
          moved = true;
        }
      }
    }
    return to;
  }

  /** What has the focus stays in view, whatever is cut beside it. */
  boolean hasFocus(double from, double to) {
    return lines.stream()
        .anyMatch(line -> line.focused() && line.foot() > from + SLACK && line.top() < to - SLACK);
  }

  private void add(Node node, double top, double foot, List<ColumnLines> all) {
    Bounds bounds = node.localToScene(node.getLayoutBounds());
    if (!node.isVisible() || bounds.getMaxY() < top || bounds.getMinY() > foot + REACH) {
      return;
    }
    if (node instanceof PictureParts picture) {
      for (PictureParts.Part part : picture.parts()) {
        double from = bounds.getMinY();
        lines.add(new Line(Kind.PICTURE, from + part.top(), from + part.foot(), false));
      }
      if (picture.isWhole()) {
        lines.add(new Line(Kind.WHOLE, bounds.getMinY(), bounds.getMaxY(), false));
      }
    }
    if (node instanceof Text text) {
      add(bounds, bounds.getHeight() / lines(text));
    } else if (node instanceof ListCell<?> row) {
      addRow(row, bounds);
    } else if (isFramed(node)) {
      lines.add(new Line(Kind.FRAME, bounds.getMinY(), bounds.getMaxY(), node.isFocused()));
    } else if (node instanceof TwoColumns two && two.isSideBySide()) {
      for (Node one : two.getChildrenUnmodifiable()) {
        ColumnLines own = new ColumnLines(one);
        all.add(own);
        own.add(one, top, foot, all);
      }
    } else if (node instanceof Parent parent) {
      int before = lines.size();
      parent.getChildrenUnmodifiable().forEach(inside -> add(inside, top, foot, all));
      if (lines.size() > before) {
        keepTogether(node, bounds, lines.subList(before, lines.size()));
        if (isHeaded(parent)) {
          lines.add(headed(parent, bounds));
        }
      }
    }
  }

  /**
   * A row of a list is whole with what is above and below its words, as far as the list shows it.
   */
  private void addRow(ListCell<?> row, Bounds bounds) {
    ListView<?> list = row.getListView();
    if (row.isEmpty() || list == null) {
      return;
    }
    Bounds shown = list.localToScene(list.getLayoutBounds());
    double top = Math.max(bounds.getMinY(), shown.getMinY());
    double foot = Math.min(bounds.getMaxY(), shown.getMaxY());
    if (foot - top > SLACK) {
      lines.add(new Line(Kind.FRAME, top, foot, false));
    }
  }

  /** A rule is not left without the line that it is ruled for. */
  private static void keepTogether(Node node, Bounds bounds, List<Line> inside) {
    boolean list = node instanceof ListView<?>;
    if (list || node.getStyleClass().contains("ruled")) {
      double first = inside.stream().mapToDouble(Line::top).min().orElse(0);
      inside.replaceAll(
          line -> line.top() < first + SLACK ? line.beginningAt(bounds.getMinY()) : line);
    }
    if (list) {
      double last = inside.stream().mapToDouble(Line::foot).max().orElse(0);
      inside.replaceAll(
          line -> line.foot() > last - SLACK ? line.endingAt(bounds.getMaxY()) : line);
    }
  }

  /** A heading is not the last on a page: what it stands above begins there as well. */
  private static boolean isHeaded(Parent parent) {
    return (parent.getStyleClass().contains("ruled") || parent.getStyleClass().contains("headed"))
        && parent.getChildrenUnmodifiable().size() > 1
        && parent.getChildrenUnmodifiable().get(0).getStyleClass().contains("heading");
  }

  private static Line headed(Parent parent, Bounds bounds) {
    Node next =
        parent.getChildrenUnmodifiable().stream()
            .skip(1)
            .filter(below -> !below.getStyleClass().contains("roster-heads"))
            .findFirst()
            .orElse(parent);
    Node first = next instanceof ScrollPane table ? firstRow(table) : next;
    double begins = first.localToScene(first.getLayoutBounds()).getMinY();
    return new Line(Kind.HEADED, bounds.getMinY(), begins + free(first) + SLACK, false);
  }

  /** What a picture leaves free above its first part. */
  private static double free(Node node) {
    return node instanceof PictureParts picture
        ? picture.parts().stream().mapToDouble(PictureParts.Part::top).min().orElse(0)
        : 0;
  }

  /** The heads of a table are no more than its heading is. */
  private static Node firstRow(ScrollPane table) {
    return table.getContent() instanceof GridPane grid
        ? grid.getChildren().stream()
            .filter(cell -> Objects.equals(GridPane.getRowIndex(cell), 1))
            .findFirst()
            .orElse(grid)
        : table;
  }

  /** Its frame is not cut either; a choice has one while it has the focus, else lines of words. */
  private static boolean isFramed(Node node) {
    boolean choice = node instanceof RadioButton || node instanceof CheckBox;
    return (node instanceof ButtonBase && (!choice || node.isFocused()))
        || node instanceof TextInputControl
        || node instanceof ChoiceBox<?>;
  }

  private void add(Bounds bounds, double height) {
    for (double y = bounds.getMinY(); height > SLACK && y < bounds.getMaxY() - SLACK; y += height) {
      lines.add(new Line(Kind.WORDS, y, Math.min(y + height, bounds.getMaxY()), false));
    }
  }

  private static int lines(Text text) {
    double single = SINGLE.computeIfAbsent(text.getFont(), ColumnLines::single);
    return Math.max(1, (int) Math.round(text.getLayoutBounds().getHeight() / single));
  }

  private static double single(Font font) {
    Text one = new Text("x");
    one.setFont(font);
    return one.getLayoutBounds().getHeight();
  }
}
