package thinclick.client.window.look;

import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanExpression;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.TextField;
import javafx.scene.control.skin.TextFieldSkin;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Path;
import javafx.scene.text.Text;
import org.jspecify.annotations.Nullable;

/**
 * A field with a caret of its own, which stands still. The toolkit's blinks, and can only be kept
 * from blinking by never being shown. Given to fields by the stylesheet.
 */
public final class StillCaret extends TextFieldSkin {
  /** Null where the field is not made as it is known here: then it has the toolkit's caret. */
  private final @Nullable Path caret;

  public StillCaret(TextField field) {
    super(field);
    Text written = written(field);
    caret = written == null ? null : caret(field, written);
    if (written != null && caret != null && written.getParent() instanceof Pane beside) {
      beside.getChildren().add(caret);
    }
  }

  /** Asked for by the toolkit when somebody comes to the field, leaves it or writes. */
  @Override
  public void setCaretAnimating(boolean blinks) {
    if (caret == null) {
      super.setCaretAnimating(blinks);
    }
  }

  /** What is written in a field stands after, and so upon, what could be written there. */
  private static @Nullable Text written(Parent in) {
    Text last = null;
    for (Node node : in.getChildrenUnmodifiable()) {
      if (node instanceof Text text) {
        last = text;
      } else if (node instanceof Pane pane && last == null) {
        last = written(pane);
      }
    }
    return last;
  }

  private static Path caret(TextField field, Text written) {
    Path caret = new Path();
    caret.getStyleClass().add("caret");
    caret.setManaged(false);
    caret.setMouseTransparent(true);
    caret.layoutXProperty().bind(written.layoutXProperty());
    caret.layoutYProperty().bind(written.layoutYProperty());
    written
        .caretShapeProperty()
        .addListener((any, old, now) -> caret.getElements().setAll(written.getCaretShape()));
    caret.getElements().setAll(written.getCaretShape());
    BooleanExpression nothingMarked =
        BooleanExpression.booleanExpression(
            Bindings.equal(field.anchorProperty(), field.caretPositionProperty()));
    caret
        .visibleProperty()
        .bind(field.focusedProperty().and(field.editableProperty()).and(nothingMarked));
    return caret;
  }
}
