package thinclick.client.window.lectern;

import javafx.scene.Node;
import javafx.scene.layout.Region;
import thinclick.client.window.look.WidthFirst;

/** Words, and a picture beside them where that leaves them as much room as itself, else below. */
final class Beside extends WidthFirst {
  private final Region words;
  private final Node picture;
  private final double gap;

  Beside(Region words, Node picture, double gap) {
    this.words = words;
    this.picture = picture;
    this.gap = gap;
    getChildren().addAll(words, picture);
  }

  private boolean beside(double width) {
    double wide = picture.prefWidth(-1);
    return picture.isManaged() && width - wide - gap >= wide;
  }

  private double wordsWidth(double width) {
    return beside(width) ? width - picture.prefWidth(-1) - gap : width;
  }

  @Override
  protected double computeMinWidth(double height) {
    return picture.isManaged() ? picture.minWidth(-1) : 0;
  }

  @Override
  protected double computePrefWidth(double height) {
    return words.prefWidth(-1);
  }

  @Override
  protected double heightAt(double width) {
    double high = words.prefHeight(wordsWidth(width));
    if (!picture.isManaged()) {
      return high;
    }
    double drawn = picture.prefHeight(-1);
    return beside(width) ? Math.max(high, drawn) : high + gap + drawn;
  }

  @Override
  protected void layoutChildren() {
    double width = getWidth();
    double wide = Math.floor(wordsWidth(width));
    double high = Math.ceil(words.prefHeight(wide));
    words.resizeRelocate(0, 0, wide, high);
    if (beside(width)) {
      picture.relocate(wide + gap, 0);
    } else {
      picture.relocate(0, high + gap);
    }
  }
}
