package thinclick.client.window;

import java.util.HashMap;
import java.util.Map;
import javafx.css.PseudoClass;
import javafx.geometry.Orientation;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import thinclick.client.window.FootWidths.Span;
import thinclick.client.window.look.Prose;

/** The foot of the window: a sentence, and at the right margin what to tap on and what is heard. */
final class Foot extends HBox {
  private static final int HALVINGS = 9;
  private static final PseudoClass URGENT = PseudoClass.getPseudoClass("urgent");

  private final Label sentence;
  private final Label taps;
  private final Label sound;
  private final Map<Label, Measured> measured = new HashMap<>();
  private boolean tapped;

  private record Measured(String text, Font font, Span span) {}

  Foot(Label sentence, Label taps, Label sound) {
    super(sentence, taps, sound);
    this.sentence = sentence;
    this.taps = taps;
    this.sound = sound;
    getStyleClass().add("foot");
  }

  /** Whether something is tapped on the page in view, so that it is of use to say on what. */
  void tapped(boolean now) {
    if (now != tapped) {
      tapped = now;
      requestLayout();
    }
  }

  /** Whether the sentence is drawn as what needs attention. */
  void urgent(boolean now) {
    pseudoClassStateChanged(URGENT, now);
  }

  /** Whether what to tap on fits beside a sentence, each in two lines at most. */
  boolean hasRoomForTaps(String said) {
    double room = getWidth() - snappedLeftInset() - snappedRightInset();
    Span beside = measure(said, sentence.getFont());
    return FootWidths.of(room, snapSpaceX(getSpacing()), beside, span(taps), span(sound)).taps()
        > 0;
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computeMinWidth(double height) {
    return 0;
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected double computePrefHeight(double width) {
    double across = width < 0 ? prefWidth(-1) : width;
    FootWidths shared = share(across);
    return snappedTopInset() + snapSizeY(above() + below(shared)) + snappedBottomInset();
  }

  /** All begin on one base line, so far below the upper edge of the highest letters. */
  private double above() {
    return Math.max(ascent(sentence), Math.max(ascent(taps), ascent(sound)));
  }

  private double below(FootWidths shared) {
    double said = sentence.prefHeight(shared.sentence()) - ascent(sentence);
    double heard = sound.prefHeight(shared.sound()) - ascent(sound);
    double tappedOn = shared.taps() > 0 ? taps.prefHeight(shared.taps()) - ascent(taps) : 0;
    return Math.max(said, Math.max(heard, tappedOn));
  }

  private double ascent(Label label) {
    Text letter = new Text("x");
    letter.setFont(label.getFont());
    return snapSizeY(letter.getBaselineOffset());
  }

  @Override
  protected void layoutChildren() {
    FootWidths shared = share(getWidth());
    double right = getWidth() - snappedRightInset();
    taps.setVisible(shared.taps() > 0);
    double above = above();
    double room = getHeight() - snappedTopInset() - snappedBottomInset();
    double top = snappedTopInset() + Math.max(0, (room - above - below(shared)) / 2);
    double base = snapPositionY(top + above);
    place(sentence, snappedLeftInset(), shared.sentence(), base);
    place(sound, right - shared.sound(), shared.sound(), base);
    double beside = right - shared.sound() - snapSpaceX(getSpacing());
    place(taps, beside - shared.taps(), shared.taps(), base);
  }

  private void place(Label label, double x, double width, double base) {
    double high = snapSizeY(label.prefHeight(width));
    label.resizeRelocate(snapPositionX(x), base - ascent(label), snapSizeX(width), high);
  }

  private FootWidths share(double width) {
    double room = width - snappedLeftInset() - snappedRightInset();
    return FootWidths.of(
        room, snapSpaceX(getSpacing()), span(sentence), tapped ? span(taps) : null, span(sound));
  }

  /** Asked for at every layout, and measured where words or size have changed. */
  private Span span(Label label) {
    Measured before = measured.get(label);
    if (before == null
        || !before.text().equals(label.getText())
        || !before.font().equals(label.getFont())) {
      before =
          new Measured(label.getText(), label.getFont(), measure(label.getText(), label.getFont()));
      measured.put(label, before);
    }
    return before.span();
  }

  private static Span measure(String said, Font font) {
    Text text = new Text(said);
    text.setFont(font);
    double one = text.getLayoutBounds().getWidth();
    double twoHigh = 2.4 * text.getLayoutBounds().getHeight();
    double tooNarrow = Prose.longestWord(said, font);
    double enough = one;
    for (int i = 0; i < HALVINGS && enough > tooNarrow; i++) {
      double tried = (tooNarrow + enough) / 2;
      text.setWrappingWidth(tried);
      if (text.getLayoutBounds().getHeight() < twoHigh) {
        enough = tried;
      } else {
        tooNarrow = tried;
      }
    }
    return new Span(whole(one), Math.min(whole(enough) + 1, whole(one)));
  }

  /** A label in less than whole pixels would end in dots. */
  private static double whole(double width) {
    return Math.ceil(width + 0.2);
  }
}
