package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;

/** Controls that say which keys do the same. */
final class Keyed {
  private Keyed() {}

  /** A button with its keys written beside what it does; no keys where {@code keys} is empty. */
  static Button button(String id, String does, String keys, Runnable action) {
    Button button = new Button();
    button.setId(id);
    button.setMinWidth(Region.USE_PREF_SIZE);
    if (!keys.isEmpty()) {
      keys(button, keys);
    }
    says(button, does);
    button.setOnAction(done -> action.run());
    return button;
  }

  /** Writes the keys that do the same beside what it does. */
  static void keys(ButtonBase button, String keys) {
    Label written = styled(new Label(keys), "keys");
    written.setMinWidth(Region.USE_PREF_SIZE);
    button.setGraphic(written);
    button.setContentDisplay(ContentDisplay.RIGHT);
    button.getStyleClass().add("keyed");
  }

  /** Says another thing that the same keys do. */
  static void says(ButtonBase button, String does) {
    button.setText(does);
    button.setAccessibleText(
        button.getGraphic() instanceof Label keys ? does + ", " + keys.getText() : does);
  }

  /** Makes a command the one that comes next: black, while all others are outlined. */
  static void primary(Button button, boolean next) {
    button.getStyleClass().remove("primary");
    if (next) {
      button.getStyleClass().add("primary");
    }
  }

  /** Takes no room while it is not shown. */
  static void shown(Node node, boolean shown) {
    node.setVisible(shown);
    node.setManaged(shown);
  }
}
