package thinclick.client.window.session;

import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import org.jspecify.annotations.Nullable;
import thinclick.client.link.PlayedAttack;
import thinclick.client.link.RoomLink;
import thinclick.client.window.words.Refused;
import thinclick.protocol.message.AnswerMessage.KeptTake;

/**
 * One player at this computer: where the room stands for them, their link, what they played. All on
 * the window's thread.
 */
public interface Seat {
  /** The room as this player sees it. */
  ReadOnlyObjectProperty<RoomState> stateProperty();

  /** The room as this player sees it. */
  default RoomState state() {
    return stateProperty().get();
  }

  /** The attacks of the running or last take. */
  OwnTake take();

  /** The link, null outside a room. */
  @Nullable RoomLink link();

  /** What takes before say to this player. */
  PastTakes past();

  /** Sends an attack where a take runs in which this player has a part. */
  void play(PlayedAttack attack);

  /** An attack that was played has been released, which gives it its length. */
  void released(PlayedAttack attack, long nanos);

  /**
   * Asks for the take that was reviewed last, as a file: whole where the leader shares it, else
   * this player's own part alone.
   *
   * @param refused told why not, as the host says it
   */
  void keepTake(Consumer<KeptTake> then, Consumer<Refused> refused);
}
