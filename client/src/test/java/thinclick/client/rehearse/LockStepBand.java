package thinclick.client.rehearse;

import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import thinclick.client.link.LatestTold;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkOptions;
import thinclick.client.link.LinkState;
import thinclick.client.link.RoomAddress;
import thinclick.client.link.RoomLink;
import thinclick.client.standin.Slip;
import thinclick.client.standin.StandIn;
import thinclick.client.standin.Timing;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.music.Stage;
import thinclick.protocol.time.VirtualTime;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;
import thinclick.server.material.Stock;

/** A host, a leader and stand-ins, all real but for the clock, which is one and virtual. */
final class LockStepBand extends LatestTold implements AutoCloseable {
  private final VirtualTime time = new VirtualTime(1_000_000_000L);
  private final LinkLoop loop = LinkLoop.start(time);
  private final RehearsalHost host;
  private final RoomLink leader;
  private final List<StandIn> players = new ArrayList<>();
  private final List<String> names;
  private final List<Long> heard = Collections.synchronizedList(new ArrayList<>());
  private final List<TakeNews.HeardAttack> judged = Collections.synchronizedList(new ArrayList<>());
  private final List<LinkState> links = Collections.synchronizedList(new ArrayList<>());
  final LockStep step;

  /**
   * @param timings each player's, by number
   * @param slips each player's, by number and hand
   */
  LockStepBand(
      Path folder,
      List<String> names,
      long seed,
      Function<Integer, Timing> timings,
      BiFunction<Integer, ServerMessage.Dealt, Slip> slips) {
    this.names = names;
    this.host =
        RehearsalHost.start(HostOptions.local(folder.resolve("lockstep.db")).on(time, time));
    this.step = new LockStep(time, host, loop);
    RoomAddress address = RoomAddress.local(host.port());
    this.leader = RoomLink.open(LinkOptions.on(loop), address, "Leader", this);
    online(leader::state);
    for (int i = 0; i < names.size(); i++) {
      int number = i;
      StandIn player =
          StandIn.join(
              loop,
              address,
              leader.word(),
              names.get(i),
              timings.apply(i),
              hand -> slips.apply(number, hand),
              seed * 1_000 + i);
      players.add(player);
      online(player::state); // one after the other, so that the order of joining is the same
    }
  }

  private void online(Supplier<LinkState> state) {
    await().until(() -> state.get() == LinkState.ONLINE);
    step.settle();
  }

  /** Plays a drill of the stock to its final review; answers the take as the host has it. */
  Take play(String title, int bars, Double tempo, long seed) {
    Drill drill = Stock.find(title);
    List<Stage> stages = StageFit.over(drill.stages(), bars);
    step.until("everybody's clock", 5, () -> seated().size() == names.size());
    command(leader.lead().material(drill.title()));
    command(leader.lead().plan(stages, tempo));
    command(leader.lead().deal(seed, seated()));
    step.until("everybody ready", 5, this::allReady);
    command(leader.lead().start(dealt.dealId(), 2_000, 1));
    step.until("the announcement", 1, () -> announced != null);
    step.until("the end", 600, () -> stopped != null);
    step.until("the final review", 130, () -> review != null && !review.provisional());
    return host.take(review.takeId()).orElseThrow();
  }

  private void command(CompletableFuture<Long> answer) {
    step.until("an answer to the leader", 2, answer::isDone);
    answer.join();
  }

  /** PlayerIds in the order of names, of those who are here and know room time. */
  private List<String> seated() {
    return names.stream()
        .flatMap(name -> roster.players().stream().filter(p -> p.name().equals(name)))
        .filter(p -> p.connected() && p.uncertaintyMicros() != null)
        .map(ServerMessage.Person::playerId)
        .toList();
  }

  private boolean allReady() {
    return roster.players().stream().filter(p -> names.contains(p.name())).allMatch(p -> p.ready());
  }

  /** Names for so many. */
  static List<String> names(int count) {
    return IntStream.range(0, count).mapToObj(i -> Band.of(count).get(i)).toList();
  }

  @Override
  public void linkChanged(LinkState now, String says) {
    links.add(now);
  }

  /** What became of the leader's link so far. */
  List<LinkState> links() {
    return List.copyOf(links);
  }

  @Override
  public void heard(TakeNews.Heard now) {
    now.items().stream()
        .filter(attack -> !attack.again())
        .forEach(attack -> heard.add(attack.micros()));
    judged.addAll(now.items());
  }

  /** All that the leader heard, in that order. */
  List<TakeNews.HeardAttack> judged() {
    return List.copyOf(judged);
  }

  /** The room times of all attacks the leader, who plays none, heard, in that order. */
  List<Long> heard() {
    return List.copyOf(heard);
  }

  @Override
  public void close() {
    leader.close();
    players.forEach(StandIn::close);
    loop.close();
    host.close();
  }
}
