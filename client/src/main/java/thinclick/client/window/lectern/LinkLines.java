package thinclick.client.window.lectern;

import java.util.Arrays;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;

/**
 * A link over as many lines as it takes, broken where one who types it off expects it: after its
 * slashes and before its question mark. Only a piece that is wider than the page is broken inside.
 */
final class LinkLines extends FlowPane {
  private String link = "";

  /** The link as it is copied. */
  String link() {
    return link;
  }

  void show(String now) {
    if (!now.equals(link)) {
      link = now;
      getChildren()
          .setAll(Arrays.stream(now.split("(?<=/)(?!/)|(?=\\?)", -1)).map(this::piece).toList());
    }
  }

  private Label piece(String says) {
    Label piece = new Label(says);
    piece.setWrapText(true);
    piece.maxWidthProperty().bind(widthProperty());
    return piece;
  }
}
