package thinclick.client.window;

import javafx.application.Platform;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;

/** Notices when a window stands still: two layouts that moved nothing, one after the other. */
final class Stillness {
  private static final int ENOUGH = 2;

  private final Scene scene;
  private final Runnable laidOut = this::look;
  private int before;
  private int unmoved = -1;
  private volatile boolean reached;

  Stillness(Scene scene) {
    this.scene = scene;
  }

  /** On the window's thread, as is its end. */
  boolean begin() {
    scene.addPostLayoutPulseListener(laidOut);
    Platform.requestNextPulse();
    return true;
  }

  boolean end() {
    scene.removePostLayoutPulseListener(laidOut);
    return true;
  }

  boolean reached() {
    return reached;
  }

  private void look() {
    int now = places(scene.getRoot());
    unmoved = unmoved < 0 || now != before ? 0 : unmoved + 1;
    before = now;
    reached |= unmoved >= ENOUGH;
    if (!reached) {
      Platform.requestNextPulse();
    }
  }

  private static int places(Node node) {
    if (!node.isVisible()) {
      return 0;
    }
    Bounds bounds = node.getLayoutBounds();
    int places = bounds.hashCode();
    places = 31 * places + Double.hashCode(node.getLayoutX());
    places = 31 * places + Double.hashCode(node.getLayoutY());
    if (node instanceof Parent parent) {
      for (Node child : parent.getChildrenUnmodifiable()) {
        places = 31 * places + places(child);
      }
    }
    return places;
  }
}
