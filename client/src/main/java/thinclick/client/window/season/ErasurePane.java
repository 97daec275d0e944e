package thinclick.client.window.season;

import static thinclick.client.window.look.Styled.styled;
import static thinclick.client.window.season.Controls.button;
import static thinclick.client.window.season.Controls.heading;
import static thinclick.client.window.season.Controls.shown;
import static thinclick.client.window.season.Controls.wrapped;

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
  private final VBox asked = styled(new VBox(), "erasure-lines");
  private final Button leave;
  private final Button go;
  private final FlowPane answers;
  private final VBox root = styled(new VBox(14, asked), "double-ruled");

  /**
   * The question, hidden until it is asked.
   *
   * @param after puts the focus on where one goes on, once it is answered
   */
  ErasurePane(Erasure erasure, Words words, Runnable after) {
    this.erasure = erasure;
    this.after = after;
    this.words = words;
    asked.setId("erasure");
    leave = button("erase-not", words.say("season.erase.not"), erasure::leave);
    go = button("erase-now", words.say("season.erase.now"), erasure::go);
    answers = new FlowPane(12, 8, leave, go);
    erasure.wantedProperty().addListener((any, old, now) -> show());
    show();
  }

  VBox root() {
    return root;
  }

  /** What answers it: its last line, seen with it or below the page. */
  FlowPane answers() {
    return answers;
  }

  private void show() {
    Erasure.Wanted now = erasure.wantedProperty().get();
    boolean here = answers.isFocusWithin();
    asked.getChildren().clear();
    shown(root, now != null);
    shown(answers, now != null);
    if (now == null) {
      if (here) {
        after.run();
      }
      return;
    }
    String name = now.name();
    asked
        .getChildren()
        .add(
            heading(
                name == null
                    ? words.say("season.erase.classHead", now.title())
                    : words.say("season.erase.head", name, now.title())));
    asked.getChildren().add(wrapped(words.say("season.erase.what")));
    now.goes().forEach(place -> asked.getChildren().add(wrapped(place)));
    asked.getChildren().add(wrapped(erasure.outsideHead()));
    erasure.outside().forEach(place -> asked.getChildren().add(styled(wrapped(place), "indented")));
    if (!erasure.possible()) {
      asked.getChildren().add(styled(wrapped(words.say("season.erase.room")), "strong"));
    }
    go.setDisable(!erasure.possible());
    leave.requestFocus();
    InView.keep(root);
  }
}
