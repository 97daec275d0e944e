package thinclick.client.window.look;

import javafx.css.PseudoClass;
import javafx.scene.layout.Region;

/**
 * Two columns side by side where both have the room they ask for at least, else one above the
 * other. The least widths are given in the stylesheet in ems, so that larger text stacks earlier.
 */
public final class TwoColumns extends WidthFirst {
  private static final PseudoClass STACKED = PseudoClass.getPseudoClass("stacked");

  private final Region left;
  private final Region right;
  private final double leftShare;
  private final double gap;

  /**
   * @param leftShare the share of the width that the left column takes, where that is more than the
   *     least it asks for
   */
  public TwoColumns(Region left, Region right, double leftShare, double gap) {
    this.left = left;
    this.right = right;
    this.leftShare = leftShare;
    this.gap = gap;
    getStyleClass().add("two-columns");
    getChildren().addAll(left, right);
  }

  private double leftWidth(double width) {
    return snapSizeX(Math.max(left.minWidth(-1), leftShare * (width - gap)));
  }

  /** True where they stand beside each other now. */
  boolean isSideBySide() {
    return sideBySide(getWidth());
  }

  private boolean sideBySide(double width) {
    return leftWidth(width) + gap + right.minWidth(-1) <= width;
  }

  @Override
  protected double computePrefWidth(double height) {
    return left.minWidth(-1) + gap + right.minWidth(-1);
  }

  @Override
  protected double heightAt(double width) {
    if (sideBySide(width)) {
      double leftWidth = leftWidth(width);
      return Math.max(left.prefHeight(leftWidth), right.prefHeight(width - gap - leftWidth));
    }
    return snapSizeY(left.prefHeight(width)) + gap / 2 + right.prefHeight(width);
  }

  @Override
  protected void place() {
    double width = getWidth();
    pseudoClassStateChanged(STACKED, !sideBySide(width));
    if (sideBySide(width)) {
      double leftWidth = leftWidth(width);
      left.resizeRelocate(0, 0, leftWidth, getHeight());
      right.resizeRelocate(leftWidth + gap, 0, width - gap - leftWidth, getHeight());
    } else {
      double leftHeight = snapSizeY(left.prefHeight(width));
      left.resizeRelocate(0, 0, width, leftHeight);
      right.resizeRelocate(0, leftHeight + gap / 2, width, right.prefHeight(width));
    }
  }
}
