package thinclick.client.window.session;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.LongConsumer;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import thinclick.client.link.PlayedAttack;
import thinclick.client.link.RoomLink;
import thinclick.client.link.RoomListener;
import thinclick.client.window.words.Refused;
import thinclick.protocol.message.AnswerMessage.KeptTake;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.message.TakeNews.Heard;
import thinclick.protocol.message.TakeNews.ReviewReady;
import thinclick.protocol.time.MonotonicClock;

/**
 * One player in a room, or in none: the link, what its messages make of the room's state, and what
 * is played on it. What an earlier link still tells is not heard any more. All on the window's
 * thread, unless stated.
 */
final class Presence {
  private final Executor windowThread;
  private final MonotonicClock clock;
  private final BiConsumer<RoomState, RoomState> changed;
  private final ReadOnlyObjectWrapper<RoomState> state =
      new ReadOnlyObjectWrapper<>(RoomState.OUTSIDE);
  private final Questions questions;
  private final PastTakes past;
  private OwnTake take = new OwnTake("");
  private Consumer<Heard> heardBy = heard -> {};
  private LongConsumer playedBy = micros -> {};
  private Consumer<KeptTake> keeping = any -> {};
  private @Nullable RoomEar ear;
  private volatile @Nullable RoomLink link;

  /**
   * @param changed told what the room was and what a message has made of it
   */
  Presence(Executor windowThread, MonotonicClock clock, BiConsumer<RoomState, RoomState> changed) {
    this.windowThread = windowThread;
    this.clock = clock;
    this.changed = changed;
    this.questions = new Questions(windowThread);
    this.past = new PastTakes(windowThread, this::link);
    state.addListener((any, old, now) -> past.follow(old, now));
  }

  ReadOnlyObjectProperty<RoomState> stateProperty() {
    return state.getReadOnlyProperty();
  }

  RoomState state() {
    return state.get();
  }

  /** The attacks of the running or last take. */
  OwnTake take() {
    return take;
  }

  /** What takes before say to this player. */
  PastTakes past() {
    return past;
  }

  /** The link, null outside a room; may be asked from any thread. */
  @Nullable RoomLink link() {
    return link;
  }

  /** Who is told of every attack of others, as it arrives. */
  void onHeard(Consumer<Heard> listener) {
    heardBy = listener;
  }

  /** Who is told of every own attack that counts: its room time, in microseconds. */
  void onPlayed(LongConsumer listener) {
    playedBy = listener;
  }

  // ---------------------------------------------------------------- coming, being there, going

  /** The room changes by what no message says. */
  void change(UnaryOperator<RoomState> step) {
    state.set(step.apply(state()));
  }

  /** Goes in by a link that tells what it hears. */
  void enter(Function<RoomListener, RoomLink> connect) {
    RoomEar mine =
        new RoomEar(
            windowThread, clock, this::heardOf, this::heard, kept -> keeping.accept(kept), past);
    ear = mine;
    link = connect.apply(mine);
  }

  private void heardOf(RoomEar from, UnaryOperator<RoomState> step) {
    if (from != ear) {
      return;
    }
    RoomState before = state();
    RoomState next = step.apply(before);
    Announced announced = next.announced();
    if (announced != null && !announced.takeId().equals(take.takeId())) {
      take = new OwnTake(announced.takeId());
    }
    state.set(next);
    changed.accept(before, next);
  }

  private void heard(RoomEar from, Heard heard) {
    if (from == ear && heard.takeId().equals(take.takeId())) {
      heard.items().stream()
          .filter(one -> !one.again() && !one.partOfAnother())
          .forEach(one -> take.heard(one.playerId(), one.micros()));
      heardBy.accept(heard);
    }
  }

  /** Closes the link; what was asked of it is waited for no more. */
  void leave() {
    RoomLink old = hearNoMore();
    if (old != null) {
      old.close();
    }
  }

  /**
   * From now on nothing changes here; answers the link, for whoever has a last word to say on it.
   */
  @Nullable RoomLink hearNoMore() {
    questions.forget();
    RoomLink old = link;
    link = null;
    ear = null;
    return old;
  }

  // ---------------------------------------------------------------- what is done there

  /** Sends an attack where a take runs in which there is a part; it is kept until it is stored. */
  void play(PlayedAttack attack) {
    RoomLink now = link;
    if (now != null && state().takeRuns() && state().ownPart() != null) {
      long micros = now.sendAttack(attack);
      if (take.played(micros, attack)) {
        playedBy.accept(micros);
      }
    }
  }

  /** An attack that was played has been released, which gives it its length. */
  void released(PlayedAttack attack, long nanos) {
    RoomLink now = link;
    if (now != null) {
      now.released(attack, nanos);
    }
  }

  /** Asks for the take that was reviewed last. */
  void keepTake(Consumer<KeptTake> then, Consumer<Refused> refused) {
    ReviewReady review = state().review();
    RoomLink now = link;
    if (review != null && now != null) {
      keeping = then;
      questions.ask(
          now,
          in -> in.keepTake(review.takeId()),
          why -> {
            if (!why.isEmpty()) { // what was done has nothing to tell
              refused.accept(why);
            }
          });
    }
  }

  /** Asks the room for something once what was asked before has been answered. */
  void ask(Function<RoomLink, CompletableFuture<Long>> command) {
    RoomLink now = link;
    RoomEar asking = ear;
    if (now != null && asking != null) {
      questions.ask(now, command, refused -> heardOf(asking, room -> room.problem(refused)));
    }
  }

  /** The attacks of the running or last take by the player's name, room time. */
  Map<String, List<Long>> attacksByName() {
    Map<String, List<Long>> attacks = new HashMap<>();
    for (Person person : state().people()) {
      boolean me = person.playerId().equals(state().myId());
      attacks.put(person.name(), me ? take.counted() : take.of(person.playerId()));
    }
    return attacks;
  }
}
