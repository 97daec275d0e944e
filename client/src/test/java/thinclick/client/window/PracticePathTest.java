package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.client.window.look.Look;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.server.command.ServerMain;

/** Practising alone by keyboard alone: from the door to a review in which stand-ins are marked. */
class PracticePathTest extends WindowCase {
  @BeforeEach
  void openDoor() throws Exception {
    open();
  }

  @Test
  void aDrillIsPlayedWithStandInsToItsReview() throws IOException {
    says("Write your name");
    robot.write("Mina"); // a stand-in's name as well: theirs are others
    onTo("practise");
    robot.type(KeyCode.ENTER);
    says("Enter deals it to you and the stand-ins");
    assertThat(on(() -> ((ToggleButton) node("tab-door")).isSelected()))
        .as("where one is, among the words in the head")
        .isTrue();
    onTo("practice-looking");
    robot.write("jigsaw");
    onTo("practice-tempo");
    robot.press(KeyCode.CONTROL).type(KeyCode.A).release(KeyCode.CONTROL);
    robot.write("500").type(KeyCode.ENTER);
    assertThat(on(() -> text("practice-tempo-says"))).contains("from 60 to 150");
    assertThat(on(() -> session.state().inside())).isFalse();
    robot.press(KeyCode.CONTROL).type(KeyCode.A).release(KeyCode.CONTROL);
    robot.write("150").type(KeyCode.ENTER);

    says("\u201cJigsaw\u201d is dealt: count in with Ctrl+Enter");
    assertThat(on(() -> session.state().people().stream().filter(Person::standIn).count()))
        .isEqualTo(2);
    assertThat(on(() -> session.state().dealt().tempo())).isEqualTo(150);
    assertThat(on(() -> session.state().dealt().parts().get(0).player()))
        .as("the first chair is the player's own")
        .isEqualTo("Mina");
    assertThat(on(() -> stage.getTitle())).isEqualTo("Thinclick: Stand");
    robot.press(KeyCode.CONTROL).type(KeyCode.ENTER).release(KeyCode.CONTROL);
    says("Bar 1 of");
    robot.type(KeyCode.F).type(KeyCode.J);
    until(() -> session.take().ownAttacks("").size() == 2);
    robot.clickOn(node("stand-title").getParent().getParent().getParent().getParent());
    until(() -> session.take().ownAttacks("").size() == 3);
    says("Bar 2 of");
    robot.press(KeyCode.CONTROL).type(KeyCode.PERIOD).release(KeyCode.CONTROL);
    until(() -> session.state().review() != null);
    assertThat(on(() -> stage.getTitle())).isEqualTo("Thinclick: Review");
    assertThat(session.state().review().review().get("players").size()).isEqualTo(3);

    Take take = written();
    assertThat(take.attacks())
        .filteredOn(attack -> attack.player().equals("Mina"))
        .extracting(Attack::lateByMillis)
        .as("a press of the mouse may be late by 8 ms at the least")
        .anyMatch(late -> late != null && late >= 8);
    assertThat(take.parts().get(0).hearing().mode())
        .as("how the stand-ins were heard stands in the take")
        .isEqualTo(Hearing.Mode.IN_TIME);

    robot.press(KeyCode.CONTROL).type(KeyCode.D).release(KeyCode.CONTROL);
    until(() -> session.state().phase() == Phase.DEALT);
    assertThat(on(() -> session.state().dealt().parts().size()))
        .as("dealt again to the same company")
        .isEqualTo(3);
  }

  /** At twice the size the list alone is as high as the window; Deal stands below it. */
  @ParameterizedTest
  @CsvSource({
    "15, 1366, 768",
    "19, 1366, 768",
    "30, 1366, 768",
    "30, 1024, 768",
    "30, 1920, 1080",
    "15, 720, 520",
  })
  void whatDealsIsInViewAtEverySize(double textSize, int width, int height) throws Exception {
    robot.interact(
        () -> {
          stage.setWidth(width);
          stage.setHeight(height);
          desk.looks().grow((int) (textSize - Look.USUAL_TEXT));
        });
    robot.write("Mina");
    robot.interact(() -> ((Button) node("practise")).fire());
    until(() -> inView("practice-begin") && inView("practice-drills"));
    robot.interact(
        () -> {
          node("practice-begin").requestFocus();
          stage.setWidth(1366);
          stage.setHeight(900);
          desk.looks().grow((int) (Look.USUAL_TEXT - textSize));
        });
    until(() -> inView("practice-begin") && isWithin("practice-begin", "practice-horn"));
    assertThat(on(() -> node("practice-begin").isFocused())).isTrue();
  }

  /** Among what it belongs to. */
  private boolean isWithin(String id, String beside) {
    return node(id).getParent().getParent() == node(beside).getParent();
  }

  private boolean inView(String id) {
    Bounds at = node(id).localToScene(node(id).getLayoutBounds());
    Bounds head = bounds(".head");
    return at.getMinY() >= head.getMaxY() && at.getMaxY() <= bounds(".foot").getMinY() + 1;
  }

  private Bounds bounds(String styled) {
    Node node = stage.getScene().lookup(styled);
    return node.localToScene(node.getLayoutBounds());
  }

  private Take written() throws IOException {
    Path file = folder.resolve("take.json");
    int exit =
        ServerMain.commandLine()
            .execute(
                "take",
                "export",
                session.state().announced().takeId(),
                file.toString(),
                "--db",
                folder.resolve("rooms.db").toString());
    assertThat(exit).isZero();
    return FileCodec.readTake(Files.readAllBytes(file));
  }

  private void onTo(String id) {
    for (int tabs = 0; tabs < 30; tabs++) {
      Node owner = on(() -> stage.getScene().getFocusOwner());
      if (owner != null && id.equals(owner.getId())) {
        return;
      }
      robot.type(KeyCode.TAB);
    }
    throw new AssertionError("Tab never comes to " + id);
  }
}
