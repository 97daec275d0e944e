package thinclick.client.window.look;

import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/**
 * The paper around a sheet. In a window that is lower by less than this paper is high it gives way
 * before the sheet does: what all but fits is not moved up and down.
 */
public final class Ground extends VBox {
  /** The share of its height that is kept. */
  private static final double KEPT = 0.25;

  private final Region sheet;

  public Ground(Region sheet) {
    super(sheet);
    this.sheet = sheet;
    setAlignment(Pos.TOP_CENTER);
    getStyleClass().add("page");
  }

  @Override
  protected double computeMinHeight(double width) {
    return prefHeight(width) - (1 - KEPT) * paper();
  }

  /** Above the sheet and below it, pixels. */
  private double paper() {
    Insets around = getInsets();
    return around.getTop() + around.getBottom();
  }

  @Override
  protected void layoutChildren() {
    super.layoutChildren();
    double missing = prefHeight(getWidth()) - getHeight();
    double paper = paper();
    if (missing > 0 && paper > 0) {
      double top = snapPositionY(getInsets().getTop() * Math.max(0, 1 - missing / paper));
      sheet.resizeRelocate(
          sheet.getLayoutX(), top, sheet.getWidth(), sheet.prefHeight(sheet.getWidth()));
    }
  }
}
