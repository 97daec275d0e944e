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
import thinclick.client.window.session.TakeMoment;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.server.material.Stock;

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
    for (int i = 0; i < 7; i++) {
      int players = i + 2;
      Manner manner = Manner.values()[i % Manner.values().length];
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
    control(KeyCode.E); // in a window that is not wide the drills stand below: comes into view
    picture("lectern-compose");
    String own = words.say("compose.title.such");
    robot.interact(
        () -> {
          ((TextField) stage.getScene().lookup("#compose-title")).setText(own);
          ((TextField) stage.getScene().lookup("#compose-cell")).setText("1 4");
          ((TextField) stage.getScene().lookup("#compose-grouping")).setText("5");
          ((TextField) stage.getScene().lookup("#compose-period")).setText("5");
        });
    robot.type(KeyCode.ENTER);
    until(() -> own.equals(session.state().title()));
    picture("lectern-composed");
    robot.interact(() -> ((ToggleButton) stage.getScene().lookup("#compose")).fire());
    robot.interact(() -> desk.roster().leaderPlaysProperty().set(false));
    robot.interact(() -> stage.getScene().lookup("#lessons").requestFocus());
    robot.type(KeyCode.ENTER);
    until(() -> session.state().phase() == Phase.DEALT);
    picture("lectern-lesson");
    pictureTwiceAsLarge("lectern-lesson");
    robot.interact(() -> desk.wall().turn(stage));
    wallPicture("wall-dealt");
    robot.interact(() -> stage.getScene().lookup("#go-on").requestFocus());
    robot.interact(() -> desk.goOn());
    until(() -> session.state().takeRuns());
    wallPicture("wall-count-in", new TakeMoment(TakeMoment.Part.COUNT_IN, 0, 1, -1, -1, 0));
    until(() -> bar() > 2.2);
    wallPicture("wall-playing");
    until(() -> session.state().review() != null && !session.state().review().provisional());
    wallPicture("wall-verdict");
    picture("review-leader");
    robot.interact(() -> scroll(1));
    picture("review-leader-end");
    robot.interact(() -> desk.goTo(View.LECTERN));
    picture("lectern-reviewed");
    control(KeyCode.P);
    picture("lectern-paused");
    pictureTwiceAsLarge("lectern-paused");
    control(KeyCode.P);
    theClinic();
    assertThat(written()).isPositive();
  }

  /** Four by role, who trade fours, without the leader. */
  private void theClinic() throws Exception {
    robot.interact(() -> desk.lecternDesk().lesson().leave());
    robot.interact(() -> desk.lecternDesk().lectern().choose(Stock.find("Trading fours")));
    until(() -> "Trading fours".equals(session.state().title()));
    robot.interact(() -> desk.lecternDesk().plan().tempo("180"));
    robot.interact(() -> desk.lecternDesk().lectern().deal());
    until(() -> session.state().phase() == Phase.DEALT);
    robot.interact(() -> desk.lecternDesk().take().countIn());
    until(() -> session.state().takeRuns());
    until(() -> bar() > 1);
    wallPicture("wall-thins");
    until(() -> session.state().phase() == Phase.REVIEW);
    until(() -> session.state().review() != null && !session.state().review().provisional());
    wallPicture("wall-stages");
    robot.interact(() -> desk.goTo(View.REVIEW));
    for (int part = 0; part <= 4; part++) {
      double down = part / 4.0;
      robot.interact(() -> scroll(down));
      picture("review-clinic-" + part);
    }
  }

  @Test
  void theWayInForOthers() throws Exception {
    open();
    forOthers = true;
    // Also where only the later pictures are made.
    robot.interact(
        () -> desk.begin(new WindowOptions(WindowOptions.Way.DOOR, "", "", "", true, null)));
    picture("door-for-others");
    robot.interact(() -> stage.getScene().lookup("#name").requestFocus());
    robot.write("Frau Ott").type(KeyCode.ENTER);
    until(() -> session.state().inside());
    assertThat(on(() -> session.hosting().here())).as("this computer alone").isFalse();
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
