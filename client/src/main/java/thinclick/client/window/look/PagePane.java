package thinclick.client.window.look;

import javafx.beans.value.ObservableValue;
import javafx.css.PseudoClass;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;

/**
 * What a page of the window stands in: moved up and down where it is higher. The bar that shows how
 * far keeps its place at the right on every page, drawn or not, so that all sheets stand alike.
 */
public final class PagePane extends ScrollPane {
  private static final PseudoClass WHOLE = PseudoClass.getPseudoClass("whole");

  private final ObservableValue<Bounds> page =
      contentProperty().flatMap(Node::layoutBoundsProperty);

  /** Without a page so far. */
  public PagePane() {
    getStyleClass().add("page-pane");
    setFitToWidth(true);
    setVbarPolicy(ScrollBarPolicy.ALWAYS);
    page.addListener(any -> look());
    viewportBoundsProperty().addListener(any -> look());
    AfterLayout.look(this, this::giveWay); // of another width it is as high only once laid out
  }

  public PagePane(Node page) {
    this();
    setContent(page);
  }

  @Override
  protected void layoutChildren() {
    giveWay();
    super.layoutChildren();
  }

  /** Where all of a sheet has room once the paper around it gives way, it does. */
  private void giveWay() {
    if (getContent() instanceof Ground ground) {
      Bounds shown = getViewportBounds();
      double width = shown.getWidth();
      boolean fits =
          ground.prefHeight(width) > shown.getHeight()
              && ground.minHeight(width) <= shown.getHeight();
      if (fits != isFitToHeight()) {
        setFitToHeight(fits);
        ground.requestLayout(); // else its height is kept
      }
    }
  }

  /** Where all of it is in view, there is nothing for the bar to show. */
  private void look() {
    Bounds all = page.getValue();
    boolean whole = all == null || all.getHeight() < getViewportBounds().getHeight() + 1;
    pseudoClassStateChanged(WHOLE, whole);
  }
}
