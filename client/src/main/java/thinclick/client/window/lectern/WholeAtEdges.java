package thinclick.client.window.lectern;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Control;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.shape.Rectangle;
import thinclick.client.window.look.AfterLayout;

/**
 * A page that is moved begins and ends with whole rows: what its edges would cut is not drawn until
 * all of it is in view, nor, at the lower one, what stands beside it. A list ends with whole rows
 * of its own; what is higher than a third of the page is cut all the same, and what has the cursor
 * at the upper edge.
 */
final class WholeAtEdges {
  private static final double HIGHEST = 1 / 3.0;

  /** A part of a pixel that nobody sees missing. */
  private static final double SLACK = 1;

  private final ScrollPane pane;
  private final KeptAtFoot last;

  private WholeAtEdges(ScrollPane pane, KeptAtFoot last) {
    this.pane = pane;
    this.last = last;
  }

  /**
   * Keeps a page so from now on.
   *
   * @param last what is kept at the foot of one part: the rows of that part end above it
   */
  static void keep(ScrollPane pane, KeptAtFoot last) {
    WholeAtEdges kept = new WholeAtEdges(pane, last);
    AfterLayout.look(pane, kept::look);
  }

  private void look() {
    if (pane.getContent() instanceof Parent content) {
      double high = pane.getViewportBounds().getHeight();
      double upper = pane.localToScene(0, pane.getInsets().getTop()).getY();
      under(content, upper, upper + high, high * HIGHEST);
    }
  }

  /** What stands beside what is cut goes with it; what stands above it stays. */
  private void under(Parent parent, double upper, double edge, double highest) {
    List<Node> rows = new ArrayList<>();
    double from = edge;
    for (Node node : parent.getChildrenUnmodifiable()) {
      if (isRow(node)) {
        rows.add(node);
        if (isCut(node, edge) && height(node) <= highest) {
          from = Math.min(from, top(node));
        }
      } else if (node instanceof ListView<?> list && list.isManaged()) {
        rowsOf(list, upper, edge);
      } else if (node.isManaged() && node instanceof Parent deeper && !(node instanceof Control)) {
        double foot = deeper == last.rows() ? last.place(pane, edge) : edge;
        under(deeper, upper, foot, highest);
      }
    }
    for (Node row : rows) {
      boolean above = isCutAt(row, upper) && !row.isFocused();
      boolean below = from < edge && bottom(row) > from + SLACK;
      draw(row, (!above && !below) || height(row) > highest);
    }
  }

  private static void rowsOf(ListView<?> list, double upper, double edge) {
    for (Node row : list.lookupAll(".list-cell")) {
      draw(row, !isCutAt(row, upper) && !isCutAt(row, edge));
    }
  }

  private static boolean isCutAt(Node row, double y) {
    return top(row) < y - SLACK && bottom(row) > y + SLACK;
  }

  private static boolean isRow(Node node) {
    boolean leaf = node instanceof Canvas || node instanceof Control;
    return leaf && node.isManaged() && !(node instanceof ListView<?>);
  }

  private static void draw(Node row, boolean wanted) {
    if (wanted != (row.getClip() == null)) {
      row.setClip(wanted ? null : new Rectangle()); // takes no press either, and stays laid out
    }
  }

  private static boolean isCut(Node row, double edge) {
    double seen = edge - top(row);
    return seen > 0 && seen < height(row) - SLACK;
  }

  private static double height(Node node) {
    return node.getLayoutBounds().getHeight();
  }

  private static double top(Node node) {
    return node.localToScene(0, node.getLayoutBounds().getMinY()).getY();
  }

  private static double bottom(Node node) {
    return node.localToScene(0, node.getLayoutBounds().getMaxY()).getY();
  }
}
