package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.AnswerMessage.KeptTake;
import thinclick.protocol.message.AnswerMessage.TakePiece;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.time.VirtualTime;
import thinclick.server.room.JournalEntry;
import thinclick.server.room.RoomJournal;
import thinclick.server.store.Store;

/**
 * A take of 64 bars for 24 players over a real socket, put together by hand from what {@code
 * protocol/README.md} says. What was played is written beside the host, as fast as a disk takes it.
 */
class TakeInPiecesTest {
  private static final int PLAYERS = 24;
  private static final int BARS = 64;

  @TempDir Path folder;
  private final VirtualTime time = new VirtualTime(5_000_000_000L);
  private long request = 100;

  @Test
  void aTakeThatIsTooLongForAFrameComesInPiecesAndIsTheOneThatIsStored() throws Exception {
    Path database = folder.resolve("room.db");
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(database).on(time, time));
        WireClient leader = WireClient.connect(host.port())) {
      leader.send(new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
      ServerMessage.Welcome opened = leader.expect(ServerMessage.Welcome.class);
      for (int i = 1; i <= PLAYERS; i++) {
        try (WireClient player = WireClient.connect(host.port())) {
          player.send(
              new ClientMessage.Join(
                  1, 1, opened.room(), "Player " + i, Role.PLAYER, null, null, false));
          player.expect(ServerMessage.Room.class);
        }
      }
      String takeId = stopped(leader, opened);
      try (Store beside = Store.open(database, InstantSource.system(), available -> {})) {
        play(beside, takeId, opened.epoch());
        Take stored = beside.take(takeId).join().orElseThrow();
        assertThat(stored.parts()).hasSize(PLAYERS);
        assertThat(stored.attacks()).hasSize(PLAYERS * BARS * 8);

        assertThat(refused(leader, takeId, null)).contains("253952 bytes", "in pieces");
        pass(host, 2_000);
        TakePiece first = piece(leader, takeId, 1);
        assertThat(first.of()).isGreaterThan(3);
        assertThat(first.lines()).hasSizeLessThanOrEqualTo(56).allMatch(l -> l.length() <= 4_096);
        assertThat(refused(leader, takeId, first.of() + 1))
            .contains("expected 1 to " + first.of() + ", found " + (first.of() + 1));
        assertThat(refused(leader, takeId, 1)).contains("two seconds");
        assertThat(whole(leader, first)).isEqualTo(stored);

        // The line is cut after a piece: whoever comes back begins again with the first.
        leader.cut();
        try (WireClient again = WireClient.connect(host.port())) {
          again.send(
              new ClientMessage.Join(
                  1, 1, opened.room(), "Frau Ott", Role.LEADER, opened.leaderToken(), null, false));
          again.expect(ServerMessage.Welcome.class);
          pass(host, 2_000);
          TakePiece anew = piece(again, takeId, 1);
          assertThat(anew).isEqualTo(first);
          append(beside, takeId, opened.epoch(), BARS * 8 + 1, List.of(WireAttack.tap(1)));
          assertThat(piece(again, takeId, 2).sha256())
              .as("grown meanwhile, which every piece tells")
              .isNotEqualTo(first.sha256());
        }
      }
    }
  }

  /** Deals 64 bars to all, begins, and stops at once: the take stays that of the last review. */
  private String stopped(WireClient leader, ServerMessage.Welcome opened) {
    List<Stage> plan = List.of(Stage.ofBeats(BARS, 1, 1));
    leader.send(new LeaderCommand.Material(1, opened.revision(), TestDrill.BEATS_AND_ANDS, null));
    leader.send(new LeaderCommand.Plan(2, done(leader, 1), plan, null));
    List<String> chairs =
        IntStream.rangeClosed(2, PLAYERS + 1)
            .mapToObj(i -> opened.playerId().replaceAll("p1$", "p" + i))
            .toList();
    leader.send(new LeaderCommand.Deal(3, done(leader, 2), 7, chairs));
    long dealtAt = done(leader, 3);
    String dealId = leader.expect(ServerMessage.Dealt.class).dealId();
    leader.send(new LeaderCommand.Start(4, dealtAt, dealId, 2_000, 1));
    long started = done(leader, 4);
    String takeId = leader.expect(TakeNews.Announced.class).takeId();
    leader.send(new LeaderCommand.Stop(5, started, takeId));
    done(leader, 5);
    return takeId;
  }

  private static long done(WireClient leader, long request) {
    ServerMessage.Done done = leader.expect(ServerMessage.Done.class);
    assertThat(done.requestId()).isEqualTo(request);
    return done.revision();
  }

  private static void play(Store beside, String takeId, long epoch) {
    Take written = beside.take(takeId).join().orElseThrow();
    StepGrid grid = written.grid();
    int player = 1;
    for (Part part : written.parts()) {
      player++;
      List<WireAttack> attacks = new ArrayList<>();
      for (int step = 0; step < BARS * 8; step++) {
        attacks.add(WireAttack.tap(grid.instantOf(step) + player * 100L));
      }
      assertThat(part.player()).isEqualTo("Player " + (player - 1));
      append(beside, takeId, epoch, 1, attacks, player);
    }
  }

  private static void append(
      Store beside, String takeId, long epoch, long firstSeq, List<WireAttack> attacks) {
    append(beside, takeId, epoch, firstSeq, attacks, 2);
  }

  private static void append(
      Store beside,
      String takeId,
      long epoch,
      long firstSeq,
      List<WireAttack> attacks,
      int player) {
    String room = takeId.substring(0, takeId.indexOf("-t"));
    JournalEntry played = new JournalEntry.Played(takeId, room + "-p" + player, firstSeq, attacks);
    assertThat(beside.journal().append(room, epoch, played).join())
        .isInstanceOf(RoomJournal.Outcome.Stored.class);
  }

  private void pass(RehearsalHost host, long millis) throws Exception {
    host.settled().get(30, TimeUnit.SECONDS);
    time.advanceTo(time.nanos() + millis * 1_000_000);
    host.settled().get(30, TimeUnit.SECONDS);
  }

  private TakePiece piece(WireClient leader, String takeId, int number) {
    leader.send(new QuestionMessage.KeepTake(++request, takeId, number));
    TakePiece piece = leader.expect(TakePiece.class);
    assertThat(piece.piece()).isEqualTo(number);
    assertThat(leader.expect(ServerMessage.Done.class).requestId()).isEqualTo(request);
    return piece;
  }

  private String refused(WireClient leader, String takeId, Integer piece) {
    leader.send(new QuestionMessage.KeepTake(++request, takeId, piece));
    ServerMessage.Problem problem = leader.expect(ServerMessage.Problem.class);
    assertThat(problem.requestId()).isEqualTo(request);
    assertThat(leader.all(KeptTake.class)).isEmpty();
    return problem.says();
  }

  /** Asks for the other pieces and puts the file together. */
  private Take whole(WireClient leader, TakePiece first) throws Exception {
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    for (int i = 1; i <= first.of(); i++) {
      TakePiece piece = i == 1 ? first : piece(leader, first.takeId(), i);
      assertThat(piece.sha256()).isEqualTo(first.sha256());
      for (String line : piece.lines()) {
        file.write(Base64.getDecoder().decode(line));
      }
    }
    assertThat(file.size()).isEqualTo(first.bytes());
    byte[] digest = MessageDigest.getInstance("SHA-256").digest(file.toByteArray());
    assertThat(Base64.getUrlEncoder().withoutPadding().encodeToString(digest))
        .isEqualTo(first.sha256());
    return FileCodec.readTake(file.toByteArray());
  }
}
