package thinclick.client.window.stand;

import java.util.function.Consumer;
import javafx.beans.value.ObservableValue;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.stage.Screen;
import javafx.stage.Window;
import org.jspecify.annotations.Nullable;

/**
 * The pixels of the screen on which a window is drawn.
 *
 * @param each how many of them stand for one of the window
 */
public record DevicePixels(double each) {
  /** One for one. */
  static final DevicePixels ALIKE = new DevicePixels(1);

  /** Those of the screen on which windows open first. */
  public static DevicePixels primary() {
    return new DevicePixels(Screen.getPrimary().getOutputScaleY());
  }

  /**
   * Tells of those of the window in which a node stands, now and whenever it comes into another or
   * the window is moved to a screen of another scale.
   */
  public static void follow(Node node, Consumer<DevicePixels> told) {
    ObservableValue<Number> scale =
        node.sceneProperty().flatMap(Scene::windowProperty).flatMap(Window::renderScaleYProperty);
    scale.addListener((any, old, now) -> tell(now, told));
    tell(scale.getValue(), told);
  }

  /** Out of every window it stays as it was. */
  private static void tell(@Nullable Number scale, Consumer<DevicePixels> told) {
    if (scale != null) {
      told.accept(new DevicePixels(scale.doubleValue()));
    }
  }

  /** The nearest place at which a whole one begins, in pixels of the window. */
  double nearest(double at) {
    return Math.rint(at * each) / each;
  }
}
