package thinclick.client.window.session;

import java.util.function.Consumer;
import java.util.function.Function;
import thinclick.client.link.LinkState;
import thinclick.client.link.PlayedAttack;
import thinclick.client.link.RoomLink;
import thinclick.client.link.RoomListener;
import thinclick.protocol.message.ServerMessage;

/**
 * A further player at this computer: a connection of its own, on the clock that the computer has
 * found already. Its calls come from the link's thread.
 */
final class GuestChair implements RoomListener, AutoCloseable {
  private final Consumer<String> says;
  private volatile boolean plays;
  private volatile LinkState state = LinkState.CONNECTING;
  private volatile RoomLink link;

  /** Made before its link, which needs it as listener. */
  private GuestChair(Consumer<String> says, Function<RoomListener, RoomLink> join) {
    this.says = says;
    this.link = join.apply(this);
  }

  /**
   * Comes in.
   *
   * @param says told what became of it where it is not let in
   */
  static GuestChair join(Consumer<String> says, Function<RoomListener, RoomLink> join) {
    return new GuestChair(says, join);
  }

  void play(PlayedAttack attack) {
    if (plays) {
      long unused = link.sendAttack(attack);
    }
  }

  void released(PlayedAttack attack, long nanos) {
    link.released(attack, nanos);
  }

  boolean online() {
    return state == LinkState.ONLINE;
  }

  @Override
  public void linkChanged(LinkState now, String sentence) {
    state = now;
    if (now == LinkState.CLOSED) {
      says.accept(sentence);
    }
  }

  @Override
  public void dealt(ServerMessage.Dealt dealt) {
    plays = dealt.own() != null;
    RoomLink mine = link;
    if (plays && mine != null) {
      mine.ready(dealt.dealId(), true);
    }
  }

  @Override
  public void room(ServerMessage.Room room) {
    plays = room.dealt() != null && room.dealt().own() != null;
  }

  @Override
  public void close() {
    var unused = link.leave().whenComplete((revision, refused) -> link.close());
  }
}
