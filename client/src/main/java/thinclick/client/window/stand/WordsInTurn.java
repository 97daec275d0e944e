package thinclick.client.window.stand;

import java.util.List;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import thinclick.client.window.look.WrappedWords;

/**
 * Words of which others are said in turn in the same place: it has room for the longest of them, so
 * that what stands around them stays where it is.
 */
final class WordsInTurn {
  private final String id;
  private final String style;
  private final Label said = new Label();
  private final WrappedWords root = new WrappedWords();
  private List<String> longest = List.of();

  /**
   * @param style of what is said; empty for the usual one
   */
  WordsInTurn(String id, String style) {
    this.id = id;
    this.style = style;
    dress(said);
    said.setId(id);
    root.setAlignment(Pos.BASELINE_LEFT);
    root.getStyleClass().add(id + "-place");
    root.getChildren().add(said);
  }

  Region root() {
    return root;
  }

  ReadOnlyStringProperty textProperty() {
    return said.textProperty();
  }

  /** Takes no more width than a place has. */
  void within(Region place) {
    root.maxWidthProperty().bind(place.widthProperty());
  }

  /**
   * Says something.
   *
   * @param inTurn what else is said here
   */
  void say(String now, List<String> inTurn) {
    said.setText(now);
    List<String> wanted = inTurn.stream().filter(other -> !other.equals(now)).distinct().toList();
    if (!wanted.equals(longest)) {
      longest = wanted;
      root.getChildren().setAll(said);
      wanted.forEach(other -> root.getChildren().add(strut(other)));
    }
  }

  private Label strut(String other) {
    Label strut = new Label(other);
    dress(strut);
    strut.setVisible(false);
    return strut;
  }

  private void dress(Label label) {
    label.setWrapText(true);
    label.getStyleClass().add(id);
    if (!style.isEmpty()) {
      label.getStyleClass().add(style);
    }
  }
}
