package thinclick.client.window.look;

import java.util.HashMap;
import java.util.Map;
import javafx.geometry.Orientation;
import javafx.scene.layout.Pane;

/**
 * A pane that takes the width it is given and is then as high as what it shows needs there: never
 * less, so that nothing in it is cut.
 */
public abstract class WidthFirst extends Pane {
  /**
   * What was answered since something in it changed: panes above ask for each height several times,
   * and each of them asks all that is below.
   */
  private final Map<Double, Double> heights = new HashMap<>();

  /** How high it is at a width, both in pixels. */
  protected abstract double heightAt(double width);

  /** Puts what it shows in its places. */
  protected abstract void place();

  /** The width it would take where nobody gives it one, pixels. */
  @Override
  protected abstract double computePrefWidth(double height);

  /** None, so that no page is wider than the window; what breaks at no width says its own. */
  @Override
  protected double computeMinWidth(double height) {
    return 0;
  }

  @Override
  public final Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  public void requestLayout() {
    if (heights != null) { // while the pane itself is being made
      heights.clear();
    }
    super.requestLayout();
  }

  @Override
  protected final double computePrefHeight(double width) {
    double at = width < 0 ? prefWidth(-1) : width;
    Double known = heights.get(at);
    if (known == null) {
      known = heightAt(at);
      heights.put(at, known);
    }
    return known;
  }

  @Override
  protected final double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  /** What changes while it is laid out is not told upwards, so nothing is known after that. */
  @Override
  protected final void layoutChildren() {
    place();
    heights.clear();
  }
}
