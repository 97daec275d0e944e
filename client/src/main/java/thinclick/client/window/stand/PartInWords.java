package thinclick.client.window.stand;

import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.Region;

/** The parts in view in words, below the music where they are wanted. */
final class PartInWords {
  private static final double WORDS_SHARE = 0.28;

  /** So many lines of words stand there wherever they are wanted; more where the page is high. */
  private static final double LEAST_LINES = 2;

  private final Label spoken = new Label();
  private final ScrollPane root = new ScrollPane(spoken);
  private final Region page;
  private boolean brief;

  /**
   * @param page on which they take their share
   */
  PartInWords(Region page) {
    this.page = page;
    spoken.setId("part-words");
    spoken.setWrapText(true);
    root.setFitToWidth(true);
    root.setVisible(false);
    root.managedProperty().bind(root.visibleProperty());
    root.maxHeightProperty()
        .bind(
            Bindings.createDoubleBinding(
                this::wholeLines,
                page.heightProperty(),
                spoken.fontProperty(),
                spoken.textProperty(),
                root.insetsProperty()));
  }

  Node root() {
    return root;
  }

  ReadOnlyStringProperty textProperty() {
    return spoken.textProperty();
  }

  void say(String words) {
    spoken.setText(words);
  }

  void show(boolean wanted) {
    root.setVisible(wanted);
  }

  /** No more lines than must be, where the page is low. */
  void brief(boolean now) {
    brief = now;
  }

  /** As high as the words' share of the page, and no line of them cut through. */
  private double wholeLines() {
    double each = spoken.prefHeight(-1) / Math.max(1, spoken.getText().lines().count());
    double around = root.getInsets().getTop() + root.getInsets().getBottom();
    double lines = Math.floor((page.getHeight() * WORDS_SHARE - around) / each);
    return around + (brief ? LEAST_LINES : Math.max(LEAST_LINES, lines)) * each;
  }
}
