package thinclick.client.window.look;

import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.shape.LineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.PathElement;
import javafx.scene.text.Text;

/**
 * Where the lines of a page stand, text and what is pressed or written in, from its upper edge: so
 * that a page is moved from line to line, and none is cut in two at an edge.
 */
final class PageLines {
  /** So much of a line's height is air, pixels; no more than where lines are kept whole. */
  private static final double AIR = ColumnLines.SLACK;

  private final List<Line> lines = new ArrayList<>();
  private final Node page;

  private record Line(double top, double bottom) {
    boolean isCutAt(double y) {
      return top + AIR < y && y < bottom - AIR;
    }
  }

  private PageLines(Node page) {
    this.page = page;
  }

  /** The lines of a page as it is laid out now. */
  static PageLines of(Node page) {
    PageLines found = new PageLines(page);
    found.gather(page);
    return found;
  }

  private void gather(Node node) {
    if (!node.isVisible()) {
      return;
    }
    if (node instanceof Text text) {
      addEach(text);
    } else if (node instanceof Button
        || node instanceof TextField
        || node instanceof ChoiceBox
        || node instanceof ListView) {
      Bounds whole = at(node);
      lines.add(new Line(whole.getMinY() - AIR, whole.getMaxY() + AIR)); // its edge is to be seen
    } else if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(this::gather);
    }
  }

  /** The shape of a selection of all of a text is a rectangle a line. */
  private void addEach(Text text) {
    double top = Double.NaN;
    double bottom = Double.NaN;
    for (PathElement element : text.rangeShape(0, text.getText().length())) {
      if (element instanceof MoveTo next) {
        add(text, top, bottom);
        top = next.getY();
        bottom = next.getY();
      } else if (element instanceof LineTo corner) {
        top = Math.min(top, corner.getY());
        bottom = Math.max(bottom, corner.getY());
      }
    }
    add(text, top, bottom);
  }

  private void add(Text text, double top, double bottom) {
    if (bottom > top) {
      lines.add(new Line(onPage(text, top), onPage(text, bottom)));
    }
  }

  private double onPage(Text text, double y) {
    return page.sceneToLocal(text.localToScene(0, y)).getY();
  }

  private Bounds at(Node node) {
    return page.sceneToLocal(node.localToScene(node.getLayoutBounds()));
  }

  /** True where an edge there, in pixels from the page's upper one, cuts a line in two. */
  boolean areCutAt(double y) {
    return lines.stream().anyMatch(line -> line.isCutAt(y));
  }

  /**
   * Where the page is best moved to: as near as can be to what is wanted, with no line cut at the
   * upper edge, nor at the lower where that can be had too. All in pixels from the page's upper
   * edge.
   *
   * @param wanted the upper edge of what is shown, where lines did not matter
   * @param earliest the upper edge is not to be above this
   * @param latest the upper edge is not to be below this
   * @param shown how much of the page is in view
   */
  double between(double wanted, double earliest, double latest, double shown) {
    double nearest = nearest(wanted, earliest, latest, List.of(0.0, shown));
    if (Double.isNaN(nearest)) {
      nearest = nearest(wanted, earliest, latest, List.of(0.0));
    }
    return Double.isNaN(nearest) ? wanted : nearest;
  }

  private double nearest(double wanted, double earliest, double latest, List<Double> edges) {
    double found = Double.NaN;
    for (double y = Math.max(0, Math.ceil(earliest)); y <= latest; y++) {
      double upper = y;
      boolean cut = edges.stream().anyMatch(edge -> areCutAt(upper + edge));
      if (!cut && !(Math.abs(y - wanted) >= Math.abs(found - wanted))) {
        found = y;
      }
    }
    return found;
  }
}
