package thinclick.client.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static thinclick.client.link.LinkState.CONNECTING;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Take;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;

/** Lines that are cut while somebody plays, over real sockets in real time. */
class ReconnectTest {
  @TempDir Path folder;
  private RehearsalHost host;
  private CuttingProxy proxy;
  private LinkLoop loop;
  private Seat leader;

  @BeforeEach
  void open() {
    host = RehearsalHost.start(HostOptions.local(folder.resolve("rooms.db")));
    proxy = new CuttingProxy(host.port());
    loop = LinkLoop.start();
    leader = Seat.opens(LinkOptions.on(loop), RoomAddress.local(host.port()), "Lea").online();
  }

  @AfterEach
  void close() throws Exception {
    loop.close();
    proxy.close();
    host.close();
  }

  private Seat joins(String name, RoomAddress address) {
    return Seat.joins(LinkOptions.on(loop), address, leader.link.word(), name);
  }

  private RoomAddress cuttable() {
    return RoomAddress.local(proxy.port());
  }

  private List<Long> stored(String takeId, String player) {
    Take take = host.take(takeId).orElseThrow();
    return take.attacks().stream()
        .filter(attack -> attack.player().equals(player))
        .map(Attack::micros)
        .toList();
  }

  @Test
  void cutsInTheMiddleOfPlayingLoseNothingAndDoubleNothing() {
    Seat mina = joins("Mina", cuttable()).online().steady();
    Seat jonas = joins("Jonas", RoomAddress.local(host.port())).online().steady();
    String takeId = leader.starts("Even eighths");
    Seat.until(() -> mina.announced);
    Seat.until(() -> jonas.announced);
    long from = loop.nanos();
    for (int cut = 0; cut < 3; cut++) {
      mina.plays(40, from + cut * 10_000_000L);
      proxy.cut();
      mina.plays(5, from + cut * 10_000_000L + 5_000_000L); // nobody told the player
      jonas.plays(10, from + cut * 10_000_000L);
      mina.sees(LinkState.AWAY).online();
    }
    leader.link.lead().stop(takeId).join();
    await().until(() -> leader.review != null && !leader.review.provisional());

    assertThat(mina.states).contains(LinkState.AWAY).doesNotContain(LinkState.CLOSED);
    assertThat(stored(takeId, "Mina")).containsExactlyInAnyOrderElementsOf(mina.played());
    assertThat(stored(takeId, "Jonas")).containsExactlyInAnyOrderElementsOf(jonas.played());
    assertThat(mina.waiting).isZero();
    assertThat(jonas.states).containsExactly(LinkState.ONLINE);
  }

  @Test
  void moreThanMayBeInFlightIsSentAsItIsStored() {
    Seat mina = joins("Mina", cuttable()).online().steady();
    String takeId = leader.starts("Even eighths");
    Seat.until(() -> mina.announced);
    mina.plays(400, loop.nanos());
    await().until(() -> mina.storedThrough == 400 && mina.waiting == 0);
    assertThat(stored(takeId, "Mina")).containsExactlyInAnyOrderElementsOf(mina.played());
  }

  @Test
  void nameThatIsTakenEndsTheLinkWithTheReason() {
    joins("Mina", cuttable()).online();
    Seat second = joins("Mina", cuttable()).sees(LinkState.CLOSED);
    assertThat(second.says).contains("Mina").contains("taken");
  }

  @Test
  void wordOfNoRoomEndsTheLinkWithTheReason() {
    Seat lost = Seat.joins(LinkOptions.on(loop), cuttable(), "nowhere", "Ilse");
    assertThat(lost.sees(LinkState.CLOSED).says).contains("no room");
  }

  @Test
  void addressWhereNobodyListensEndsTheLinkWithTheReason() {
    RoomAddress nobody = RoomAddress.local(1);
    Seat lost = Seat.joins(LinkOptions.on(loop), nobody, "nowhere", "Ilse");
    assertThat(lost.sees(LinkState.CLOSED).says).contains("no server answers at ws://127.0.0.1:1");
  }

  @Test
  void hostThatHangsUpOnTheFirstAttemptsIsAskedAgain() {
    proxy.hangUpOn(2);
    Seat mina = joins("Mina", cuttable()).online();

    assertThat(mina.states).containsExactly(CONNECTING, CONNECTING, LinkState.ONLINE);
  }

  @Test
  void whoLeavesIsNotCalledBack() {
    Seat mina = joins("Mina", cuttable()).online();
    mina.link.leave().join();
    mina.sees(LinkState.CLOSED);
    Seat again = joins("Mina", cuttable()).online();
    assertThat(again.states).containsExactly(LinkState.ONLINE);
  }

  @Test
  void chairsDelayIsTakenOffTheStamp() {
    Seat mina = joins("Mina", cuttable()).online().steady();
    long at = loop.nanos();
    long plain = mina.link.sendAttack(PlayedAttack.tap(at));
    mina.link.chairDelay(30);
    long corrected = mina.link.sendAttack(PlayedAttack.tap(at));
    assertThat(plain - corrected).isBetween(29_900L, 30_100L);
  }
}
