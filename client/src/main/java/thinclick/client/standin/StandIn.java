package thinclick.client.standin;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkOptions;
import thinclick.client.link.LinkState;
import thinclick.client.link.PlayedAttack;
import thinclick.client.link.RoomAddress;
import thinclick.client.link.RoomLink;
import thinclick.client.link.RoomListener;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.time.Timers;

/**
 * A simulated player in a room: a client like any other, with its own connection, its own estimate
 * of room time and its own stamps; only the hands are a model.
 */
public final class StandIn implements RoomListener, AutoCloseable {
  private final LinkLoop loop;
  private final String name;
  private final Function<ServerMessage.Dealt, Slip> slips;
  private final Timing timing;
  private final long seed;
  private final RoomLink link;

  // The link's thread only.
  private final Map<String, String> names = new HashMap<>();
  private ServerMessage.@Nullable Dealt dealt;
  private @Nullable String playing;
  private @Nullable Player player;
  private Timers.Pending next = () -> {};
  private volatile LinkState state = LinkState.CONNECTING;
  private volatile String says = "";

  private StandIn(
      LinkLoop loop,
      RoomAddress address,
      String word,
      String name,
      Timing timing,
      Function<ServerMessage.Dealt, Slip> slips,
      long seed) {
    this.loop = loop;
    this.name = name;
    this.timing = timing;
    this.slips = slips;
    this.seed = seed;
    this.link =
        RoomLink.join(LinkOptions.on(loop).asStandIn(), address, word, name, Role.PLAYER, this);
  }

  /**
   * Joins a room.
   *
   * @param slips where this player will be displaced in a take, asked once it is dealt
   * @param seed fixes the noise of every take
   */
  public static StandIn join(
      LinkLoop loop,
      RoomAddress address,
      String word,
      String name,
      Timing timing,
      Function<ServerMessage.Dealt, Slip> slips,
      long seed) {
    return new StandIn(loop, address, word, name, timing, slips, seed);
  }

  /** The nickname it goes by. */
  public String name() {
    return name;
  }

  /** Where its link stands. */
  public LinkState state() {
    return state;
  }

  /** The last sentence about its link. */
  public String says() {
    return says;
  }

  @Override
  public void linkChanged(LinkState now, String sentence) {
    says = sentence;
    state = now;
  }

  @Override
  public void roster(ServerMessage.Roster roster) {
    names.clear();
    roster.players().forEach(person -> names.put(person.playerId(), person.name()));
  }

  @Override
  public void dealt(ServerMessage.Dealt hand) {
    dealt = hand;
    if (hand.own() != null) {
      link.ready(hand.dealId(), true);
    }
  }

  /** Coming back in the middle of a take: the part is picked up where the band is by now. */
  @Override
  public void room(ServerMessage.Room room) {
    if (room.dealt() != null) {
      dealt = room.dealt();
    }
    if (room.announced() != null && room.stopped() == null) {
      announced(room.announced());
    }
  }

  @Override
  public void announced(TakeNews.Announced take) {
    ServerMessage.Dealt hand = dealt;
    if (take.takeId().equals(playing) || hand == null || hand.own() == null) {
      return;
    }
    Part own = null;
    List<Part> others = new ArrayList<>();
    for (Part part : hand.parts()) {
      if (part.player().equals(hand.own())) {
        own = part;
      } else {
        others.add(part);
      }
    }
    if (own == null) {
      return;
    }
    StepGrid grid = hand.gridFrom(take.startMicros());
    List<Click> clicks = new ClickPlan(hand.stages()).clicks(grid);
    playing = take.takeId();
    Player fresh =
        new Player(
            timing, slips.apply(hand), own, others, grid, clicks, seed * 31 + name.hashCode());
    fresh.skipTo(link.roomMicros(loop.nanos()));
    player = fresh;
    settleNext();
  }

  @Override
  public void heard(TakeNews.Heard heard) {
    Player listening = player;
    if (listening != null && heard.takeId().equals(playing)) {
      for (TakeNews.HeardAttack attack : heard.items()) {
        String who = names.get(attack.playerId());
        if (who != null && !attack.again()) {
          listening.heard(who, attack.micros());
        }
      }
    }
  }

  @Override
  public void stopped(TakeNews.Stopped stopped) {
    if (stopped.takeId().equals(playing)) {
      next.cancel();
      player = null;
    }
  }

  @Override
  public void close() {
    var unused = link.leave().whenComplete((revision, refused) -> link.close());
  }

  private void settleNext() {
    Player mind = player;
    Long micros = mind == null ? null : mind.settleMicros();
    next.cancel();
    if (mind != null && micros != null) {
      next = loop.at(link.nanosOf(micros), () -> play(mind));
    }
  }

  private void play(Player mind) {
    if (mind != player) {
      return;
    }
    Player.Move move = mind.settle();
    long nanos = link.nanosOf(move.micros());
    loop.at(
        nanos,
        () -> {
          if (mind == player) {
            link.sendAttack(new PlayedAttack(nanos, move.accent() ? 104 : 80, null, null, null));
          }
        });
    settleNext();
  }
}
