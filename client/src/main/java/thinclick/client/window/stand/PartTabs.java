package thinclick.client.window.stand;

import javafx.scene.Node;
import javafx.scene.layout.FlowPane;

/** Words to choose a part by: as wide as they are, since a flow asks for a width of its own. */
final class PartTabs extends FlowPane {
  @Override
  protected double computePrefWidth(double height) {
    double wide = snappedLeftInset() + snappedRightInset();
    for (Node word : getManagedChildren()) {
      wide += snapSizeX(word.prefWidth(-1)) + snapSpaceX(getHgap());
    }
    return Math.max(0, wide - snapSpaceX(getHgap())) + 1;
  }

  @Override
  protected double computePrefHeight(double width) {
    return super.computePrefHeight(width < 0 ? prefWidth(-1) : width);
  }
}
