package thinclick.client.window.stand;

import javafx.scene.Node;
import javafx.scene.layout.FlowPane;

/**
 * Words beside each other, as wide as they are: a flow asks for a width of its own. Where they are
 * wider than their place they go on below.
 */
final class WordFlow extends FlowPane {
  WordFlow(Node... words) {
    super(words);
  }

  @Override
  protected double computePrefWidth(double height) {
    double wide = snappedLeftInset() + snappedRightInset();
    for (Node word : getManagedChildren()) {
      wide += snapSizeX(word.prefWidth(-1)) + snapSpaceX(getHgap());
    }
    double all = Math.max(0, wide - snapSpaceX(getHgap())) + 1;
    return getMaxWidth() > 0 ? Math.min(all, getMaxWidth()) : all;
  }

  @Override
  protected double computePrefHeight(double width) {
    return super.computePrefHeight(width < 0 ? prefWidth(-1) : width);
  }
}
