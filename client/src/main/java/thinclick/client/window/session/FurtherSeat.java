package thinclick.client.window.session;

import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import thinclick.client.link.LinkState;
import thinclick.client.link.PlayedAttack;
import thinclick.client.link.RoomLink;
import thinclick.client.link.RoomListener;
import thinclick.client.window.words.Refused;
import thinclick.protocol.message.AnswerMessage.KeptTake;
import thinclick.protocol.message.ServerMessage.Announced;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Heard;
import thinclick.protocol.message.ServerMessage.ReviewReady;
import thinclick.protocol.time.MonotonicClock;

/**
 * A further player at this computer: a connection and a part of their own, on the clock that the
 * computer has found already. Whoever sits here reads the same page, so a part is read once dealt.
 */
public final class FurtherSeat implements Seat, AutoCloseable {
  private final String name;
  private final BiConsumer<FurtherSeat, String> closed;
  private final Questions questions;
  private final ReadOnlyObjectWrapper<RoomState> state =
      new ReadOnlyObjectWrapper<>(RoomState.OUTSIDE);
  private OwnTake take = new OwnTake("");
  private Consumer<KeptTake> keeping = any -> {};
  private String readDeal = "";
  private final PastTakes past;
  private final RoomLink link;

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
    this.questions = new Questions(windowThread);
    this.past = new PastTakes(windowThread, this::link);
    state.addListener((any, old, now) -> past.follow(old, now));
    this.link =
        join.apply(
            new RoomEar(
                windowThread,
                clock,
                (ear, step) -> change(step),
                (ear, heard) -> heard(heard),
                kept -> keeping.accept(kept),
                past));
  }

  /** As they came in. */
  public String name() {
    return name;
  }

  @Override
  public ReadOnlyObjectProperty<RoomState> stateProperty() {
    return state.getReadOnlyProperty();
  }

  @Override
  public OwnTake take() {
    return take;
  }

  @Override
  public RoomLink link() {
    return link;
  }

  @Override
  public PastTakes past() {
    return past;
  }

  @Override
  public void play(PlayedAttack attack) {
    if (state().takeRuns() && state().ownPart() != null) {
      take.played(link.sendAttack(attack), attack);
    }
  }

  @Override
  public void released(PlayedAttack attack, long nanos) {
    link.released(attack, nanos);
  }

  @Override
  public void keepTake(Consumer<KeptTake> then, Consumer<Refused> refused) {
    ReviewReady review = state().review();
    if (review != null) {
      keeping = then;
      questions.ask(link, in -> in.keepTake(review.takeId()), Session.unlessDone(refused));
    }
  }

  private void change(UnaryOperator<RoomState> step) {
    RoomState next = step.apply(state());
    Announced announced = next.announced();
    if (announced != null && !announced.takeId().equals(take.takeId())) {
      take = new OwnTake(announced.takeId());
    }
    state.set(next);
    Dealt dealt = next.dealt();
    if (dealt != null && dealt.own() != null && !dealt.dealId().equals(readDeal)) {
      readDeal = dealt.dealId();
      link.ready(dealt.dealId(), true);
    }
    if (next.link() == LinkState.CLOSED) {
      closed.accept(this, next.linkSays());
    }
  }

  private void heard(Heard heard) {
    if (heard.takeId().equals(take.takeId())) {
      heard.items().stream()
          .filter(one -> !one.again())
          .forEach(one -> take.heard(one.playerId(), one.micros()));
    }
  }

  /** Leaves the room for good. */
  @Override
  public void close() {
    var unused = link.leave().whenComplete((revision, refused) -> link.close());
  }
}
