package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.message.TakeNews.StopReason;
import thinclick.server.store.Store;

/** A host killed with SIGKILL in the middle of a take, and started again on the same database. */
class KilledHostTest {
  private static final int GENERATED = 120;

  @TempDir Path folder;

  @Test
  void everyAcknowledgedAttackIsStoredOnceAndTheTakeEndsInterrupted() {
    Path database = folder.resolve("room.db");
    String word;
    String leaderToken;
    String minaToken;
    TakeNews.Announced announced;
    long acknowledged;
    try (HostProcess host = HostProcess.serve(database)) {
      WireClient leader = WireClient.connect(host.port());
      leader.send(new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
      ServerMessage.Welcome opened = leader.expect(ServerMessage.Welcome.class);
      word = opened.room();
      leaderToken = opened.leaderToken();
      WireClient mina = WireClient.connect(host.port());
      mina.send(new ClientMessage.Join(1, 1, word, "Mina", Role.PLAYER, null, null, false));
      minaToken = mina.expect(ServerMessage.Welcome.class).token();
      announced = start(leader, opened.revision());

      for (int seq = 1; seq <= GENERATED; seq++) {
        mina.send(attack(announced, seq));
      }
      acknowledged = mina.expect(TakeNews.Stored.class).throughSeq();
      host.kill();
      for (TakeNews.Stored stored : mina.all(TakeNews.Stored.class)) {
        assertThat(stored.throughSeq()).isGreaterThan(acknowledged);
        acknowledged = stored.throughSeq();
      }
    }
    Take afterTheKill = stored(database, announced.takeId());
    assertThat(afterTheKill.attacks().size()).isGreaterThanOrEqualTo((int) acknowledged);

    try (HostProcess host = HostProcess.serve(database)) {
      WireClient mina = WireClient.connect(host.port());
      mina.send(new ClientMessage.Join(1, 1, word, "Mina", Role.PLAYER, minaToken, 1L, false));
      ServerMessage.Welcome back = mina.expect(ServerMessage.Welcome.class);
      assertThat(back.epoch()).isGreaterThan(announced.epoch());
      ServerMessage.Room room = mina.expect(ServerMessage.Room.class);
      assertThat(room.phase()).isEqualTo(Phase.REVIEW);
      assertThat(room.stopped().reason()).isEqualTo(StopReason.INTERRUPTED);
      assertThat(room.announced()).isEqualTo(announced);
      assertThat(room.throughSeq()).isBetween(acknowledged, (long) GENERATED);

      mina.send(
          new TakeMessage.Attacks(
              announced.takeId(), back.epoch(), 1, List.of(WireAttack.tap(1_000))));
      assertThat(mina.expect(ServerMessage.Problem.class).code()).isEqualTo(ErrorCode.WRONG_EPOCH);

      for (int seq = 1; seq <= GENERATED; seq++) {
        mina.send(attack(announced, seq)); // all of it again, whatever was acknowledged
      }
      long through = 0;
      while (through < GENERATED) {
        through = mina.expect(TakeNews.Stored.class).throughSeq();
      }
      mina.send(new TakeMessage.PlayedThrough(announced.takeId(), GENERATED));
      WireClient leader = WireClient.connect(host.port());
      leader.send(
          new ClientMessage.Join(1, 1, word, "Frau Ott", Role.LEADER, leaderToken, null, false));
      assertThat(leader.expect(ServerMessage.Welcome.class).leaderToken()).isEqualTo(leaderToken);
      TakeNews.ReviewReady review = mina.expect(TakeNews.ReviewReady.class);
      while (review.provisional()) {
        review = mina.expect(TakeNews.ReviewReady.class);
      }
      assertThat(review.review().at("/players/0/player").asString()).isEqualTo("Mina");
      assertThat(host.stop()).isIn(0, 143);
    }
    assertThat(stored(database, announced.takeId()).attacks())
        .as("each of %d attacks exactly once", GENERATED)
        .extracting(attack -> attack.micros())
        .containsExactlyElementsOf(expectedMicros(announced));
  }

  private static TakeNews.Announced start(WireClient leader, long revision) {
    leader.send(new LeaderCommand.Material(1, revision, TestDrill.BEATS_AND_ANDS, null));
    long chosen = leader.expect(ServerMessage.Done.class).revision();
    leader.send(new LeaderCommand.Deal(2, chosen, 7, List.of()));
    long dealtAt = leader.expect(ServerMessage.Done.class).revision();
    String dealId = leader.expect(ServerMessage.Dealt.class).dealId();
    leader.send(new LeaderCommand.Start(3, dealtAt, dealId, 15_000, 4));
    return leader.expect(TakeNews.Announced.class);
  }

  private static TakeMessage.Attacks attack(TakeNews.Announced announced, long seq) {
    return new TakeMessage.Attacks(
        announced.takeId(),
        announced.epoch(),
        seq,
        List.of(WireAttack.tap(announced.startMicros() + seq * 10_000)));
  }

  private static List<Long> expectedMicros(TakeNews.Announced announced) {
    List<Long> micros = new ArrayList<>();
    for (long seq = 1; seq <= GENERATED; seq++) {
      micros.add(announced.startMicros() + seq * 10_000);
    }
    return micros;
  }

  private static Take stored(Path database, String takeId) {
    try (Store store = Store.open(database, InstantSource.system(), available -> {})) {
      return store.take(takeId).join().orElseThrow();
    }
  }
}
