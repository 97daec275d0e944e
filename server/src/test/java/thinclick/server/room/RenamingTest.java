package thinclick.server.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;

/** A name that is put right in the class's list while the room is open. */
class RenamingTest {
  private static final long LEADER = 1;
  private static final long MINA = 2;
  private static final long JONAS = 3;

  private final RoomDrive drive = new RoomDrive();

  @BeforeEach
  void open() {
    drive.open(LEADER, "Frau Ott");
    drive.join(MINA, "Mnia");
    drive.join(JONAS, "Jonas");
  }

  private void renamed(String from, String to, String takeId) {
    drive.event(new RoomEvent.Renamed(from, to, takeId));
  }

  private List<String> roster() {
    drive.pass(600);
    return drive.last(LEADER, ServerMessage.Roster.class).players().stream()
        .map(ServerMessage.Person::name)
        .toList();
  }

  private List<JournalEntry.Renamed> written() {
    return drive.journal.stream()
        .filter(JournalEntry.Renamed.class::isInstance)
        .map(JournalEntry.Renamed.class::cast)
        .toList();
  }

  @Test
  void theRosterTheDealAndTheTakesThatAreRememberedSayTheNewName() {
    TakeNews.Announced take = drive.start(LEADER);
    drive.stop(LEADER, take.takeId());
    drive.pass(3_000);
    int reviews = drive.reviewsAsked.size();
    renamed("MNIA", "Mina", null);

    assertThat(roster()).containsExactly("Frau Ott", "Mina", "Jonas");
    ServerMessage.Room room = drive.last(MINA, ServerMessage.Room.class);
    assertThat(room.dealt().own()).isEqualTo("Mina");
    assertThat(room.dealt().parts()).extracting(Part::player).containsExactly("Mina", "Jonas");
    assertThat(room.dealt().says()).as("to herself").element(0).asString().startsWith("Come in");
    ServerMessage.Room leads = drive.last(LEADER, ServerMessage.Room.class);
    assertThat(String.join(" ", leads.dealt().says())).contains("Mina").doesNotContain("Mnia");
    assertThat(written()).containsExactly(new JournalEntry.Renamed(take.takeId(), "Mnia", "Mina"));
    RoomState.TakeState kept = drive.room.state().takes().get(0);
    assertThat(kept.written().parts()).extracting(Part::player).containsExactly("Mina", "Jonas");
    assertThat(kept.seats()).containsEntry("room-p2", "Mina");
    drive.event(new RoomEvent.ReviewFailed(take.takeId(), "the one before"));
    drive.pass(2_000);
    assertThat(drive.reviewsAsked.size()).as("reviewed again").isGreaterThan(reviews);
  }

  @Test
  void aTakeThatRunsIsPlayedThroughUnderTheNamesItWasDealtWith() {
    TakeNews.Announced take = drive.start(LEADER);
    drive.pass(4_500);
    renamed("Mnia", "Mina", null);
    assertThat(roster()).contains("Mnia");
    assertThat(written()).isEmpty();
    drive.stop(LEADER, take.takeId());
    assertThat(roster()).contains("Mina").doesNotContain("Mnia");
    assertThat(written()).hasSize(1);
  }

  @Test
  void aNameThatSomebodyElseHasIsNotGivenTwiceAndOneTakeAloneLeavesTheRoom() {
    TakeNews.Announced take = drive.start(LEADER);
    drive.stop(LEADER, take.takeId());
    RoomState before = drive.room.state();
    renamed("Mnia", "Jonas", null);
    renamed("Nobody", "Somebody", null);
    assertThat(drive.room.state()).isEqualTo(before);
    renamed("Mnia", "Lotte", take.takeId());
    assertThat(roster()).contains("Mnia");
    assertThat(drive.room.state().takes().get(0).seats()).containsEntry("room-p2", "Lotte");
  }

  @Test
  void whoWasRenamedStillComesBackByTheToken() {
    renamed("Mnia", "Mina", null);
    drive.gone(MINA);
    drive.join(MINA, "Mnia", ClientMessage.Role.PLAYER, "token2");
    assertThat(drive.last(MINA, ServerMessage.Welcome.class).playerId()).isEqualTo("room-p2");
    assertThat(roster()).containsExactly("Frau Ott", "Mina", "Jonas");
  }
}
