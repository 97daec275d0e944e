package thinclick.client.window.look;

import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.PathElement;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import org.jspecify.annotations.Nullable;
import thinclick.server.words.Unbroken;

/**
 * Words that go on in another line as in a well set book: every line is filled, and the last of
 * them is no lone short word. Where it would be, the lines above are broken so much earlier that
 * another word comes down to it, and no more; nor are they ever more lines.
 */
public final class Prose {
  /** A word that takes a greater share of the width may stand alone in the last line. */
  static final double SHORT = 0.25;

  /** How much narrower is tried, each time. */
  private static final double NARROWER = 0.99;

  private static final double NARROWEST = 0.8;

  private final Text text;
  private boolean setting;

  private Prose(Text text) {
    this.text = text;
  }

  /** A label that says this over as many lines as it takes. */
  public static Label of(String said) {
    return in(new Label(Unbroken.of(said)));
  }

  /** Lets a label, a box to tick or a choice be set so. */
  public static <L extends Labeled> L in(L labeled) {
    labeled.setWrapText(true);
    labeled.skinProperty().addListener(any -> follow(labeled));
    return labeled;
  }

  private static void follow(Labeled labeled) {
    for (Node inside : labeled.getChildrenUnmodifiable()) {
      if (inside instanceof Text text) {
        Prose prose = new Prose(text);
        // The skin gives the width anew whenever it or the words have changed.
        text.wrappingWidthProperty().addListener((any, old, now) -> prose.set(now.doubleValue()));
      }
    }
  }

  private void set(double width) {
    if (setting || width <= 0 || text.getText().isEmpty()) {
      return;
    }
    setting = true;
    if (endsInALoneWord(width)) {
      double height = height();
      double narrowest = Math.max(NARROWEST * width, longestWord());
      double tried = NARROWER * width;
      text.setWrappingWidth(tried);
      while (height() <= height + 1 && endsInALoneWord(width) && tried * NARROWER > narrowest) {
        tried *= NARROWER;
        text.setWrappingWidth(tried);
      }
      if (height() > height + 1 || endsInALoneWord(width)) {
        text.setWrappingWidth(width);
      }
    }
    setting = false;
  }

  /** In whole pixels, and one more against a break by rounding. */
  private double longestWord() {
    return Math.ceil(longestWord(text.getText(), text.getFont())) + 1;
  }

  /** The width of the longest word, pixels: set narrower, a text would be broken inside it. */
  public static double longestWord(String said, Font font) {
    double longest = 0;
    for (String word : said.split("\\s+", -1)) {
      Text alone = new Text(word);
      alone.setFont(font);
      longest = Math.max(longest, alone.getLayoutBounds().getWidth());
    }
    return longest;
  }

  private double height() {
    Bounds bounds = text.getLayoutBounds();
    return bounds.getHeight();
  }

  /** A short one, below another line. */
  private boolean endsInALoneWord(double width) {
    String said = text.getText().stripTrailing();
    int before = said.lastIndexOf(' ');
    Point2D above = before < 1 ? null : at(before);
    Point2D begins = before < 1 ? null : at(before + 1);
    Point2D ends = at(said.length());
    return above != null
        && begins != null
        && ends != null
        && begins.getY() > above.getY() + 1
        && ends.getX() - begins.getX() < SHORT * width;
  }

  /** Where a letter begins. */
  private @Nullable Point2D at(int letter) {
    PathElement[] caret = text.caretShape(letter, true);
    return caret.length > 0 && caret[0] instanceof MoveTo start
        ? new Point2D(start.getX(), start.getY())
        : null;
  }
}
