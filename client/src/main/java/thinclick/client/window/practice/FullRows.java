package thinclick.client.window.practice;

import javafx.scene.control.ListView;

/** A list that takes no more of the height it is given than whole rows fill. */
final class FullRows<T> extends ListView<T> {
  FullRows() {
    getStyleClass().add("full-rows");
  }

  /** The rows' height stands in the stylesheet; until it is known the list is as high as given. */
  @Override
  public void resize(double width, double height) {
    double row = getFixedCellSize();
    double edges = snappedTopInset() + snappedBottomInset();
    boolean known = row > 0 && height >= row + edges;
    super.resize(
        width, known ? Math.ceil(Math.floor((height - edges) / row) * row) + edges : height);
  }
}
