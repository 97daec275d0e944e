package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import thinclick.client.standin.Manner;
import thinclick.protocol.message.ServerMessage.Phase;

/**
 * Pictures of the leader's pages with a band, light and dark, at three sizes, into {@code
 * target/desk}: to be looked at.
 */
@Tag("long")
class DeskPicturesTest extends PictureCase {
  DeskPicturesTest() {
    super("desk");
  }

  @Test
  void theLeadersPages() throws Exception {
    open();
    robot.interact(() -> stage.getScene().lookup("#name").requestFocus());
    robot.write("Frau Ott").type(KeyCode.ENTER);
    until(() -> session.state().inside());
    for (int i = 0; i < 5; i++) {
      int players = i + 2;
      Manner manner = Manner.values()[i];
      robot.interact(() -> desk.roster().fill(manner, null, 0));
      until(() -> session.state().people().size() == players);
    }
    picture("lectern-open");
    robot.interact(() -> ((TextField) stage.getScene().lookup("#looking")).setText("section"));
    robot.interact(() -> stage.getScene().lookup("#drills").requestFocus());
    robot.type(KeyCode.ENTER);
    until(() -> session.state().title() != null);
    picture("lectern-drill");
    robot.interact(() -> ((ToggleButton) stage.getScene().lookup("#compose")).fire());
    picture("lectern-compose");
    robot.interact(() -> ((ToggleButton) stage.getScene().lookup("#compose")).fire());
    robot.interact(() -> stage.getScene().lookup("#lessons").requestFocus());
    robot.type(KeyCode.ENTER);
    until(() -> session.state().phase() == Phase.DEALT);
    picture("lectern-lesson");
    robot.interact(() -> desk.wall().turn(stage));
    wallPicture("wall-dealt");
    robot.interact(() -> stage.getScene().lookup("#go-on").requestFocus());
    robot.interact(() -> desk.goOn());
    until(() -> session.state().takeRuns());
    until(() -> bar() > -0.5);
    wallPicture("wall-count-in");
    until(() -> bar() > 2.2);
    wallPicture("wall-playing");
    until(() -> session.state().review() != null && !session.state().review().provisional());
    wallPicture("wall-verdict");
    picture("review-leader");
    robot.interact(() -> scroll(1));
    picture("review-leader-end");
    robot.interact(() -> desk.goTo(View.LECTERN));
    picture("lectern-reviewed");
    assertThat(written()).isPositive();
  }

  @Test
  void theWayInForOthers() throws Exception {
    open();
    forOthers = true;
    picture("door-for-others");
    robot.interact(() -> stage.getScene().lookup("#name").requestFocus());
    robot.write("Frau Ott").type(KeyCode.ENTER);
    until(() -> session.state().inside());
    picture("lectern-link");
    robot.interact(() -> ((Button) stage.getScene().lookup("#show-code")).fire());
    picture("lectern-code");
    assertThat(written()).isPositive();
  }

  private void scroll(double to) {
    if (stage.getScene().lookup(".scroll-pane") instanceof ScrollPane pane) {
      pane.setVvalue(to);
    }
  }
}
