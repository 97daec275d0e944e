package thinclick.client.rehearse;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkOptions;
import thinclick.client.link.LinkState;
import thinclick.client.link.PlayedAttack;
import thinclick.client.link.RoomAddress;
import thinclick.client.link.RoomLink;
import thinclick.client.link.RoomListener;
import thinclick.client.standin.Slip;
import thinclick.client.standin.Timing;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.message.TakeNews.ReviewReady;

/** A pupil at a computer of the class: a client like any other, with hands by a model. */
class Pupil implements RoomListener {
  private final LinkLoop loop;
  private final String name;
  private final Timing timing;
  private final long seed;
  private final Map<String, String> names = new HashMap<>();
  final RoomLink link;
  private Dealt dealt;
  private Hands hands;
  private String playing = "";
  volatile Slip slip = Slip.NONE;
  volatile LinkState state = LinkState.CONNECTING;

  /** Room times that were sent, by take. */
  final Map<String, List<Long>> played = Collections.synchronizedMap(new LinkedHashMap<>());

  /** The last review of each take. */
  final Map<String, ReviewReady> slips = Collections.synchronizedMap(new LinkedHashMap<>());

  Pupil(LinkLoop loop, RoomAddress address, String word, String name, Timing timing, long seed) {
    this.loop = loop;
    this.name = name;
    this.timing = timing;
    this.seed = seed;
    link = RoomLink.join(LinkOptions.on(loop), address, word, name, Role.PLAYER, this);
  }

  final String name() {
    return name;
  }

  /** Shuts the program in good order. */
  final void leave() {
    loop.run(
        () -> {
          if (hands != null) {
            hands.rest();
          }
        });
    var unused = link.leave().whenComplete((revision, refused) -> link.close());
  }

  @Override
  public void linkChanged(LinkState now, String says) {
    state = now;
  }

  @Override
  public void roster(ServerMessage.Roster roster) {
    names.clear();
    roster.players().forEach(person -> names.put(person.playerId(), person.name()));
  }

  @Override
  public void dealt(Dealt hand) {
    dealt = hand;
    if (hand.own() != null) {
      link.ready(hand.dealId(), true);
    }
  }

  @Override
  public void room(ServerMessage.Room room) {
    dealt = room.dealt();
  }

  @Override
  public void announced(TakeNews.Announced take) {
    if (dealt == null || dealt.own() == null) {
      return;
    }
    playing = take.takeId();
    List<Long> mine = Collections.synchronizedList(new ArrayList<>());
    played.put(playing, mine);
    hands =
        new Hands(
            loop,
            link::nanosOf,
            link::roomMicros,
            nanos -> mine.add(link.sendAttack(PlayedAttack.tap(nanos))),
            dealt,
            take,
            timing,
            slip,
            seed * 31 + name.hashCode());
  }

  @Override
  public void heard(TakeNews.Heard heard) {
    if (hands != null && heard.takeId().equals(playing)) {
      heard.items().forEach(one -> hands.hears(names.getOrDefault(one.playerId(), ""), one));
    }
  }

  @Override
  public void stopped(TakeNews.Stopped stopped) {
    if (hands != null && stopped.takeId().equals(playing)) {
      hands.rest();
    }
  }

  @Override
  public void reviewReady(ReviewReady review) {
    slips.put(review.takeId(), review);
  }
}
