package thinclick.client.window.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.client.link.CuttingProxy;
import thinclick.client.link.LeftRoom;
import thinclick.client.link.LinkState;
import thinclick.client.link.PlayedAttack;
import thinclick.client.link.RoomAddress;
import thinclick.client.link.RoomLink;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews.StopReason;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;
import thinclick.server.material.Stock;

/**
 * Cases 18 and 19, as the window lives through them, without the window: the line is cut in a take,
 * the program dies with attacks that were not sent, the host is started again on its database.
 */
class ResilienceTest extends PlainThread {
  private static final Duration PATIENCE = Duration.ofSeconds(120);

  @TempDir Path folder;

  private final Situation situation = new Situation(Words.in(Locale.ENGLISH));
  private final List<AutoCloseable> open = new ArrayList<>();

  @AfterEach
  void end() throws Exception {
    for (AutoCloseable one : open) {
      one.close();
    }
    windowThread.shutdownNow();
  }

  @Test
  void aTakeGoesOnOverACutAndADeathAndARestartAndHoldsEveryAttackOnce() throws Exception {
    HostOptions options = HostOptions.local(folder.resolve("rooms.db"));
    RehearsalHost host = RehearsalHost.start(options);
    CuttingProxy proxy = new CuttingProxy(host.port());
    open.add(proxy);
    Session leader = session("leader");
    run(() -> leader.openAt(RoomAddress.local(host.port()), "Lea"));
    until(() -> leader.state().inside());
    Session player = session("player");
    run(() -> player.join(RoomAddress.local(proxy.port()), leader.state().word(), "Mina"));
    until(() -> player.state().inside());
    until(() -> player.state().clock().state() == ClockState.STEADY);

    Drill drill = Stock.find("Even eighths");
    List<String> chairs = List.of(on(() -> player.state().myId()));
    run(() -> leader.lead().chooseAndDeal(new Lead.Hand(drill, 90, 1, chairs)));
    until(() -> player.state().ownPart() != null && leader.state().phase() == Phase.DEALT);
    run(() -> leader.lead().countIn());
    until(() -> player.state().takeRuns());
    String takeId = on(() -> player.state().announced().takeId());
    playAndStore(player, 10);

    proxy.target(1); // nothing more comes through
    proxy.cut();
    until(() -> player.state().link() == LinkState.AWAY);
    play(player, 7);
    until(() -> player.state().waiting() == 7);
    assertThat(says(player))
        .contains("Connection lost")
        .contains("Play on")
        .contains("7\u00a0notes");
    assertThat(on(() -> player.state().takeRuns())).as("the take goes on").isTrue();

    List<Long> played = playedBy(player);
    run(player::close); // the program ends with seven attacks in its journal
    await().atMost(PATIENCE).until(() -> !RoomLink.unsent(folder.resolve("player")).isEmpty());
    host.close();
    RehearsalHost again = RehearsalHost.start(options);
    open.add(again);
    proxy.target(again.port());
    until(() -> leader.state().link() == LinkState.AWAY);
    assertThat(says(leader)).contains("Connection lost");

    Session next = session("player");
    run(next::bringWhatIsLeft);
    assertThat(on(() -> next.leftProperty().get())).isEqualTo(1);
    until(() -> next.leftProperty().get() == 0);
    await().atMost(PATIENCE).until(() -> RoomLink.unsent(folder.resolve("player")).isEmpty());
    assertThat(again.take(takeId).orElseThrow().attacks())
        .extracting(Attack::micros)
        .containsExactlyInAnyOrderElementsOf(played);
  }

  /** Case 18 to the letter, in real time; the suite's own cuts are as long as coming back takes. */
  @Test
  @Tag("long")
  void aCutOfTenSecondsStopsNeitherTheTakeNorItsClickAndLosesNothing() throws Exception {
    RehearsalHost host = RehearsalHost.start(HostOptions.local(folder.resolve("rooms.db")));
    open.add(host);
    CuttingProxy proxy = new CuttingProxy(host.port());
    open.add(proxy);
    Session leader = session("leader");
    run(() -> leader.openAt(RoomAddress.local(host.port()), "Lea"));
    until(() -> leader.state().inside());
    Session player = session("player");
    run(() -> player.join(RoomAddress.local(proxy.port()), leader.state().word(), "Mina"));
    until(() -> player.state().inside());
    until(() -> player.state().clock().state() == ClockState.STEADY);
    List<String> chairs = List.of(on(() -> player.state().myId()));
    run(
        () ->
            leader.lead().chooseAndDeal(new Lead.Hand(Stock.find("Even eighths"), 90, 1, chairs)));
    until(() -> player.state().ownPart() != null && leader.state().phase() == Phase.DEALT);
    run(() -> leader.lead().countIn());
    until(() -> player.state().takeRuns());
    String takeId = on(() -> player.state().announced().takeId());
    long lastClickMicros = on(() -> player.state().announced().startMicros()) + 20_000_000L;
    long before = on(() -> player.link().nanosOf(lastClickMicros));

    long cut = System.nanoTime();
    proxy.target(1); // nothing more comes through
    proxy.cut();
    for (int tap = 0; tap < 20; tap++) {
      long due = cut + tap * 500_000_000L;
      await().pollInterval(Duration.ofMillis(10)).until(() -> System.nanoTime() - due >= 0);
      play(player, 1);
      assertThat(on(() -> player.state().takeRuns())).as("tap %d", tap).isTrue();
    }
    await().until(() -> System.nanoTime() - cut >= 10_000_000_000L);
    assertThat(on(() -> player.state().link())).isEqualTo(LinkState.AWAY);
    assertThat(says(player)).contains("Connection lost").contains("20\u00a0notes");
    assertThat(Math.abs(on(() -> player.link().nanosOf(lastClickMicros)) - before) / 1e6)
        .as("where a click sounds that is still to come, ms")
        .isLessThan(2);

    proxy.target(host.port());
    until(() -> player.state().link() == LinkState.ONLINE && player.state().waiting() == 0);
    assertThat(on(() -> player.state().takeRuns())).as("back in the same take").isTrue();
    run(() -> leader.lead().stop());
    until(() -> player.state().review() != null && !player.state().review().provisional());
    assertThat(host.take(takeId).orElseThrow().attacks())
        .extracting(Attack::micros)
        .containsExactlyInAnyOrderElementsOf(playedBy(player));
  }

  /** The instants of what was played there, room time. */
  private List<Long> playedBy(Session session) {
    return on(() -> session.take().ownAttacks("").stream().map(Attack::micros).toList());
  }

  /** What is on its disk when a leader's computer dies is all that the next run has. */
  @Test
  void aLeaderWhoseComputerDiedGoesBackIntoTheRoomAndLeadsIt() throws Exception {
    Session leader = session("desk");
    Files.createDirectory(folder.resolve("desk"));
    run(() -> leader.openHere("Lea", false));
    until(() -> leader.state().inside() && leader.state().clock().state() == ClockState.STEADY);
    List<String> chairs = List.of(on(() -> leader.state().myId()));
    Drill drill = Stock.find("Even eighths");
    run(() -> leader.lead().chooseAndDeal(new Lead.Hand(drill, 90, 1, chairs)));
    until(() -> leader.state().phase() == Phase.DEALT);
    run(() -> leader.lead().countIn());
    until(() -> leader.state().takeRuns());
    String word = leader.state().word();
    playAndStore(leader, 5);
    copy(folder.resolve("desk"), folder.resolve("disk"));
    run(leader::close);

    Session next = session("disk");
    run(next::bringWhatIsLeft);
    LeftRoom left = on(() -> next.leftRooms().get(0));
    assertThat(left.name()).isEqualTo("Lea");
    assertThat(left.led()).isTrue();
    assertThat(left.room()).isEqualTo(word);
    run(() -> next.comeBack(left));
    until(() -> next.state().inside() && next.state().leader());
    assertThat(on(() -> next.state().word())).isEqualTo(word);
    until(() -> next.state().review() != null);
    assertThat(on(() -> next.state().stopped().reason())).isEqualTo(StopReason.INTERRUPTED);
    run(() -> next.lead().chooseAndDeal(new Lead.Hand(drill, 90, 1, chairs)));
    until(() -> next.state().phase() == Phase.DEALT);
    run(next::leave);
    await("what was left by itself is not offered")
        .atMost(PATIENCE)
        .until(() -> noJournalIn(folder.resolve("disk")));
  }

  private static boolean noJournalIn(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.noneMatch(file -> file.toString().endsWith(".journal"));
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    Files.createDirectory(to);
    try (Stream<Path> files = Files.list(from)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Files.copy(file, to.resolve(file.getFileName()));
      }
    }
  }

  private Session session(String name) {
    Session made = new Session(windowThread, MonotonicClock.SYSTEM, folder.resolve(name));
    open.add(0, () -> run(made::close));
    return made;
  }

  private void play(Session player, int count) {
    run(
        () -> {
          long nanos = System.nanoTime();
          for (int i = 0; i < count; i++) {
            player.play(new PlayedAttack(nanos + i * 50_000_000L, null, null, null, null));
          }
        });
  }

  /**
   * Until nothing of it waits. What waits is told from the link's thread, so that it is 0 as well
   * before anything was told: what is asked after the attacks is answered after that.
   */
  private void playAndStore(Session player, int count) {
    play(player, count);
    on(() -> player.link()).browse(null).join();
    until(() -> player.state().waiting() == 0);
  }

  private String says(Session session) {
    return on(() -> situation.say(session.state(), TakeMoment.NONE, System.nanoTime()));
  }
}
