package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.message.TakeNews.StopReason;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;
import thinclick.protocol.time.VirtualTime;
import thinclick.server.store.Store;
import tools.jackson.databind.JsonNode;

/** One rehearsal from the open door to the review, over real sockets on a clock that is moved. */
class WholeRehearsalTest {
  @TempDir Path folder;
  private final VirtualTime time = new VirtualTime(5_000_000_000L);
  private RehearsalHost host;
  private final List<WireClient> clients = new ArrayList<>();
  private WireClient leader;
  private WireClient mina;
  private WireClient jonas;

  @BeforeEach
  void start() {
    host = RehearsalHost.start(HostOptions.local(folder.resolve("room.db")).on(time, time));
  }

  @AfterEach
  void stop() {
    clients.forEach(WireClient::close);
    host.close();
  }

  private void advanceMillis(long millis) {
    try {
      host.settled().get(30, TimeUnit.SECONDS);
      long end = time.nanos() + millis * 1_000_000;
      while (time.next().orElse(Long.MAX_VALUE) <= end) {
        time.advanceTo(time.next().getAsLong());
        host.settled().get(30, TimeUnit.SECONDS);
      }
      time.advanceTo(end);
    } catch (Exception late) {
      throw new AssertionError(late);
    }
  }

  private WireClient connect() {
    WireClient client = WireClient.connect(host.port());
    clients.add(client);
    return client;
  }

  private ServerMessage.Welcome join(WireClient client, String word, String name) {
    client.send(new ClientMessage.Join(1, 1, word, name, Role.PLAYER, null, null, false));
    ServerMessage.Welcome welcome = client.expect(ServerMessage.Welcome.class);
    client.expect(ServerMessage.Room.class);
    return welcome;
  }

  private long done(long requestId) {
    ServerMessage.Done done = leader.expect(ServerMessage.Done.class);
    assertThat(done.requestId()).isEqualTo(requestId);
    return done.revision();
  }

  @Test
  void fromTheOpenDoorToTheReviewOfEachPlayer() {
    leader = connect();
    leader.send(new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
    ServerMessage.Welcome opened = leader.expect(ServerMessage.Welcome.class);
    assertThat(opened.leaderToken()).hasSize(32);
    assertThat(opened.phase()).isEqualTo(Phase.GATHERING);
    mina = connect();
    ServerMessage.Welcome minas = join(mina, opened.room().toUpperCase(), "Mina");
    jonas = connect();
    join(jonas, opened.room(), "Jonas");

    leader.send(new LeaderCommand.Material(1, opened.revision(), TestDrill.BEATS_AND_ANDS, null));
    leader.send(new LeaderCommand.Deal(2, done(1), 7, List.of()));
    long dealtAt = done(2);
    ServerMessage.Dealt dealt = mina.expect(ServerMessage.Dealt.class);
    assertThat(dealt.own()).isEqualTo("Mina");
    assertThat(dealt.parts()).extracting(Part::player).containsExactly("Mina", "Jonas");
    assertThat(leader.expect(ServerMessage.Dealt.class).own()).isNull();

    mina.send(new PreparingMessage.Ready(dealt.dealId(), true));
    leader.send(new LeaderCommand.Start(3, dealtAt, dealt.dealId(), 2_000, 1));
    done(3);
    TakeNews.Announced announced = mina.expect(TakeNews.Announced.class);
    assertThat(announced.startMicros() - announced.countInMicros()).isEqualTo(2_000_000);
    jonas.expect(TakeNews.Announced.class);
    advanceMillis(2_000);
    assertThat(mina.expect(TakeNews.StageNear.class).stage()).isZero();

    play(mina, announced, dealt.parts().get(0), 10_000);
    play(jonas, announced, dealt.parts().get(1), -4_000);
    advanceMillis(11_000);

    assertThat(mina.expect(TakeNews.Stopped.class).reason()).isEqualTo(StopReason.FINISHED);
    jonas.expect(TakeNews.Stopped.class);
    mina.send(new TakeMessage.PlayedThrough(announced.takeId(), 16));
    jonas.send(new TakeMessage.PlayedThrough(announced.takeId(), 16));
    TakeNews.ReviewReady own = mina.expect(TakeNews.ReviewReady.class);
    assertThat(own.provisional()).isFalse();
    assertThat(names(own.review())).containsExactly("Mina");
    assertThat(own.review().at("/ensemble/hold").asDouble()).isEqualTo(100.0);
    assertThat(names(leader.expect(TakeNews.ReviewReady.class).review()))
        .containsExactly("Mina", "Jonas");

    theCourseIsTheBandsForTheLeaderAndTheOwnForAPlayer(announced.takeId());
    whatIsKeptIsTheOwnPartOrWhatTheLeaderShares(announced.takeId());
    Take stored = stored(announced.takeId());
    assertThat(stored.attacks()).hasSize(32);
    assertThat(stored.parts().get(0).away()).isEmpty();
    assertThat(jonas.all(TakeNews.Heard.class))
        .allSatisfy(
            heard -> assertThat(heard.items()).allMatch(i -> i.playerId().equals(minas.playerId())))
        .hasSize(16);
    // Two share their judgements by themselves; alone, somebody a little late is on the click.
    assertThat(jonas.all(TakeNews.Heard.class).stream().flatMap(h -> h.items().stream()))
        .allMatch(item -> "together".equals(item.judgement()) && !item.again());
    assertThat(leader.all(TakeNews.Heard.class).stream().flatMap(h -> h.items().stream()))
        .hasSize(32)
        .allMatch(item -> "together".equals(item.judgement()));
  }

  private void theCourseIsTheBandsForTheLeaderAndTheOwnForAPlayer(String takeId) {
    leader.send(new QuestionMessage.AskCourse(21, takeId));
    leader.send(new QuestionMessage.AskFewest(22, "Beats and ands", 120));
    AnswerMessage.CourseSoFar bands = leader.expect(AnswerMessage.CourseSoFar.class);
    assertThat(bands.band().at("/courses/0/takes/0/id").asString()).isEqualTo(takeId);
    assertThat(bands.own()).isNull();
    assertThat(bands.last()).as("the first take of its kind").isNull();
    assertThat(leader.expect(AnswerMessage.Fewest.class).held().holdPercent()).isEqualTo(100.0);
    done(21);
    done(22);
    mina.send(new QuestionMessage.AskCourse(23, takeId));
    AnswerMessage.CourseSoFar minas = mina.expect(AnswerMessage.CourseSoFar.class);
    assertThat(minas.band()).isNull();
    assertThat(minas.own().at("/player").asString()).isEqualTo("Mina");
    assertThat(minas.own().at("/courses/0/takes/0/placed").asInt()).isEqualTo(16);
    assertThat(mina.expect(ServerMessage.Done.class).requestId()).isEqualTo(23);
  }

  /** Two share by themselves; not shared, each keeps the own part alone, and the leader all. */
  private void whatIsKeptIsTheOwnPartOrWhatTheLeaderShares(String takeId) {
    AnswerMessage.KeptTake shared = kept(mina, 11, takeId);
    assertThat(shared.whole()).isTrue();
    assertThat(shared.take()).isEqualTo(stored(takeId));

    leader.send(new QuestionMessage.KeepTake(4, takeId, null));
    assertThat(leader.expect(AnswerMessage.KeptTake.class).take()).isEqualTo(stored(takeId));
    leader.send(new LeaderCommand.Share(5, done(4), false));
    done(5);
    mina.send(new QuestionMessage.KeepTake(12, takeId, 1));
    assertThat(refused(mina, 12)).contains("two seconds between");
    advanceMillis(2_000);
    AnswerMessage.KeptTake own = kept(mina, 13, takeId);
    assertThat(own.whole()).isFalse();
    assertThat(own.take().parts()).extracting(Part::player).containsExactly("Mina");
    assertThat(own.take().attacks()).hasSize(16).allMatch(one -> one.player().equals("Mina"));

    jonas.send(new QuestionMessage.KeepTake(14, "room-t9", null));
    assertThat(refused(jonas, 14)).contains("one of the last takes");
  }

  private static String refused(WireClient player, long request) {
    ServerMessage.Problem problem = player.expect(ServerMessage.Problem.class);
    while (!Long.valueOf(request).equals(problem.requestId())) {
      problem = player.expect(ServerMessage.Problem.class); // what was refused before
    }
    return problem.says();
  }

  private static AnswerMessage.KeptTake kept(WireClient player, long request, String takeId) {
    player.send(new QuestionMessage.KeepTake(request, takeId, 1));
    AnswerMessage.KeptTake kept = player.expect(AnswerMessage.KeptTake.class);
    assertThat(player.expect(ServerMessage.Done.class).requestId()).isEqualTo(request);
    return kept;
  }

  /** Plays the part as written, steadily late by so many microseconds, one frame an attack. */
  private void play(WireClient player, TakeNews.Announced announced, Part part, long lateMicros) {
    StepGrid grid = new StepGrid(Meter.FOUR_FOUR, 2, 120, Swing.STRAIGHT, announced.startMicros());
    long seq = 0;
    for (int step : part.attackSteps()) {
      player.send(
          new TakeMessage.Attacks(
              announced.takeId(),
              announced.epoch(),
              ++seq,
              List.of(WireAttack.tap(grid.instantOf(step) + lateMicros))));
    }
    while (player.expect(TakeNews.Stored.class).throughSeq() < seq) {
      advanceMillis(20);
    }
  }

  private static List<String> names(JsonNode review) {
    return review.get("players").valueStream().map(p -> p.get("player").stringValue()).toList();
  }

  private Take stored(String takeId) {
    try (Store store =
        Store.open(folder.resolve("room.db"), java.time.InstantSource.system(), available -> {})) {
      return store.take(takeId).join().orElseThrow();
    }
  }
}
