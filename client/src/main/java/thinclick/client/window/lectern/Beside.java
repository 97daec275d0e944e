package thinclick.client.window.lectern;

import javafx.scene.Node;
import javafx.scene.layout.Region;
import thinclick.client.window.look.WidthFirst;

/**
 * Words, and a picture beside them where that leaves them as much room as itself, else below; what
 * is said last stands under the words, but never between them and a picture below.
 */
final class Beside extends WidthFirst {
  private final Region words;
  private final Node picture;
  private final Region last;
  private final double gap;

  Beside(Region words, Node picture, Region last, double gap) {
    this.words = words;
    this.picture = picture;
    this.last = last;
    this.gap = gap;
    getChildren().addAll(words, picture, last);
  }

  private boolean beside(double width) {
    return picture.isManaged() && holdsBeside(width, picture.prefWidth(-1));
  }

  /** True where a picture so wide leaves as much room for the words as it takes itself. */
  boolean holdsBeside(double width, double wide) {
    return width - wide - gap >= wide;
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

  /** Where what is said last begins. */
  private double lastAt(double width) {
    double high = Math.ceil(words.prefHeight(Math.floor(wordsWidth(width))));
    boolean below = picture.isManaged() && !beside(width);
    return high + (below ? gap + Math.ceil(picture.prefHeight(-1)) : 0) + gap / 2;
  }

  @Override
  protected double heightAt(double width) {
    double wide = Math.floor(wordsWidth(width));
    double said =
        last.isManaged()
            ? lastAt(width) + Math.ceil(last.prefHeight(wide))
            : lastAt(width) - gap / 2;
    return beside(width) ? Math.max(said, picture.prefHeight(-1)) : said;
  }

  @Override
  protected void place() {
    double width = getWidth();
    double wide = Math.floor(wordsWidth(width));
    double high = Math.ceil(words.prefHeight(wide));
    words.resizeRelocate(0, 0, wide, high);
    if (beside(width)) {
      picture.relocate(wide + gap, 0);
    } else {
      picture.relocate(0, high + gap);
    }
    last.resizeRelocate(0, lastAt(width), wide, Math.ceil(last.prefHeight(wide)));
  }
}
