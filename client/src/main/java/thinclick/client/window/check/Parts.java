package thinclick.client.window.check;

import static thinclick.client.window.look.Styled.styled;

import javafx.scene.Node;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;

/** How the parts of the sound check's page are set. */
final class Parts {
  private Parts() {}

  /** A part with its head, a sentence with a number. */
  static VBox numbered(Words words, int number, String sentence, Node... below) {
    return headed(words.say("check.numbered", number, sentence), below);
  }

  /** A part below a rule, with its head. */
  static VBox headed(String head, Node... below) {
    VBox box = styled(styled(new VBox(styled(Prose.of(head), "heading")), "ruled"), "block");
    box.getChildren().addAll(below);
    return box;
  }

  /** Takes no room where it is not seen. */
  static <N extends Node> N givingWay(N node) {
    node.managedProperty().bind(node.visibleProperty());
    return node;
  }
}
