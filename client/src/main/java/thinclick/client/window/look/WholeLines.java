package thinclick.client.window.look;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.text.Font;
import javafx.scene.text.Text;

/**
 * A sheet that is moved up and down begins and ends with whole lines: a line of words that an edge
 * of the window would cut is covered by the sheet's own paper until all of it is in view. Pictures
 * go on under the edge, their words do not.
 */
public final class WholeLines {
  /** A part of a pixel that nobody sees missing. */
  private static final double SLACK = 1;

  /** Nothing covers more of the page than this, whatever stands on it. */
  private static final double MOST = 0.25;

  /** How high one line is: a page is looked at after each layout, and its fonts are few. */
  private static final Map<Font, Double> SINGLE = new HashMap<>();

  private final ScrollPane pane;
  private final Region sheet;
  private final Region above = cover();
  private final Region below = cover();

  /** A picture that is painted in rows, which are not cut either. */
  public interface Rows {
    /** The height of each, from the top; what lies below the last is one more. */
    double rowHeight();
  }

  /**
   * A line of words in the window.
   *
   * @param top its upper edge, in the scene
   * @param foot its lower edge
   * @param focused whether it is a control that has the focus
   */
  private record Line(double top, double foot, boolean focused) {
    boolean isCutAt(double y) {
      return top < y - SLACK && foot > y + SLACK;
    }
  }

  private WholeLines(ScrollPane pane, Region sheet) {
    this.pane = pane;
    this.sheet = sheet;
  }

  /**
   * Keeps the lines of a sheet whole from now on.
   *
   * @param page what the pane moves
   * @param sheet on the page
   */
  public static void keep(ScrollPane pane, Pane page, Region sheet) {
    WholeLines kept = new WholeLines(pane, sheet);
    page.getChildren().addAll(kept.above, kept.below);
    AfterLayout.look(pane, kept::look);
  }

  private static Region cover() {
    Region cover = new Region();
    cover.getStyleClass().add("sheet-cover");
    cover.setManaged(false);
    cover.setMouseTransparent(true);
    return cover;
  }

  private void look() {
    double high = pane.getViewportBounds().getHeight();
    double top = pane.localToScene(0, pane.getInsets().getTop()).getY();
    double foot = top + high;
    List<Line> lines = new ArrayList<>();
    add(sheet, top, foot, lines);
    double from = top;
    double to = foot;
    // What stands beside a line that is covered may reach further than it.
    for (boolean moved = true; moved; ) {
      moved = false;
      for (Line line : lines) {
        if (line.isCutAt(from)) {
          from = line.foot();
          moved = true;
        } else if (line.isCutAt(to)) {
          to = line.top();
          moved = true;
        }
      }
    }
    boolean begins = from - top <= MOST * high && !hidesFocus(lines, top, from);
    boolean ends = foot - to <= MOST * high && !hidesFocus(lines, to, foot);
    lay(above, top, begins ? Math.rint(from) : top);
    lay(below, ends ? Math.rint(to) : foot, foot);
  }

  /** What has the focus stays in view, whatever is cut beside it. */
  private static boolean hidesFocus(List<Line> lines, double from, double to) {
    return lines.stream()
        .anyMatch(line -> line.focused() && line.foot() > from + SLACK && line.top() < to - SLACK);
  }

  private void lay(Region cover, double from, double to) {
    cover.setVisible(to > from);
    Parent page = sheet.getParent();
    if (to > from && page != null) {
      Point2D upper = page.sceneToLocal(0, from);
      Bounds bounds = sheet.getBoundsInParent();
      cover.resizeRelocate(
          bounds.getMinX() + 1, upper.getY(), Math.max(0, bounds.getWidth() - 2), to - from);
    }
  }

  private static void add(Node node, double top, double foot, List<Line> lines) {
    Bounds bounds = node.localToScene(node.getLayoutBounds());
    if (!node.isVisible() || bounds.getMaxY() < top || bounds.getMinY() > foot) {
      return;
    }
    if (node instanceof Text text) {
      add(bounds, bounds.getHeight() / lines(text), lines);
    } else if (node instanceof Rows rows) {
      add(bounds, rows.rowHeight(), lines);
    } else if (isFramed(node)) {
      lines.add(new Line(bounds.getMinY(), bounds.getMaxY(), node.isFocused()));
    } else if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(inside -> add(inside, top, foot, lines));
    }
  }

  /** Its frame is not cut either. */
  private static boolean isFramed(Node node) {
    return node instanceof ButtonBase
        || node instanceof TextInputControl
        || node instanceof ChoiceBox<?>;
  }

  private static void add(Bounds bounds, double height, List<Line> lines) {
    for (double y = bounds.getMinY(); height > SLACK && y < bounds.getMaxY() - SLACK; y += height) {
      lines.add(new Line(y, Math.min(y + height, bounds.getMaxY()), false));
    }
  }

  private static int lines(Text text) {
    double single = SINGLE.computeIfAbsent(text.getFont(), WholeLines::single);
    return Math.max(1, (int) Math.round(text.getLayoutBounds().getHeight() / single));
  }

  private static double single(Font font) {
    Text one = new Text("x");
    one.setFont(font);
    return one.getLayoutBounds().getHeight();
  }
}
