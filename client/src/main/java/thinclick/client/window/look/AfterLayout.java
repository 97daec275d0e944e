package thinclick.client.window.look;

import javafx.scene.Node;
import javafx.scene.Scene;
import org.jspecify.annotations.Nullable;

/** Looks at what stands in a window each time after it has been laid out. */
public final class AfterLayout {
  private AfterLayout() {}

  /** Does something after each layout of the window in which a node stands, as long as it does. */
  public static void look(Node node, Runnable does) {
    node.sceneProperty().addListener((any, old, now) -> move(does, old, now));
    move(does, null, node.getScene());
  }

  private static void move(Runnable does, @Nullable Scene old, @Nullable Scene now) {
    if (old != null) {
      old.removePostLayoutPulseListener(does);
    }
    if (now != null) {
      now.addPostLayoutPulseListener(does);
    }
  }
}
