package thinclick.client.window.session;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.RoomAddress;
import thinclick.client.link.RoomLink;
import thinclick.client.rehearse.Band;
import thinclick.client.standin.StandIn;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.ServerMessage.Person;

/**
 * A room of one's own: as soon as it is open the stand-ins come in over this computer's own loop,
 * and once they have found the room's clock the drill is chosen and dealt. The player counts in.
 */
final class Practice implements AutoCloseable {
  private final LinkLoop loop;
  private final RoomAddress address;
  private final String name;
  private final Company company;
  private final long seed;
  private final Consumer<Deal> ask;
  private final List<StandIn> band = new ArrayList<>();
  private boolean called;
  private boolean dealt;

  /** What is asked of the room once everybody is there. */
  @FunctionalInterface
  interface Deal {
    CompletableFuture<Long> by(RoomLink link);
  }

  /**
   * @param seed fixes the deal and the stand-ins' noise
   * @param ask hands the leader's commands to the link and says what is refused
   */
  Practice(
      LinkLoop loop,
      RoomAddress address,
      String name,
      Company company,
      long seed,
      Consumer<Deal> ask) {
    this.loop = loop;
    this.address = address;
    this.name = name;
    this.company = company;
    this.seed = seed;
    this.ask = ask;
  }

  /** The room has changed: goes one step further where it can. */
  void follow(RoomState room) {
    if (!room.inside()) {
      return;
    }
    if (!called) {
      called = true;
      List<String> names = Band.without(name, company.standIns().size());
      for (int i = 0; i < names.size(); i++) {
        var manner = company.standIns().get(i);
        band.add(
            StandIn.join(
                loop,
                address,
                room.word(),
                names.get(i),
                manner.timing(),
                manner::slip,
                seed * 100 + i));
      }
    }
    List<String> chairs = chairs(room);
    if (!dealt && chairs != null && room.clock().state() == ClockState.STEADY) {
      dealt = true;
      ask.accept(
          link ->
              Lead.chosen(link.lead(), company.drill(), company.tempo())
                  .thenCompose(done -> link.lead().deal(seed, chairs)));
    }
  }

  /** True until the parts have been asked for. */
  boolean gathering() {
    return !dealt;
  }

  /**
   * Everybody's playerId in the order of chairs; null as long as somebody is missing or has not
   * found the clock.
   */
  @Nullable List<String> chairs(RoomState room) {
    Map<String, Person> here = new HashMap<>();
    room.people().forEach(person -> here.put(person.name(), person));
    List<String> ids = new ArrayList<>();
    for (StandIn one : band) {
      Person person = here.get(one.name());
      if (person == null || !person.connected() || person.uncertaintyMicros() == null) {
        return null;
      }
      ids.add(person.playerId());
    }
    ids.add(company.ownPlace(), room.myId());
    return ids;
  }

  @Override
  public void close() {
    band.forEach(StandIn::close);
  }
}
