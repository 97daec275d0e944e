package thinclick.client.window.look;

import java.util.stream.Stream;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Label;
import javafx.scene.text.Text;

/** Words of a narrow column: they go on in another line, and are never broken inside. */
public final class WholeWords {
  private WholeWords() {}

  /** Lets a label wrap between its words, and never be narrower than the longest of them. */
  public static Label in(Label label) {
    label.setWrapText(true);
    label
        .minWidthProperty()
        .bind(
            Bindings.createDoubleBinding(
                () -> longest(label), label.fontProperty(), label.textProperty()));
    return label;
  }

  private static double longest(Label label) {
    return Stream.of(label.getText().split(" "))
        .mapToDouble(
            word -> {
              Text text = new Text(word);
              text.setFont(label.getFont());
              return Math.ceil(text.getLayoutBounds().getWidth()) + 1;
            })
        .max()
        .orElse(0);
  }
}
