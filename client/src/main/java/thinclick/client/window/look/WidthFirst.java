package thinclick.client.window.look;

import javafx.geometry.Orientation;
import javafx.scene.layout.Pane;

/**
 * A pane that takes the width it is given and is then as high as what it shows needs there: never
 * less, so that nothing in it is cut.
 */
public abstract class WidthFirst extends Pane {
  /** How high it is at a width, both in pixels. */
  protected abstract double heightAt(double width);

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
  protected final double computePrefHeight(double width) {
    return heightAt(width < 0 ? prefWidth(-1) : width);
  }

  @Override
  protected final double computeMinHeight(double width) {
    return computePrefHeight(width);
  }
}
