package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import javafx.css.PseudoClass;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;

/** What keeps somebody out at the door is put right where it was written. */
class DoorPathTest extends WindowCase {
  private static final PseudoClass WRONG = PseudoClass.getPseudoClass("wrong");

  @Test
  void aRefusedRoomWordStaysIsMarkedAndHasTheCursor() throws Exception {
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(folder.resolve("far.db")))) {
      open();
      robot.interact(
          () -> {
            field("name").setText("Ana");
            field("address").setText("ws://127.0.0.1:" + host.port());
            field("word").requestFocus();
          });
      robot.write("zuzuzuzu").type(KeyCode.ENTER);
      until(() -> field("word").getPseudoClassStates().contains(WRONG));
      WaitForAsyncUtils.waitForFxEvents();
      theSentenceStandsUnder("word", "There is no room with that word.");
      until(() -> text("sentence").equals(words.say("situation.door"))); // said once, at the field
      assertThat(on(() -> field("word").getText())).isEqualTo("zuzuzuzu");
      assertThat(on(() -> field("name").getPseudoClassStates().contains(WRONG))).isFalse();
      robot.write("x");
      until(() -> !field("word").getPseudoClassStates().contains(WRONG));
      assertThat(on(() -> node("word-says").isVisible())).isFalse();
      robot.interact(() -> field("name").clear());
      robot.type(KeyCode.ENTER);
      WaitForAsyncUtils.waitForFxEvents();
      theSentenceStandsUnder("name", words.say("door.name.missing"));
    }
  }

  private void theSentenceStandsUnder(String id, String said) {
    assertThat(text(id + "-says")).isEqualTo(said);
    robot.interact(
        () -> {
          assertThat(stage.getScene().getFocusOwner()).isEqualTo(field(id));
          stage.getScene().getRoot().applyCss();
          stage.getScene().getRoot().layout();
          Bounds field = at(field(id));
          Bounds says = at(node(id + "-says"));
          assertThat(says.getMinX()).isEqualTo(field.getMinX());
          assertThat(says.getMinY() - field.getMaxY()).isBetween(0.0, 10.0);
          assertThat(says.getMaxY())
              .as("in view above the foot")
              .isLessThan(at(stage.getScene().lookup(".foot")).getMinY());
        });
  }

  private static Bounds at(Node node) {
    return node.localToScene(node.getLayoutBounds());
  }

  private TextField field(String id) {
    return (TextField) node(id);
  }
}
