package thinclick.client.window.look;

import javafx.geometry.Bounds;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/**
 * A page whose last line, with what one goes on with, is in view in a window of any size: where it
 * belongs as long as it is in view there together with what it is about, else at the foot below the
 * page, which is moved above it.
 */
public final class FootedPage extends VBox {
  private final PagePane page;
  private final Node about;
  private final VBox place;
  private final Region last;
  private final VBox card = new VBox();
  private final VBox foot = new VBox(card);

  /**
   * @param about what is to be in view together with the last line, from its upper edge on
   * @param place where that line stands as the last one
   */
  public FootedPage(PagePane page, Node about, VBox place, Region last) {
    this.page = page;
    this.about = about;
    this.place = place;
    this.last = last;
    card.getStyleClass().add("page-foot");
    foot.setMinHeight(USE_PREF_SIZE); // the page gives way, and no words
    setVgrow(page, Priority.ALWAYS);
    getChildren().add(page);
    if (last.getParent() != place) {
      place.getChildren().add(last);
    }
    AfterLayout.look(this, this::look);
  }

  private boolean atFoot() {
    return last.getParent() == card;
  }

  private void look() {
    // The sheet goes on below the page, and what it is about begins as far from the left.
    Bounds sheet = sheet().localToScene(sheet().getLayoutBounds());
    double left = Math.rint(place.localToScene(place.getInsets().getLeft(), 0).getX());
    setLeft(last, atFoot() ? left - sheet.getMinX() : 0);
    setLeft(card, sheet.getMinX());
    card.setMaxWidth(sheet.getWidth());
    boolean wanted = last.isVisible() && needed() > page.getViewportBounds().getHeight() + foot();
    if (wanted == atFoot()) {
      return;
    }
    Node cursor = last.isFocusWithin() ? getScene().getFocusOwner() : null;
    if (wanted) {
      card.getChildren().add(last); // and so taken out of its place
      getChildren().add(foot);
    } else {
      getChildren().remove(foot);
      place.getChildren().add(last);
    }
    if (cursor != null) {
      cursor.requestFocus();
    }
  }

  /** Only where it is another: whatever is set is laid out once more. */
  private static void setLeft(Node node, double left) {
    Insets wanted = new Insets(0, 0, 0, left);
    if (!wanted.equals(VBox.getMargin(node))) {
      VBox.setMargin(node, wanted);
    }
  }

  /** On which it stands; without one, its own place. */
  private Node sheet() {
    Node at = place;
    while (at != null && !at.getStyleClass().contains("sheet")) {
      at = at.getParent();
    }
    return at == null ? place : at;
  }

  private double foot() {
    return atFoot() ? foot.getHeight() : 0;
  }

  /** As high as it is from the upper edge of what it is about to the end of the last line. */
  private double needed() {
    Bounds from = about.localToScene(about.getLayoutBounds());
    Bounds to = place.localToScene(place.getLayoutBounds());
    double high = place.prefHeight(place.getWidth());
    double more = atFoot() ? place.getSpacing() + last.prefHeight(place.getWidth()) : 0;
    return to.getMinY() - from.getMinY() + high + more;
  }
}
