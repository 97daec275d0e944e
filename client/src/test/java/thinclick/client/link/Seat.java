package thinclick.client.link;

import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.TakeNews;

/** One person of a test in a room: a link, what it was told last, and what was played on it. */
final class Seat extends LatestTold {
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  final RoomLink link;
  final List<LinkState> states = Collections.synchronizedList(new ArrayList<>());
  private final List<Long> played = new ArrayList<>();
  volatile String says = "";
  volatile AnswerMessage.KeptTake kept;
  volatile long storedThrough;
  volatile int waiting;

  private Seat(Function<Seat, RoomLink> link) {
    this.link = link.apply(this);
  }

  static Seat opens(LinkOptions options, RoomAddress address, String name) {
    return new Seat(seat -> RoomLink.open(options, address, name, seat));
  }

  static Seat joins(LinkOptions options, RoomAddress address, String word, String name) {
    return new Seat(seat -> RoomLink.join(options, address, word, name, Role.PLAYER, seat));
  }

  Seat online() {
    return sees(LinkState.ONLINE);
  }

  Seat sees(LinkState state) {
    await().atMost(PATIENCE).until(() -> link.state() == state);
    return this;
  }

  Seat steady() {
    await().atMost(PATIENCE).until(() -> link.clock().state() == ClockState.STEADY);
    return this;
  }

  static <T> T until(Supplier<T> value) {
    await().atMost(PATIENCE).until(() -> value.get() != null);
    return value.get();
  }

  /** Chooses a drill, deals it to everybody, announces a take; answers its id. */
  String starts(String drill) {
    link.lead().material(drill).join();
    link.lead().deal(1, List.of()).join();
    String dealId = until(() -> dealt).dealId();
    link.lead().start(dealId, 2_000, 1).join();
    return until(() -> announced).takeId();
  }

  /** Plays so many attacks a tenth of a millisecond apart. */
  void plays(int count, long fromNanos) {
    for (int i = 0; i < count; i++) {
      played.add(link.sendAttack(PlayedAttack.tap(fromNanos + i * 100_000L)));
    }
  }

  /** The room times of all that was played, in that order. */
  List<Long> played() {
    return List.copyOf(played);
  }

  @Override
  public void linkChanged(LinkState state, String sentence) {
    says = sentence;
    states.add(state);
  }

  @Override
  public void waitingChanged(int now) {
    waiting = now;
  }

  @Override
  public void stored(TakeNews.Stored now) {
    storedThrough = now.throughSeq();
  }

  @Override
  public void take(AnswerMessage.KeptTake take) {
    kept = take;
  }
}
