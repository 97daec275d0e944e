package thinclick.server.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.music.Stage;

class RoomCommandsTest {
  private static final long LEADER = 1;
  private static final long MINA = 2;
  private static final long JONAS = 3;
  private static final long NEWER = 5;
  private static final String LEADER_ID = "room-p1";
  private static final String MINA_ID = "room-p2";
  private static final String JONAS_ID = "room-p3";

  private final RoomDrive drive = new RoomDrive();

  @BeforeEach
  void threeCameIn() {
    drive.open(LEADER, "Frau Ott");
    drive.join(MINA, "Mina");
    drive.join(JONAS, "Jonas");
  }

  private void done(long connection) {
    assertThat(drive.last(connection, ServerMessage.Done.class).requestId()).isEqualTo(9);
  }

  private List<String> dealtTo() {
    drive.material(LEADER);
    return drive.deal(LEADER).parts().stream().map(Part::player).toList();
  }

  @Nested
  class TheLead {
    @Test
    void isPassedOnAndWonBackByTheLeaderToken() {
      drive.say(LEADER, new LeaderCommand.PassLead(9, drive.revision(), MINA_ID));
      done(LEADER);
      drive.material(LEADER);
      assertThat(drive.lastError(LEADER)).isEqualTo(ErrorCode.NOT_ALLOWED);
      drive.material(MINA);
      assertThat(drive.all(MINA, ServerMessage.Problem.class)).isEmpty();

      drive.join(NEWER, "Frau Ott", Role.LEADER, "lead");
      drive.material(NEWER);
      assertThat(drive.all(NEWER, ServerMessage.Problem.class)).isEmpty();
      drive.material(MINA);
      assertThat(drive.lastError(MINA)).isEqualTo(ErrorCode.NOT_ALLOWED);
    }

    @Test
    void canBeClaimedOnceTheLeaderHasBeenGoneForThirtySeconds() {
      drive.say(MINA, new ClientMessage.ClaimLead(9));
      assertThat(drive.lastError(MINA)).isEqualTo(ErrorCode.NOT_ALLOWED);
      drive.gone(LEADER);
      drive.pass(29_999);
      drive.say(MINA, new ClientMessage.ClaimLead(9));
      assertThat(drive.all(MINA, ServerMessage.Done.class)).isEmpty();
      drive.pass(1);
      drive.say(MINA, new ClientMessage.ClaimLead(9));

      done(MINA);
      drive.say(JONAS, new ClientMessage.ClaimLead(9));
      assertThat(drive.lastError(JONAS)).isEqualTo(ErrorCode.NOT_ALLOWED);
    }
  }

  @Nested
  class Chairs {
    @Test
    void areFilledAsTheLeaderSeats() {
      drive.say(LEADER, new LeaderCommand.Seat(9, drive.revision(), JONAS_ID, 1));
      done(LEADER);

      assertThat(dealtTo()).containsExactly("Jonas", "Mina");
    }

    @Test
    void ofAnAbsentPlayerIsFilledByAStandIn() {
      drive.event(
          new RoomEvent.Came(
              NEWER,
              new ClientMessage.Join(1, 1, "balumidore", "Tariq", Role.PLAYER, null, null, true),
              "token5",
              ""));
      drive.say(LEADER, new LeaderCommand.Seat(8, drive.revision(), MINA_ID, 1));
      drive.gone(MINA);
      drive.say(LEADER, new LeaderCommand.StandIn(9, drive.revision(), MINA_ID));
      done(LEADER);

      drive.material(LEADER);
      assertThat(drive.deal(LEADER).parts())
          .extracting(Part::player, Part::standIn)
          .containsExactly(
              org.assertj.core.groups.Tuple.tuple("Tariq", true),
              org.assertj.core.groups.Tuple.tuple("Jonas", false));
    }

    @Test
    void ofSomebodyWhoIsHereIsNotGivenToAStandIn() {
      drive.say(LEADER, new LeaderCommand.Seat(8, drive.revision(), MINA_ID, 1));
      drive.say(LEADER, new LeaderCommand.StandIn(9, drive.revision(), MINA_ID));

      assertThat(drive.lastError(LEADER)).isEqualTo(ErrorCode.NOT_ALLOWED);
    }
  }

  @Nested
  class TheDoor {
    @Test
    void lockedKeepsNewcomersOutAndLetsMembersBackIn() {
      drive.say(LEADER, new LeaderCommand.Lock(9, drive.revision(), true));
      done(LEADER);
      drive.join(NEWER, "Ilse");
      assertThat(drive.lastError(NEWER)).isEqualTo(ErrorCode.NOT_ALLOWED);

      drive.gone(MINA);
      drive.join(NEWER, "Mina", Role.PLAYER, "token" + MINA);
      assertThat(drive.last(NEWER, ServerMessage.Room.class).locked()).isTrue();
    }

    @Test
    void removedPlayerIsClosedAndTheTokenIsVoid() {
      drive.say(LEADER, new LeaderCommand.Remove(9, drive.revision(), MINA_ID));
      done(LEADER);
      assertThat(drive.closed(MINA)).isEqualTo(CloseCode.REMOVED);

      drive.join(NEWER, "Mina", Role.PLAYER, "token" + MINA);
      assertThat(drive.closed(NEWER)).isEqualTo(CloseCode.TOKEN);
    }

    @Test
    void whoOpenedTheRoomCannotBeRemoved() {
      drive.say(LEADER, new LeaderCommand.PassLead(8, drive.revision(), MINA_ID));
      drive.say(MINA, new LeaderCommand.Remove(9, drive.revision(), LEADER_ID));

      assertThat(drive.lastError(MINA)).isEqualTo(ErrorCode.NOT_ALLOWED);
    }

    @Test
    void newWordIsAskedForAndToldToAll() {
      drive.say(LEADER, new LeaderCommand.NewWord(9, drive.revision()));
      assertThat(drive.effects).contains(new Effect.WantWord(LEADER, 9));
      drive.event(new RoomEvent.WordGiven("zanotulu", LEADER, 9));

      done(LEADER);
      assertThat(drive.last(MINA, ServerMessage.Room.class).word()).isEqualTo("zanotulu");
    }

    @Test
    void closedRoomEndsTheTakeAndSendsEverybodyAway() {
      drive.start(LEADER);
      drive.pass(5_000);
      drive.say(LEADER, new LeaderCommand.CloseRoom(9, drive.revision()));

      done(LEADER);
      assertThat(drive.last(MINA, TakeNews.Stopped.class).atMicros()).isEqualTo(5_000_000);
      assertThat(drive.closed(MINA)).isEqualTo(CloseCode.CLOSED);
      assertThat(drive.closed(LEADER)).isEqualTo(CloseCode.CLOSED);
      assertThat(drive.journal.get(drive.journal.size() - 1))
          .isInstanceOf(JournalEntry.Closed.class);
    }

    @Test
    void noteIsShownToAllAndWipedOut() {
      drive.say(LEADER, new LeaderCommand.Note(9, drive.revision(), "Softer, please.", null));
      assertThat(drive.last(MINA, ServerMessage.Room.class).note()).isEqualTo("Softer, please.");
      drive.say(LEADER, new LeaderCommand.Note(9, drive.revision(), "", null));
      assertThat(drive.last(MINA, ServerMessage.Room.class).note()).isNull();
    }
  }

  @Nested
  class ANoteToOne {
    @Test
    void isShownToThatOneAlone() {
      int toldBefore = drive.all(JONAS, ServerMessage.Room.class).size();
      drive.say(LEADER, new LeaderCommand.Note(9, drive.revision(), "Count aloud.", MINA_ID));
      done(LEADER);
      assertThat(drive.last(MINA, ServerMessage.Room.class).note()).isEqualTo("Count aloud.");
      assertThat(drive.all(JONAS, ServerMessage.Room.class)).hasSize(toldBefore);
      drive.say(LEADER, new LeaderCommand.Lock(9, drive.revision(), true));
      assertThat(drive.last(JONAS, ServerMessage.Room.class).note()).isNull();
      assertThat(drive.last(MINA, ServerMessage.Room.class).note()).isEqualTo("Count aloud.");
    }

    @Test
    void givesWayToANoteToAll() {
      drive.say(LEADER, new LeaderCommand.Note(9, drive.revision(), "Count aloud.", MINA_ID));
      drive.say(LEADER, new LeaderCommand.Note(9, drive.revision(), "All: softly.", null));
      assertThat(drive.last(MINA, ServerMessage.Room.class).note()).isEqualTo("All: softly.");
    }

    @Test
    void toNobodyInTheRoomIsRefused() {
      drive.say(LEADER, new LeaderCommand.Note(9, drive.revision(), "Who?", "nobody"));
      assertThat(drive.lastError(LEADER)).isEqualTo(ErrorCode.BAD_FIELD);
    }
  }

  /** Who may do what in which phase: only the leader, and some of it only between takes. */
  @Nested
  class Rights {
    private List<LeaderCommand> betweenTakes(long seen) {
      return List.of(
          new LeaderCommand.Material(9, seen, null, "Charleston"),
          new LeaderCommand.Plan(9, seen, List.of(new Stage(4, 1, List.of(1), null)), null),
          new LeaderCommand.Deal(9, seen, 1, List.of()),
          new LeaderCommand.Seat(9, seen, MINA_ID, 2),
          new LeaderCommand.StandIn(9, seen, MINA_ID),
          new LeaderCommand.PassLead(9, seen, MINA_ID),
          new LeaderCommand.Start(9, seen, "deal", 3_000, 1));
    }

    private List<LeaderCommand> inATake(long seen, String takeId) {
      return List.of(
          new LeaderCommand.Stop(9, seen, takeId),
          new LeaderCommand.Replan(9, seen, takeId, 3, List.of(new Stage(1, 1, List.of(1), null))));
    }

    private List<LeaderCommand> atAnyTime(long seen) {
      return List.of(
          new LeaderCommand.Note(9, seen, "Softly.", null),
          new LeaderCommand.Note(9, seen, "Softly.", MINA_ID),
          new LeaderCommand.Lock(9, seen, true),
          new LeaderCommand.Share(9, seen, true),
          new LeaderCommand.NewWord(9, seen),
          new LeaderCommand.Remove(9, seen, JONAS_ID));
    }

    @Test
    void aPlayerMayDoNothingThatIsTheLeaders() {
      TakeNews.Announced take = drive.start(LEADER);
      List<LeaderCommand> all = new ArrayList<>(betweenTakes(drive.revision()));
      all.addAll(inATake(drive.revision(), take.takeId()));
      all.addAll(atAnyTime(drive.revision()));
      all.add(new LeaderCommand.CloseRoom(9, drive.revision()));
      for (LeaderCommand command : all) {
        int before = drive.all(MINA, ServerMessage.Problem.class).size();
        drive.say(MINA, command);
        assertThat(drive.all(MINA, ServerMessage.Problem.class))
            .as("%s", command)
            .hasSize(before + 1);
        assertThat(drive.lastError(MINA)).as("%s", command).isEqualTo(ErrorCode.NOT_ALLOWED);
      }
    }

    @Test
    void whileATakeRunsNothingIsChosenDealtOrSeated() {
      drive.start(LEADER);
      drive.pass(4_500);
      for (LeaderCommand command : betweenTakes(drive.revision())) {
        int before = drive.all(LEADER, ServerMessage.Problem.class).size();
        drive.say(LEADER, command);
        assertThat(drive.all(LEADER, ServerMessage.Problem.class))
            .as("%s", command)
            .hasSize(before + 1);
        assertThat(drive.lastError(LEADER)).as("%s", command).isEqualTo(ErrorCode.WRONG_PHASE);
      }
    }

    @Test
    void betweenTakesNothingIsStoppedOrReplanned() {
      drive.material(LEADER);
      for (LeaderCommand command : inATake(drive.revision(), "room-t1")) {
        drive.say(LEADER, command);
        assertThat(drive.lastError(LEADER)).as("%s", command).isEqualTo(ErrorCode.WRONG_PHASE);
      }
    }

    @Test
    void notesLockWordAndSendingOutGoAtAnyTime() {
      for (boolean playing : List.of(false, true)) {
        RoomDrive own = new RoomDrive();
        own.open(LEADER, "Frau Ott");
        own.join(MINA, "Mina");
        own.join(JONAS, "Jonas");
        if (playing) {
          own.start(LEADER);
          own.pass(4_500);
        }
        for (int i = 0; i < atAnyTime(0).size(); i++) {
          own.say(LEADER, atAnyTime(own.revision()).get(i));
        }
        assertThat(own.all(LEADER, ServerMessage.Problem.class))
            .as("playing %s", playing)
            .isEmpty();
      }
    }
  }

  @Nested
  class TheClickOfARunningTake {
    private TakeNews.Announced announced;

    @BeforeEach
    void started() {
      announced = drive.start(LEADER);
      drive.pass(4_500); // bar 0 runs; four bars of two seconds
    }

    private void replan(int fromBar, Stage... stages) {
      drive.say(
          LEADER,
          new LeaderCommand.Replan(
              9, drive.revision(), announced.takeId(), fromBar, List.of(stages)));
    }

    @Test
    void isChangedFromTwoBarsAheadOn() {
      replan(3, Stage.ofBeats(1, 1));

      done(LEADER);
      List<Stage> whole =
          List.of(Stage.ofBeats(2, 1, 1, 2, 3, 4), Stage.ofBeats(1, 1, 1), Stage.ofBeats(1, 1));
      assertThat(drive.last(MINA, TakeNews.Replanned.class))
          .isEqualTo(new TakeNews.Replanned(announced.takeId(), 3, whole));
      assertThat(drive.journal)
          .filteredOn(JournalEntry.Rewritten.class::isInstance)
          .extracting(entry -> ((JournalEntry.Rewritten) entry).written().stages())
          .containsExactly(whole);
      drive.pass(1_500);
      assertThat(drive.last(MINA, TakeNews.StageNear.class))
          .isEqualTo(new TakeNews.StageNear(announced.takeId(), 2, 3, 10_000_000));
    }

    @ParameterizedTest
    @CsvSource({
      "1, 3", // less than two bars ahead
      "4, 1", // after the end
      "2, 3", // longer than what is left
      "2, 1" // shorter
    })
    void isNotChangedTooLateOrToAnotherLength(int fromBar, int bars) {
      replan(fromBar, Stage.ofBeats(bars, 1));

      assertThat(drive.lastError(LEADER)).isEqualTo(ErrorCode.BAD_FIELD);
      assertThat(drive.all(MINA, TakeNews.Replanned.class)).isEmpty();
    }

    @Test
    void isToldToWhoComesLate() {
      replan(2, Stage.ofBeats(2, 1));
      drive.join(NEWER, "Ilse");

      assertThat(drive.last(NEWER, ServerMessage.Room.class).replanned())
          .isEqualTo(drive.last(MINA, TakeNews.Replanned.class));
    }
  }

  @Nested
  class Resync {
    @Test
    void tellsOnlyWhatWasMissed() {
      drive.material(LEADER);
      long seen = drive.revision();
      drive.deal(LEADER);
      ServerMessage.Dealt own = drive.last(MINA, ServerMessage.Dealt.class);
      drive.say(MINA, new ClientMessage.Resync(seen));

      assertThat(drive.last(MINA, ServerMessage.Changes.class))
          .isEqualTo(new ServerMessage.Changes(seen, List.of(own)));
      drive.say(MINA, new ClientMessage.Resync(drive.revision()));
      assertThat(drive.last(MINA, ServerMessage.Changes.class).events()).isEmpty();
    }

    @Test
    void tellsTheWholeRoomWhereThatIsNotKnownAnyMore() {
      int before = drive.all(MINA, ServerMessage.Room.class).size();
      long seen = drive.revision();
      drive.material(LEADER);
      drive.say(MINA, new ClientMessage.Resync(seen));
      drive.say(MINA, new ClientMessage.Resync(drive.revision() + 100));

      assertThat(drive.all(MINA, ServerMessage.Room.class)).hasSize(before + 3);
    }
  }
}
