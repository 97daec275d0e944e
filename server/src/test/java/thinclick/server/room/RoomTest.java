package thinclick.server.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.message.TakeNews.StopReason;
import tools.jackson.databind.json.JsonMapper;

class RoomTest {
  private static final long LEADER = 1;
  private static final long MINA = 2;
  private static final long JONAS = 3;
  private static final long WALL = 4;
  private static final long NEWER = 5;

  private final RoomDrive drive = new RoomDrive();

  @BeforeEach
  void threeCameIn() {
    drive.open(LEADER, "Frau Ott");
    drive.join(MINA, "Mina");
    drive.join(JONAS, "Jonas");
  }

  @Nested
  class Joining {
    @Test
    void secondJoinWithTheSameNameIsRefusedAndTheConnectionStays() {
      drive.join(WALL, "MINA ");

      assertThat(drive.lastError(WALL)).isEqualTo(ErrorCode.NAME_TAKEN);
      assertThat(drive.closed(WALL)).isNull();
      drive.join(WALL, "Ilse");
      assertThat(drive.last(WALL, ServerMessage.Welcome.class).playerId()).isEqualTo("room-p4");
    }

    @Test
    void newestConnectionWinsAndTheOlderIsClosed() {
      drive.join(NEWER, "whatever", Role.PLAYER, "token" + MINA);

      assertThat(drive.last(NEWER, ServerMessage.Welcome.class).playerId()).isEqualTo("room-p2");
      assertThat(drive.closed(MINA)).isEqualTo(CloseCode.REPLACED);
    }

    @Test
    void unknownTokenIsRefused() {
      drive.join(NEWER, "Mina", Role.PLAYER, "stolen");

      assertThat(drive.closed(NEWER)).isEqualTo(CloseCode.TOKEN);
    }

    @Test
    void leadIsNotTakenWithAPlayersToken() {
      drive.join(NEWER, "Frau Ott", Role.LEADER, "token" + MINA);
      drive.say(NEWER, new LeaderCommand.Material(1, drive.revision(), RoomDrive.DRILL, null));

      assertThat(drive.lastError(NEWER)).isEqualTo(ErrorCode.NOT_ALLOWED);
    }

    @Test
    void leaderTokenBringsTheLeadBack() {
      drive.gone(LEADER);
      drive.join(NEWER, "Frau Ott", Role.LEADER, "lead");
      drive.material(NEWER);

      assertThat(drive.last(NEWER, ServerMessage.Done.class)).isNotNull();
    }

    @Test
    void whoComesDuringATakeListensUntilTheNextDeal() {
      TakeNews.Announced announced = drive.start(LEADER);
      drive.join(WALL, "Ilse");

      assertThat(drive.last(WALL, ServerMessage.Room.class).announced()).isEqualTo(announced);
      assertThat(drive.last(WALL, ServerMessage.Room.class).dealt().own()).isNull();
      drive.play(WALL, announced, 1, announced.startMicros());
      assertThat(drive.lastError(WALL)).isEqualTo(ErrorCode.NOT_ALLOWED);

      drive.stop(LEADER, announced.takeId());
      drive.deal(LEADER);
      assertThat(drive.last(WALL, ServerMessage.Dealt.class).own()).isEqualTo("Ilse");
    }

    @Test
    void roomHoldsSixtyFour() {
      for (int i = 4; i <= 64; i++) {
        drive.join(100 + i, "Player " + i);
      }
      drive.join(1_000, "One more");

      assertThat(drive.lastError(1_000)).isEqualTo(ErrorCode.ROOM_FULL);
    }

    @Test
    void rosterIsSaidAtMostTwiceASecond() {
      int before = drive.all(LEADER, ServerMessage.Roster.class).size();
      for (int i = 0; i < 10; i++) {
        drive.join(100 + i, "Player " + i);
        drive.pass(100);
      }

      assertThat(drive.all(LEADER, ServerMessage.Roster.class).size() - before).isBetween(2, 3);
      drive.pass(500);
      assertThat(drive.last(LEADER, ServerMessage.Roster.class).players()).hasSize(13);
    }
  }

  @Nested
  class Leading {
    @Test
    void onlyTheLeaderChoosesDealsStartsAndStops() {
      drive.say(MINA, new LeaderCommand.Material(9, drive.revision(), RoomDrive.DRILL, null));

      assertThat(drive.last(MINA, ServerMessage.Problem.class))
          .isEqualTo(
              new ServerMessage.Problem(
                  ErrorCode.NOT_ALLOWED, "only the leader may do this", null, 9L, false));
    }

    @Test
    void commandThatHasNotSeenTheLastDecisionIsStale() {
      long before = drive.revision();
      drive.material(LEADER);
      drive.say(LEADER, new LeaderCommand.Deal(8, before, 7, List.of()));

      assertThat(drive.lastError(LEADER)).isEqualTo(ErrorCode.STALE_REVISION);
    }

    @Test
    void somebodyComingInMakesNoCommandStale() {
      drive.material(LEADER);
      long seen = drive.revision();
      drive.join(WALL, "Ilse");
      drive.say(LEADER, new LeaderCommand.Deal(8, seen, 7, List.of()));

      assertThat(drive.last(LEADER, ServerMessage.Dealt.class).parts())
          .extracting(Part::player)
          .containsExactly("Mina", "Jonas", "Ilse");
    }

    @Test
    void unknownTitleIsAnsweredWithWhatWasExpected() {
      drive.say(LEADER, new LeaderCommand.Material(8, drive.revision(), null, "Beets"));

      assertThat(drive.last(LEADER, ServerMessage.Problem.class).field()).isEqualTo("title");
    }

    @Test
    void chairsAreFilledInTheOrderGiven() {
      drive.material(LEADER);
      drive.say(
          LEADER, new LeaderCommand.Deal(8, drive.revision(), 7, List.of("room-p3", "room-p1")));

      assertThat(drive.last(LEADER, ServerMessage.Dealt.class).parts())
          .extracting(Part::player)
          .containsExactly("Jonas", "Frau Ott");
    }

    @Test
    void sameChairTwiceIsRefused() {
      drive.material(LEADER);
      drive.say(
          LEADER, new LeaderCommand.Deal(8, drive.revision(), 7, List.of("room-p3", "room-p3")));

      assertThat(drive.last(LEADER, ServerMessage.Problem.class).field()).isEqualTo("chairs[1]");
    }
  }

  @Nested
  class TheTake {
    private TakeNews.Announced announced;

    @BeforeEach
    void started() {
      announced = drive.start(LEADER);
    }

    @Test
    void isAnnouncedAheadAndEntersEachPhaseAtItsInstant() {
      assertThat(announced.countInMicros()).isEqualTo(2_000_000);
      assertThat(announced.startMicros()).isEqualTo(4_000_000);
      drive.pass(3_999);
      assertThat(drive.room.phase()).isEqualTo(Phase.COUNT_IN);
      drive.pass(1);
      assertThat(drive.room.phase()).isEqualTo(Phase.TAKE);
      drive.pass(8_999); // four bars of two seconds, and two beats for a band that drags
      assertThat(drive.room.phase()).isEqualTo(Phase.TAKE);
      drive.pass(1);
      assertThat(drive.last(MINA, TakeNews.Stopped.class))
          .isEqualTo(new TakeNews.Stopped(announced.takeId(), 12_000_000, StopReason.FINISHED));
    }

    @Test
    void eachStageIsSaidTwoBarsAhead() {
      assertThat(drive.all(MINA, TakeNews.StageNear.class)).hasSize(1);
      drive.pass(3_999);
      assertThat(drive.all(MINA, TakeNews.StageNear.class)).hasSize(1);
      drive.pass(1);
      assertThat(drive.last(MINA, TakeNews.StageNear.class))
          .isEqualTo(new TakeNews.StageNear(announced.takeId(), 1, 2, 8_000_000));
    }

    @Test
    void attackIsHeardByAllOthersAtOnceAndStoredIsSaidOnlyOnceItIs() {
      drive.play(MINA, announced, 1, 4_000_100);

      assertThat(drive.all(JONAS, TakeNews.Heard.class)).hasSize(1);
      assertThat(drive.all(LEADER, TakeNews.Heard.class)).hasSize(1);
      assertThat(drive.all(MINA, TakeNews.Heard.class)).isEmpty();
      drive.pass(100);
      assertThat(drive.all(MINA, TakeNews.Stored.class)).isEmpty();
      drive.storeAll();
      assertThat(drive.last(MINA, TakeNews.Stored.class).throughSeq()).isEqualTo(1);
    }

    @Test
    void storedIsSaidWithoutAGapAndNeverFalls() {
      drive.play(MINA, announced, 3, 4_300_000);
      drive.storeAll();
      drive.pass(20);
      assertThat(drive.last(MINA, TakeNews.Stored.class).throughSeq()).isZero();
      drive.play(MINA, announced, 1, 4_100_000, 4_200_000);
      drive.storeAll();
      drive.pass(20);
      drive.play(MINA, announced, 1, 4_100_000);
      drive.storeAll();
      drive.pass(20);

      assertThat(drive.all(MINA, TakeNews.Stored.class))
          .extracting(TakeNews.Stored::throughSeq)
          .containsExactly(0L, 3L, 3L);
    }

    @Test
    void storedIsSaidAtMostFiftyTimesASecond() {
      for (int seq = 1; seq <= 200; seq++) {
        drive.play(MINA, announced, seq, 4_000_000 + seq);
        drive.storeAll();
        drive.pass(5);
      }

      assertThat(drive.all(MINA, TakeNews.Stored.class)).hasSizeBetween(49, 51);
      drive.pass(20);
      assertThat(drive.last(MINA, TakeNews.Stored.class).throughSeq()).isEqualTo(200);
    }

    @Test
    void resendIsStoredAgainButNotHeardAgain() {
      drive.play(MINA, announced, 1, 4_000_100);
      drive.play(MINA, announced, 1, 4_000_100);

      assertThat(drive.all(JONAS, TakeNews.Heard.class)).hasSize(1);
      assertThat(drive.unstored).hasSize(2);
    }

    @Test
    void otherContentUnderAStoredNumberIsSaid() {
      drive.play(MINA, announced, 1, 4_000_100);
      drive.event(
          new RoomEvent.Journaled(
              drive.unstored.get(0), new RoomJournal.Outcome.Conflict(List.of(1L))));

      assertThat(drive.lastError(MINA)).isEqualTo(ErrorCode.SEQ_CONFLICT);
      assertThat(drive.last(MINA, TakeNews.Stored.class).throughSeq()).isEqualTo(1);
    }

    @Test
    void attacksOfAnotherEpochOrTakeAreRefused() {
      drive.say(
          MINA,
          new TakeMessage.Attacks(
              announced.takeId(), 7, 1, List.of(TakeMessage.WireAttack.tap(1))));
      assertThat(drive.lastError(MINA)).isEqualTo(ErrorCode.WRONG_EPOCH);
      drive.say(
          MINA, new TakeMessage.Attacks("other", 1, 1, List.of(TakeMessage.WireAttack.tap(1))));
      assertThat(drive.lastError(MINA)).isEqualTo(ErrorCode.NOT_ALLOWED);
      assertThat(drive.unstored).isEmpty();
    }

    @Test
    void numbersFarBeyondWhatIsStoredAreRefused() {
      drive.play(MINA, announced, 1_025, 4_000_100);

      assertThat(drive.last(MINA, ServerMessage.Problem.class).field()).isEqualTo("firstSeq");
      assertThat(drive.unstored).isEmpty();
    }

    @Test
    void attacksWithoutASteadyClockAreKeptAndSaidOnce() {
      drive.play(MINA, announced, 1, 4_000_100);
      drive.play(MINA, announced, 2, 4_000_200);

      assertThat(drive.all(MINA, ServerMessage.Problem.class))
          .extracting(ServerMessage.Problem::code)
          .containsExactly(ErrorCode.UNCERTAIN_CLOCK);
      assertThat(drive.unstored).hasSize(2);
    }

    @Test
    void takeGoesOnWithoutTheLeader() {
      drive.gone(LEADER);
      drive.pass(15_000);

      assertThat(drive.last(MINA, TakeNews.Stopped.class).reason()).isEqualTo(StopReason.FINISHED);
    }

    @Test
    void leaderStopsItWithinTheBar() {
      drive.pass(5_000);
      drive.stop(LEADER, announced.takeId());

      assertThat(drive.last(JONAS, TakeNews.Stopped.class))
          .isEqualTo(new TakeNews.Stopped(announced.takeId(), 5_000_000, StopReason.LEADER));
    }

    @Test
    void whoWasGoneIsWrittenDownAsGone() {
      drive.pass(5_000);
      drive.gone(MINA);
      drive.pass(1_000);
      drive.join(NEWER, "Mina", Role.PLAYER, "token" + MINA);
      drive.gone(JONAS);
      drive.pass(10_000);

      assertThat(drive.journal)
          .filteredOn(JournalEntry.Away.class::isInstance)
          .extracting(entry -> ((JournalEntry.Away) entry).span())
          .containsExactly(
              new thinclick.protocol.file.Span(5_000_000, 6_000_000),
              new thinclick.protocol.file.Span(6_000_000, 12_000_000));
    }

    @ParameterizedTest
    @ValueSource(ints = {9, 24})
    void largerRoomsHearInBatches(int members) {
      for (int i = 3; i < members; i++) {
        drive.join(100 + i, "Player " + i);
      }
      drive.play(MINA, announced, 1, 4_000_100);
      drive.play(MINA, announced, 2, 4_000_200);
      assertThat(drive.all(JONAS, TakeNews.Heard.class)).isEmpty();
      drive.pass(50);

      assertThat(drive.last(JONAS, TakeNews.Heard.class).items()).hasSize(2);
      assertThat(drive.all(MINA, TakeNews.Heard.class)).isEmpty();
    }
  }

  @Nested
  class TheReview {
    private TakeNews.Announced announced;

    @BeforeEach
    void finished() {
      announced = drive.start(LEADER);
      drive.pass(14_000);
    }

    private void reviewed() {
      drive.event(
          new RoomEvent.Reviewed(
              announced.takeId(),
              JsonMapper.shared()
                  .readTree(
                      """
                      {"players": [{"player": "Mina"}, {"player": "Jonas"}],
                       "ensemble": {"hold": 90.0, "gains": [[0, 1], [1, 0]]}}
                      """)));
    }

    @Test
    void waitsForThePlayersAndIsFinalOnceAllHavePlayedThrough() {
      drive.say(MINA, new TakeMessage.PlayedThrough(announced.takeId(), 0));
      assertThat(drive.reviewsAsked).isEmpty();
      drive.say(JONAS, new TakeMessage.PlayedThrough(announced.takeId(), 0));
      assertThat(drive.reviewsAsked).hasSize(1);
      reviewed();

      assertThat(drive.last(MINA, TakeNews.ReviewReady.class).provisional()).isFalse();
      drive.pass(200_000);
      assertThat(drive.reviewsAsked).hasSize(1);
    }

    @Test
    void isProvisionalWhileAPlayersLastAttacksAreNotStored() {
      drive.say(MINA, new TakeMessage.PlayedThrough(announced.takeId(), 2));
      drive.say(JONAS, new TakeMessage.PlayedThrough(announced.takeId(), 0));
      drive.pass(2_000);
      reviewed();
      assertThat(drive.last(MINA, TakeNews.ReviewReady.class).provisional()).isTrue();

      drive.play(MINA, announced, 1, 4_000_000, 4_500_000);
      drive.storeAll();
      reviewed();
      assertThat(drive.last(MINA, TakeNews.ReviewReady.class).provisional()).isFalse();
    }

    @Test
    void isSealedAfterTwoMinutesWhoeverIsSilent() {
      drive.pass(2_000);
      reviewed();
      drive.pass(116_000);
      assertThat(drive.reviewsAsked).hasSize(1);
      drive.pass(3_000);
      assertThat(drive.reviewsAsked).hasSize(2);
      reviewed();

      assertThat(drive.last(MINA, TakeNews.ReviewReady.class).provisional()).isFalse();
    }

    @Test
    void attackAfterTheSealIsStoredAndBringsARevisedReview() {
      drive.pass(2_000);
      reviewed();
      drive.pass(120_000);
      reviewed();
      int asked = drive.reviewsAsked.size();
      drive.play(MINA, announced, 1, 4_000_000);
      drive.storeAll();
      drive.pass(1_000);

      assertThat(drive.reviewsAsked).hasSize(asked + 1);
    }

    @Test
    void leaderSeesAllAndAPlayerTheEnsembleAndThemselves() {
      drive.join(WALL, "Wall", Role.LISTENER, null);
      drive.pass(2_000);
      reviewed();

      assertThat(players(LEADER)).containsExactly("Mina", "Jonas");
      assertThat(players(MINA)).containsExactly("Mina");
      assertThat(players(WALL)).isEmpty();
      assertThat(drive.last(MINA, TakeNews.ReviewReady.class).review().at("/ensemble/hold"))
          .hasToString("90.0");
      assertThat(drive.last(MINA, TakeNews.ReviewReady.class).review().at("/ensemble/gains"))
          .hasToString("null");
    }

    private List<String> players(long connection) {
      return drive
          .last(connection, TakeNews.ReviewReady.class)
          .review()
          .get("players")
          .valueStream()
          .map(line -> line.get("player").stringValue())
          .toList();
    }

    @Test
    void isSentAgainToWhoComesBack() {
      drive.pass(2_000);
      reviewed();
      drive.join(NEWER, "Mina", Role.PLAYER, "token" + MINA);

      assertThat(drive.last(NEWER, TakeNews.ReviewReady.class).takeId())
          .isEqualTo(announced.takeId());
    }
  }

  @Nested
  class TheEnd {
    @Test
    void emptyRoomIsClosedAfterTenMinutes() {
      drive.gone(LEADER);
      drive.gone(MINA);
      drive.gone(JONAS);
      drive.pass(599_999);
      assertThat(drive.journal).noneMatch(JournalEntry.Closed.class::isInstance);
      drive.pass(1);
      assertThat(drive.journal).anyMatch(JournalEntry.Closed.class::isInstance);
    }

    @Test
    void hostThatGoesEndsTheTakeAndSaysGoodbye() {
      TakeNews.Announced announced = drive.start(LEADER);
      drive.pass(5_000);
      drive.event(new RoomEvent.HostGoing());

      assertThat(drive.last(MINA, TakeNews.Stopped.class).reason()).isEqualTo(StopReason.HOST);
      assertThat(drive.closed(MINA)).isEqualTo(CloseCode.GOING);
      assertThat(drive.journal)
          .contains(new JournalEntry.TakeEnded(announced.takeId(), 5_000_000, StopReason.HOST));
    }

    @Test
    void fencedRoomIsGivenUp() {
      TakeNews.Announced announced = drive.start(LEADER);
      drive.play(MINA, announced, 1, 4_000_000);
      drive.event(new RoomEvent.Journaled(drive.unstored.get(0), new RoomJournal.Outcome.Fenced()));

      assertThat(drive.closed(MINA)).isEqualTo(CloseCode.GOING);
      assertThat(drive.effects).anyMatch(Effect.Ended.class::isInstance);
    }

    @Test
    void fullDiskIsSaidOnceAndNothingIsAcknowledged() {
      drive.event(new RoomEvent.StoreChanged(false));
      drive.event(new RoomEvent.StoreChanged(false));

      assertThat(drive.all(MINA, ServerMessage.Problem.class))
          .extracting(ServerMessage.Problem::code)
          .containsExactly(ErrorCode.STORE_UNAVAILABLE);
    }

    @Test
    void takeWhoseAttacksTheDatabaseRefusesForGoodIsOverAndEverybodyIsTold() {
      TakeNews.Announced announced = drive.start(LEADER);
      drive.pass(5_000);
      drive.play(MINA, announced, 1, 4_900_000, 4_950_000);
      drive.event(refused(drive.unstored.get(0)));

      assertThat(drive.last(JONAS, TakeNews.Stopped.class).reason())
          .isEqualTo(StopReason.INTERRUPTED);
      assertThat(drive.room.phase()).isEqualTo(Phase.REVIEW);
      assertThat(drive.last(JONAS, ServerMessage.Problem.class))
          .isEqualTo(
              new ServerMessage.Problem(
                  ErrorCode.STORE_UNAVAILABLE,
                  "the host's database refuses this for good (SQLITE_ERROR); keep what is not"
                      + " acknowledged",
                  null,
                  null,
                  false));
      assertThat(drive.all(MINA, TakeNews.Stored.class)).isEmpty();
      assertThat(drive.closed(MINA)).isNull();

      drive.play(MINA, announced, 1, 4_900_000, 4_950_000);
      drive.event(refused(drive.unstored.get(1)));
      assertThat(drive.all(MINA, ServerMessage.Problem.class))
          .extracting(ServerMessage.Problem::code)
          .containsExactly(
              ErrorCode.UNCERTAIN_CLOCK, ErrorCode.STORE_UNAVAILABLE, ErrorCode.STORE_UNAVAILABLE);
      assertThat(drive.all(JONAS, ServerMessage.Problem.class)).hasSize(1);
    }

    @Test
    void roomThatTheDatabaseRefusesForGoodSaysSoToItsLeaderOnce() {
      drive.event(refused(new JournalEntry.State(drive.room.state())));
      drive.event(refused(new JournalEntry.State(drive.room.state())));
      assertThat(drive.all(LEADER, ServerMessage.Problem.class)).hasSize(1);
      assertThat(drive.all(MINA, ServerMessage.Problem.class)).isEmpty();

      drive.material(LEADER); // written
      drive.event(refused(new JournalEntry.State(drive.room.state())));
      assertThat(drive.all(LEADER, ServerMessage.Problem.class)).hasSize(2);
    }

    private RoomEvent refused(JournalEntry entry) {
      return new RoomEvent.Journaled(entry, new RoomJournal.Outcome.Refused("SQLITE_ERROR"));
    }

    @Test
    void whoLeavesIsForgottenAndTheNameIsFree() {
      drive.say(MINA, new ClientMessage.Leave(1));

      assertThat(drive.closed(MINA)).isEqualTo(CloseCode.LEFT);
      drive.join(NEWER, "Mina");
      assertThat(drive.last(NEWER, ServerMessage.Welcome.class)).isNotNull();
    }
  }

  @Nested
  class Restored {
    @Test
    void runningTakeEndsInterruptedAndTakesResendsOfItsOwnEpoch() {
      TakeNews.Announced announced = drive.start(LEADER);
      drive.pass(6_000);
      RoomState written = drive.room.state();
      RoomJournal.StoredTake stored =
          new RoomJournal.StoredTake(java.util.Map.of("room-p2", List.of(1L, 2L, 4L)), 5_500_000L);

      RoomDrive after =
          new RoomDrive(
              Room.restored(
                  new RoomJournal.Opened(2, written, java.util.Map.of(announced.takeId(), stored)),
                  RoomDrive.DRILLS,
                  RoomDrive.DEALER));
      after.join(NEWER, "Mina", Role.PLAYER, "token" + MINA);
      ServerMessage.Room room = after.last(NEWER, ServerMessage.Room.class);

      assertThat(room.phase()).isEqualTo(Phase.REVIEW);
      assertThat(room.stopped())
          .isEqualTo(new TakeNews.Stopped(announced.takeId(), 5_500_000, StopReason.INTERRUPTED));
      assertThat(room.throughSeq()).isEqualTo(2);
      after.play(NEWER, announced, 3, 5_400_000);
      after.storeAll();
      assertThat(after.last(NEWER, TakeNews.Stored.class).throughSeq()).isEqualTo(4);
      after.pass(2_000);
      assertThat(after.reviewsAsked).containsExactly(announced.takeId());
    }

    @Test
    void whatWasWrittenDownIsReadBackTheSame() {
      drive.start(LEADER);
      RoomState written = drive.room.state();
      JsonMapper json = thinclick.protocol.json.StrictJson.mapper(true, 1 << 20);

      assertThat(json.readValue(json.writeValueAsString(written), RoomState.class))
          .isEqualTo(written);
    }
  }

  @Test
  void recordedQueueReplaysToTheSameRoomAndTheSameEffects() {
    TakeNews.Announced announced = drive.start(LEADER);
    for (int seq = 1; seq <= 40; seq++) {
      drive.pass(111);
      drive.play(seq % 2 == 0 ? MINA : JONAS, announced, (seq + 1) / 2, drive.micros() + 2_000_000);
      if (seq % 3 == 0) {
        drive.storeAll();
      }
    }
    drive.gone(JONAS);
    drive.join(NEWER, "Jonas", Role.PLAYER, "token" + JONAS);
    drive.pass(20_000);

    Room again = Room.fresh("room", "balumidore", 1, RoomDrive.DRILLS, RoomDrive.DEALER);
    List<Effect> effects =
        drive.queue.stream()
            .flatMap(entry -> again.handle(entry.event(), entry.micros()).stream())
            .toList();

    assertThat(effects).isEqualTo(drive.effects);
    assertThat(again.state()).isEqualTo(drive.room.state());
  }
}
