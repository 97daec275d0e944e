package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import thinclick.client.standin.Manner;
import thinclick.client.window.session.Lead;
import thinclick.client.window.session.RoomState;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.server.material.Stock;

/**
 * A picture of every drill of the stock on the stand, into {@code target/stock}: to be looked at.
 */
@Tag("long")
class StockPicturesTest extends PictureCase {
  private static final int TEMPO = 90;
  private static final int STAND_INS = 3;

  StockPicturesTest() {
    super("stock");
  }

  @Test
  void everyDrillOnTheStand() throws Exception {
    open();
    robot.interact(() -> stage.getScene().lookup("#name").requestFocus());
    robot.write("Ana").type(KeyCode.ENTER);
    until(() -> session.state().inside());
    for (int i = 0; i < STAND_INS; i++) {
      int players = i + 2;
      robot.interact(() -> desk.roster().fill(Manner.values()[0], null, 0));
      until(() -> session.state().people().size() == players);
    }
    control(KeyCode.DIGIT2);
    for (Drill drill : Stock.drills()) {
      deal(drill);
      pictureOnce("stand-" + drill.title().toLowerCase(words.locale()).replace(' ', '-'));
    }
    closeWindow();
    assertThat(written()).isEqualTo(Stock.drills().size());
  }

  private void deal(Drill drill) {
    String before = dealId();
    List<String> chairs =
        on(() -> session.state().people().stream().map(Person::playerId).toList());
    robot.interact(() -> session.lead().chooseAndDeal(new Lead.Hand(drill, TEMPO, 1, chairs)));
    until(() -> !dealId().equals(before));
  }

  private String dealId() {
    RoomState room = on(session::state);
    return room.dealt() == null ? "" : room.dealt().dealId();
  }
}
