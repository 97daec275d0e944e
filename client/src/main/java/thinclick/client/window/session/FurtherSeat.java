package thinclick.client.window.session;

import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectProperty;
import org.jspecify.annotations.Nullable;
import thinclick.client.link.LinkState;
import thinclick.client.link.PlayedAttack;
import thinclick.client.link.RoomLink;
import thinclick.client.link.RoomListener;
import thinclick.client.window.words.Refused;
import thinclick.protocol.message.AnswerMessage.KeptTake;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.time.MonotonicClock;

/**
 * A further player at this computer: a connection and a part of their own, on the clock that the
 * computer has found already. Whoever sits here reads the same page, so a part is read once dealt.
 */
public final class FurtherSeat implements Seat, AutoCloseable {
  private final String name;
  private final BiConsumer<FurtherSeat, String> closed;
  private final Presence presence;
  private String readDeal = "";

  /**
   * Comes in.
   *
   * @param join makes the link that tells what it hears
   * @param closed told why, on the window's thread, where the link is over for good
   */
  FurtherSeat(
      String name,
      Executor windowThread,
      MonotonicClock clock,
      Function<RoomListener, RoomLink> join,
      BiConsumer<FurtherSeat, String> closed) {
    this.name = name;
    this.closed = closed;
    this.presence = new Presence(windowThread, clock, (before, now) -> changed(now));
    presence.enter(join);
  }

  /** As they came in. */
  public String name() {
    return name;
  }

  @Override
  public ReadOnlyObjectProperty<RoomState> stateProperty() {
    return presence.stateProperty();
  }

  @Override
  public OwnTake take() {
    return presence.take();
  }

  @Override
  public @Nullable RoomLink link() {
    return presence.link();
  }

  @Override
  public PastTakes past() {
    return presence.past();
  }

  @Override
  public void play(PlayedAttack attack) {
    presence.play(attack);
  }

  @Override
  public void released(PlayedAttack attack, long nanos) {
    presence.released(attack, nanos);
  }

  @Override
  public void keepTake(Consumer<KeptTake> then, Consumer<Refused> refused) {
    presence.keepTake(then, refused);
  }

  private void changed(RoomState now) {
    Dealt dealt = now.dealt();
    RoomLink link = presence.link();
    if (link != null && dealt != null && dealt.own() != null && !dealt.dealId().equals(readDeal)) {
      readDeal = dealt.dealId();
      link.ready(dealt.dealId(), true);
    }
    if (now.link() == LinkState.CLOSED) {
      closed.accept(this, now.linkSays());
    }
  }

  /**
   * Leaves the room for good; what still comes is not heard, since the loop may be gone by then.
   */
  @Override
  public void close() {
    RoomLink link = presence.hearNoMore();
    if (link != null) {
      var unused = link.leave().whenComplete((revision, refused) -> link.close());
    }
  }
}
