package thinclick.client.window.look;

import javafx.css.PseudoClass;
import javafx.scene.control.TextField;

/**
 * What stands in a field that nobody has written in: in italics, so that it is not taken for
 * something written.
 */
public final class Example {
  private static final PseudoClass UNWRITTEN = PseudoClass.getPseudoClass("unwritten");

  private Example() {}

  /** Lets a field say what could be written, until something is. */
  public static void in(TextField field, String says) {
    field.setPromptText(says);
    field.textProperty().addListener(any -> look(field));
    look(field);
  }

  private static void look(TextField field) {
    String written = field.getText();
    field.pseudoClassStateChanged(UNWRITTEN, written == null || written.isEmpty());
  }
}
