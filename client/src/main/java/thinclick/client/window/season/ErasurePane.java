package thinclick.client.window.season;

import static thinclick.client.window.season.Controls.button;
import static thinclick.client.window.season.Controls.heading;
import static thinclick.client.window.season.Controls.shown;
import static thinclick.client.window.season.Controls.styled;
import static thinclick.client.window.season.Controls.wrapped;

import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.InView;
import thinclick.client.window.words.Words;

/** The one question before something is erased, with the list of what goes. */
final class ErasurePane {
  private final Erasure erasure;
  private final Words words;
  private final Runnable after;
  private final VBox root = styled(new VBox(8), "double-ruled");

  /**
   * The question, hidden until it is asked.
   *
   * @param after puts the focus on where one goes on, once it is answered
   */
  ErasurePane(Erasure erasure, Words words, Runnable after) {
    this.erasure = erasure;
    this.after = after;
    this.words = words;
    root.setId("erasure");
    erasure.wantedProperty().addListener((any, old, now) -> show());
    show();
  }

  VBox root() {
    return root;
  }

  private void show() {
    Erasure.Wanted now = erasure.wantedProperty().get();
    boolean here = root.getChildren().stream().anyMatch(Node::isFocusWithin);
    root.getChildren().clear();
    shown(root, now != null);
    if (now == null) {
      if (here) {
        after.run();
      }
      return;
    }
    String name = now.name();
    root.getChildren()
        .add(
            heading(
                name == null
                    ? words.say("season.erase.classHead", now.title())
                    : words.say("season.erase.head", name, now.title())));
    now.goes().forEach(place -> root.getChildren().add(wrapped(place)));
    root.getChildren().add(wrapped(erasure.outsideHead()));
    erasure.outside().forEach(place -> root.getChildren().add(styled(wrapped(place), "indented")));
    root.getChildren().add(wrapped(words.say("season.erase.what")));
    if (!erasure.possible()) {
      root.getChildren().add(styled(wrapped(words.say("season.erase.room")), "strong"));
    }
    Button go = button("erase-now", words.say("season.erase.now"), erasure::go);
    go.setDisable(!erasure.possible());
    Button leave = button("erase-not", words.say("season.erase.not"), erasure::leave);
    FlowPane asked = new FlowPane(12, 8, leave, go);
    VBox.setMargin(asked, new Insets(6, 0, 0, 0));
    root.getChildren().add(asked);
    leave.requestFocus();
    InView.bring(root);
  }
}
