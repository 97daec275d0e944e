package thinclick.client.window.look;

import javafx.geometry.Bounds;
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
 * Words that go on in another line as in a well set book: in as few lines as the width asks for,
 * and the last of them is no lone word. Where it would be, the lines above are broken earlier.
 */
public final class Prose {
  /** The least share of the width that a last line takes, where breaking earlier can bring it. */
  static final double LEAST_LAST = 0.25;

  /** How much narrower is tried, each time. */
  private static final double NARROWER = 0.97;

  private static final double NARROWEST = 0.6;

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
    double height = height();
    double tried = width;
    Double last = lastLine();
    boolean better = last != null && last < LEAST_LAST * width;
    double narrowest = better ? Math.max(NARROWEST * width, longestWord() / NARROWER) : 0;
    while (better && last != null && last < LEAST_LAST * width && tried > narrowest) {
      double kept = tried;
      tried *= NARROWER;
      text.setWrappingWidth(tried);
      if (height() > height + 1) {
        text.setWrappingWidth(kept);
        better = false;
      }
      last = lastLine();
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

  /** How far the last of several lines goes, pixels; null where there is one alone. */
  private @Nullable Double lastLine() {
    PathElement[] first = text.caretShape(0, true);
    PathElement[] last = text.caretShape(text.getText().length(), true);
    if (first.length > 0
        && last.length > 0
        && first[0] instanceof MoveTo start
        && last[0] instanceof MoveTo end
        && end.getY() > start.getY() + 1) {
      return end.getX() - start.getX();
    }
    return null;
  }
}
