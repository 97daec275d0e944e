package thinclick.server.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.AttackLength;
import thinclick.protocol.message.TakeNews;

/** How long attacks were held is said after them, and answered once it is on the disk. */
class HeldLengthsTest {
  private static final long LEADER = 1;
  private static final long MINA = 2;

  private final RoomDrive drive = new RoomDrive();
  private TakeNews.Announced take;

  @BeforeEach
  void play() {
    drive.open(LEADER, "Frau Ott");
    drive.join(MINA, "Mina");
    take = drive.start(LEADER);
    drive.pass(4_500);
    drive.play(MINA, take, 1, 4_400_000, 4_450_000);
  }

  private void held(long epoch, AttackLength... items) {
    drive.say(MINA, new TakeMessage.Lengths(take.takeId(), epoch, List.of(items)));
  }

  private void stored(RoomJournal.Outcome outcome) {
    JournalEntry last = drive.journal.get(drive.journal.size() - 1);
    assertThat(last).isInstanceOf(JournalEntry.Lengths.class);
    drive.event(new RoomEvent.Journaled(last, outcome));
  }

  @Test
  void areAnsweredOnceTheyAreOnTheDisk() {
    drive.storeAll();
    held(1, new AttackLength(1, 110), new AttackLength(2, 95));
    assertThat(drive.all(MINA, TakeNews.LengthsStored.class)).isEmpty();
    stored(new RoomJournal.Outcome.Stored());
    assertThat(drive.last(MINA, TakeNews.LengthsStored.class))
        .isEqualTo(new TakeNews.LengthsStored(take.takeId(), List.of(1L, 2L)));
  }

  @Test
  void ofAttacksThatAreNotStoredAreRefused() {
    held(1, new AttackLength(1, 110));
    assertThat(drive.last(MINA, ServerMessage.Problem.class).says())
        .isEqualTo("expected attacks that are stored, up to 0, found 1");
    assertThat(drive.lastError(MINA)).isEqualTo(ErrorCode.BAD_FIELD);
  }

  @Test
  void ofAnotherEpochOrWithoutAPartAreRefused() {
    drive.storeAll();
    held(2, new AttackLength(1, 110));
    assertThat(drive.lastError(MINA)).isEqualTo(ErrorCode.WRONG_EPOCH);
    drive.say(LEADER, new TakeMessage.Lengths(take.takeId(), 1, List.of(new AttackLength(1, 110))));
    assertThat(drive.lastError(LEADER)).isEqualTo(ErrorCode.NOT_ALLOWED);
    assertThat(drive.last(LEADER, ServerMessage.Problem.class).takeId()).isEqualTo(take.takeId());
  }

  @Test
  void thatCannotBeWrittenAreSaidToBeSo() {
    drive.storeAll();
    held(1, new AttackLength(1, 110));
    stored(new RoomJournal.Outcome.Refused("the disk is full"));
    assertThat(drive.lastError(MINA)).isEqualTo(ErrorCode.STORE_UNAVAILABLE);
    assertThat(drive.all(MINA, TakeNews.LengthsStored.class)).isEmpty();
  }

  @Test
  void thatComeAfterTheReviewMakeAnother() {
    drive.storeAll();
    drive.stop(LEADER, take.takeId());
    drive.say(MINA, new TakeMessage.PlayedThrough(take.takeId(), 2));
    drive.pass(10);
    assertThat(drive.reviewsAsked).hasSize(1);
    drive.event(new RoomEvent.ReviewFailed(take.takeId(), "none here"));
    held(1, new AttackLength(1, 110));
    stored(new RoomJournal.Outcome.Stored());
    drive.pass(2_000);
    assertThat(drive.reviewsAsked).hasSize(2);
  }
}
