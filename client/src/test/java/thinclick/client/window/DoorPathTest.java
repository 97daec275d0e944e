package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.util.Locale;
import javafx.css.PseudoClass;
import javafx.geometry.Bounds;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.shape.Path;
import javafx.scene.text.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.window.words.Words;
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

  /** The caret of the toolkit goes and comes; this one stands as long as somebody writes here. */
  @Test
  void theCaretOfAFieldStandsStill() throws Exception {
    open();
    robot.interact(() -> field("name").requestFocus());
    robot.write("Ana");
    Node caret = on(() -> field("name").lookup(".caret"));
    await()
        .during(Duration.ofMillis(600)) // the toolkit's is gone after 500
        .until(() -> on(() -> caret.isVisible() && toolkitsCaret(caret).getOpacity() == 0));
    robot.interact(
        () -> {
          double end = at(caret).getCenterX();
          double written = at(written("name")).getMaxX();
          assertThat(end).isCloseTo(written, within(1.5));
          field("name").selectAll();
          assertThat(caret.isVisible()).as("what is marked is shown instead").isFalse();
          field("address").requestFocus();
          assertThat(caret.isVisible()).as("nobody writes here any more").isFalse();
          assertThat(field("address").lookup(".caret").isVisible()).isTrue();
        });
  }

  private Node written(String id) {
    return field(id).lookupAll(".text").stream()
        .filter(node -> node instanceof Text text && text.getText().equals(field(id).getText()))
        .findFirst()
        .orElseThrow();
  }

  private static Node toolkitsCaret(Node own) {
    return own.getParent().getChildrenUnmodifiable().stream()
        .filter(Group.class::isInstance)
        .map(Group.class::cast)
        .flatMap(group -> group.getChildren().stream())
        .filter(Path.class::isInstance)
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({"1366, en", "1024, en", "1366, de", "1024, de"})
  void allOfTheDoorIsInViewInASmallWindow(int width, String language) throws Exception {
    words = Words.in(Locale.forLanguageTag(language));
    open();
    robot.interact(
        () -> {
          stage.setWidth(width);
          stage.setHeight(768);
        });
    until(
        () -> {
          ScrollPane page = (ScrollPane) stage.getScene().lookup(".scroll-pane");
          double high = page.getContent().getLayoutBounds().getHeight();
          return page.getWidth() == width && high < page.getViewportBounds().getHeight() + 1;
        });
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
