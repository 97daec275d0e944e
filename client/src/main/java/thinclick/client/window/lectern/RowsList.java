package thinclick.client.window.lectern;

import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.control.IndexedCell;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollBar;
import javafx.scene.control.skin.VirtualFlow;
import org.jspecify.annotations.Nullable;

/** A list as high as some whole rows of it: none is cut at its lower edge. */
final class RowsList<T> extends ListView<T> {
  /** A row's height, pixels, until there are rows. */
  private static final double FIRST_GUESS = 30;

  private final Runnable moved;
  private int rows = 1;
  private @Nullable ScrollBar watched;

  /**
   * @param moved what is done when other rows may be in view
   */
  RowsList(Runnable moved) {
    this.moved = moved;
    getStyleClass().add("rows-list");
  }

  /** How many rows are to be in view, 1 at least. */
  void rows(int wanted) {
    if (rows != wanted) {
      rows = wanted;
      requestLayout();
    }
  }

  /** How many rows lie below those in view. */
  int below() {
    VirtualFlow<?> flow = flow();
    IndexedCell<?> last = flow == null ? null : flow.getLastVisibleCell();
    return last == null ? 0 : Math.max(0, getItems().size() - 1 - last.getIndex());
  }

  /** How many rows lie above the last ones, which fill the list. */
  int aboveTheLast() {
    return Math.max(0, getItems().size() - rows);
  }

  private @Nullable VirtualFlow<?> flow() {
    return lookup(".virtual-flow") instanceof VirtualFlow<?> flow ? flow : null;
  }

  @Override
  protected double computePrefHeight(double width) {
    double edges = snappedTopInset() + snappedBottomInset();
    VirtualFlow<?> flow = flow();
    if (flow == null || flow.getCellCount() == 0) {
      return edges + rows * FIRST_GUESS;
    }
    double height = 0;
    for (int i = 0; i < rows; i++) {
      IndexedCell<?> cell = flow.getCell(Math.min(i, flow.getCellCount() - 1));
      height += Math.max(cell.minHeight(-1), cell.prefHeight(-1));
    }
    return edges + Math.ceil(height);
  }

  @Override
  protected double computeMinHeight(double width) {
    return prefHeight(width);
  }

  @Override
  protected double computeMaxHeight(double width) {
    return prefHeight(width);
  }

  @Override
  protected void layoutChildren() {
    super.layoutChildren();
    if (watched == null) {
      watch();
    }
    moved.run();
  }

  private void watch() {
    for (Node node : lookupAll(".scroll-bar")) {
      if (node instanceof ScrollBar bar && bar.getOrientation() == Orientation.VERTICAL) {
        watched = bar;
        bar.valueProperty().addListener(any -> moved.run());
      }
    }
  }
}
