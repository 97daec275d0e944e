package thinclick.client.window.season;

import static thinclick.client.window.look.Styled.styled;

import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import thinclick.client.window.look.Prose;

/** The few kinds of control that the page of a season is made of. */
final class Controls {
  private Controls() {}

  static Button button(String id, String says, Runnable does) {
    Button button = new Button(says);
    button.setId(id);
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnAction(done -> does.run());
    return button;
  }

  static Label heading(String says) {
    return styled(wrapped(says), "heading");
  }

  static Label wrapped(String says) {
    return Prose.of(says);
  }

  /** A field with its name before it and what is done with it behind; the field gives way. */
  static HBox line(String says, TextField field, String id, Button does) {
    Label name = styled(new Label(says), "field-name");
    name.setLabelFor(field);
    field.setId(id);
    field.setAccessibleText(says);
    field.setOnAction(done -> does.fire());
    return styled(new HBox(name, styled(field, "season-field"), does), "season-line");
  }

  /**
   * As high as what it holds, with some room; where that is more than the most, as high as whole
   * lines, so that none is cut through.
   */
  static void asHighAsLines(ListView<?> list, int fewest, int most) {
    int lines = Math.max(fewest, list.getItems().size());
    double ems = lines > most ? most * 2 + 0.15 : lines * 2.1 + 0.3;
    list.setStyle("-fx-pref-height: " + ems + "em;");
  }

  static void shown(Node node, boolean shown) {
    node.setVisible(shown);
    node.setManaged(shown);
  }
}
