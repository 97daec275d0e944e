package thinclick.client.window.look;

import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ScrollPane;

/** Moves a page, at once, so that all of a part of it is in view. */
public final class InView {
  private static final double MARGIN = 24;

  private InView() {}

  /** Brings a part of a page into view; what is in view already stays. */
  public static void bring(Node node) {
    if (pageOf(node) instanceof ScrollPane pane) {
      pane.applyCss();
      pane.layout();
      double page = pane.getContent().getLayoutBounds().getHeight();
      double shown = pane.getViewportBounds().getHeight();
      Bounds part = pane.getContent().sceneToLocal(node.localToScene(node.getBoundsInLocal()));
      double top = pane.getVvalue() * (page - shown);
      if (page > shown && part.getMaxY() > top + shown) {
        pane.setVvalue(Math.min(1, (part.getMaxY() + MARGIN - shown) / (page - shown)));
      } else if (page > shown && part.getMinY() < top) {
        pane.setVvalue(Math.max(0, (part.getMinY() - MARGIN) / (page - shown)));
      }
    }
  }

  private static Node pageOf(Node node) {
    Parent above = node.getParent();
    while (above != null && !(above instanceof ScrollPane)) {
      above = above.getParent();
    }
    return above == null ? node : above;
  }
}
