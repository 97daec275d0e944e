package thinclick.client.window.look;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.ListView;
import javafx.scene.control.TextInputControl;
import javafx.scene.text.Font;
import javafx.scene.text.Text;

/** The lines of one column of a sheet, as they stand in the window. */
final class ColumnLines {
  /** A part of a pixel that nobody sees missing. */
  private static final double SLACK = 1;

  /** So far below the edge of the page the line may stand that a rule in view is ruled for. */
  private static final double REACH = 100;

  /** How high one line is: a page is looked at after each layout, and its fonts are few. */
  private static final Map<Font, Double> SINGLE = new HashMap<>();

  private final Node column;
  private final List<Line> lines = new ArrayList<>();

  /**
   * A line of words in the window.
   *
   * @param begins its upper edge with the rule that stands above it, in the scene
   * @param top its own upper edge
   * @param foot its lower edge
   * @param ends its lower edge with the rule that closes what it is the last line of
   * @param focused whether it is a control that has the focus
   */
  private record Line(double begins, double top, double foot, double ends, boolean focused) {
    Line(double top, double foot, boolean focused) {
      this(top, top, foot, foot, focused);
    }

    Line beginningAt(double y) {
      return new Line(Math.min(y, begins), top, foot, ends, focused);
    }

    Line endingAt(double y) {
      return new Line(begins, top, foot, Math.max(y, ends), focused);
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

  /** Where the first whole line below the upper edge of the page begins, or at the edge. */
  double from(double edge) {
    double from = edge;
    // What stands beside a line that is covered may reach further than it.
    for (boolean moved = true; moved; ) {
      moved = false;
      for (Line line : lines) {
        if (line.top() < from - SLACK && line.ends() > from + SLACK) {
          from = line.ends();
          moved = true;
        }
      }
    }
    return from;
  }

  /** Where the last whole line above the lower edge of the page is over, or at the edge. */
  double to(double edge) {
    double to = edge;
    for (boolean moved = true; moved; ) {
      moved = false;
      for (Line line : lines) {
        if (line.begins() < to - SLACK && line.foot() > to + SLACK) {
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
    if (node instanceof Text text) {
      add(bounds, bounds.getHeight() / lines(text));
    } else if (node instanceof WholeLines.Rows rows) {
      add(bounds, rows.rowHeight());
    } else if (isFramed(node)) {
      lines.add(new Line(bounds.getMinY(), bounds.getMaxY(), node.isFocused()));
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
      }
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

  /** Its frame is not cut either. */
  private static boolean isFramed(Node node) {
    return node instanceof ButtonBase
        || node instanceof TextInputControl
        || node instanceof ChoiceBox<?>;
  }

  private void add(Bounds bounds, double height) {
    for (double y = bounds.getMinY(); height > SLACK && y < bounds.getMaxY() - SLACK; y += height) {
      lines.add(new Line(y, Math.min(y + height, bounds.getMaxY()), false));
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
