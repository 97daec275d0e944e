package thinclick.client.window.lectern;

import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.Region;

/**
 * The last lines of a part that goes on below the window: they are kept at the page's lower edge,
 * over the rows that would stand there, as long as the part's first row is above them. A row that
 * the cursor goes to comes out from under them.
 */
final class KeptAtFoot {
  private final Region rows;
  private final Region last;
  private boolean cursorMoved;

  /**
   * @param rows what stands above them, in a page that is moved
   * @param last the lines that are kept, in the same part and after the rows
   */
  KeptAtFoot(Region rows, Region last) {
    this.rows = rows;
    this.last = last;
    rows.sceneProperty().addListener((any, old, now) -> follow(now));
  }

  private void follow(Scene scene) {
    if (scene != null) {
      scene.focusOwnerProperty().addListener((any, old, now) -> cursorMoved = true);
    }
  }

  /** What stands above the lines that are kept. */
  Region rows() {
    return rows;
  }

  /**
   * Puts them in place once the page is laid out.
   *
   * @param edge where the page ends below, pixels of the scene
   * @return where the rows end below, likewise
   */
  double place(ScrollPane page, double edge) {
    double high = last.getHeight();
    double own = last.localToScene(0, 0).getY() - last.getTranslateY();
    double first = rows.localToScene(0, 0).getY() + high;
    double top = Math.floor(Math.max(Math.min(own, first), Math.min(own, edge - high)));
    double up = top - own;
    if (last.getTranslateY() != up) {
      last.setTranslateY(up);
    }
    if (cursorMoved) {
      cursorMoved = false;
      bringOut(page, top);
    }
    return up < 0 ? top : edge;
  }

  private void bringOut(ScrollPane page, double top) {
    Scene scene = rows.getScene();
    Node cursor = scene == null ? null : scene.getFocusOwner();
    if (cursor == null || cursor.getParent() != rows) {
      return;
    }
    double under = cursor.localToScene(0, cursor.getLayoutBounds().getMaxY()).getY() - top;
    double moves =
        page.getContent().getLayoutBounds().getHeight() - page.getViewportBounds().getHeight();
    if (under > 0 && moves > 0) {
      page.setVvalue(Math.min(1, page.getVvalue() + under / moves));
    }
  }
}
