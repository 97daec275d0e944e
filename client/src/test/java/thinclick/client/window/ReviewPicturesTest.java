package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.standin.Manner;
import thinclick.client.window.session.RoomState;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews.ReviewReady;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Stock;

/**
 * Pictures of what the review shows seldom, light and dark, at three sizes, into {@code
 * target/desk}: nothing heard, the last takes, two like takes beside each other.
 */
@Tag("long")
class ReviewPicturesTest extends PictureCase {
  private static final double CLEAR = 24;

  ReviewPicturesTest() {
    super("desk");
  }

  @Test
  void theSeldomReviews() throws Exception {
    open();
    robot.interact(() -> stage.getScene().lookup("#name").requestFocus());
    robot.write("Frau Ott").type(KeyCode.ENTER);
    until(() -> session.state().inside());
    aTake(4);
    picture("review-nobody");
    for (int i = 0; i < 3; i++) {
      int players = i + 2;
      Manner manner = Manner.values()[i];
      robot.interact(() -> desk.roster().fill(manner, null, 0));
      until(() -> session.state().people().size() == players);
    }
    aTake(4);
    picture("review-only-stand-ins");
    robot.interact(() -> desk.roster().leaderPlaysProperty().set(false));
    aTake(6);
    aTake(6);
    until(() -> session.past().told().course() != null && node("review-course") != null);
    at("review-course", "review-course");
    robot.interact(() -> ((Button) node("review-compare")).fire());
    at("review-compare", "review-compared");
    at("review-compare-figures", "review-figures");
    at("review-compare-end", "keep-compared");
    assertThat(written()).isPositive();
  }

  /** One take of two stages, reviewed. */
  private void aTake(int barsEach) {
    ReviewReady before = on(() -> session.state().review());
    robot.interact(
        () -> {
          desk.goTo(View.LECTERN);
          desk.lecternDesk()
              .lectern()
              .choose(
                  Stock.find("Threes over a blues")
                      .withStages(
                          List.of(
                              Stage.ofBeats(barsEach, 1, 1, 2, 3, 4),
                              Stage.ofBeats(barsEach, 1, 2, 4))));
          desk.lecternDesk().plan().tempo("132");
          desk.lecternDesk().lectern().deal();
        });
    until(() -> session.state().phase() == Phase.DEALT);
    robot.interact(() -> desk.lecternDesk().take().countIn());
    until(() -> session.state().phase() == Phase.REVIEW);
    until(
        () -> {
          RoomState room = session.state();
          return room.review() != null
              && !Objects.equals(room.review(), before)
              && !room.review().provisional();
        });
    robot.interact(() -> desk.goTo(View.REVIEW));
    WaitForAsyncUtils.waitForFxEvents();
  }

  /** A picture at each size with this node at the top of the page. */
  private void at(String name, String id) {
    picture(name, () -> down(id));
  }

  private void down(String id) {
    if (stage.getScene().lookup(".scroll-pane") instanceof ScrollPane pane) {
      Node wanted = pane.getContent().lookup("#" + id);
      Bounds there = wanted.localToScene(wanted.getBoundsInLocal());
      Bounds page = pane.getContent().localToScene(pane.getContent().getBoundsInLocal());
      double beyond = page.getHeight() - pane.getViewportBounds().getHeight();
      double top = there.getMinY() - page.getMinY() - CLEAR;
      pane.setVvalue(Math.max(0, Math.min(1, top / Math.max(1, beyond))));
    }
  }
}
