package thinclick.server.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.message.TakeNews.HeardAttack;

/** What is said of an attack while the take runs, to whom, and how it is taken back. */
class LiveJudgementsTest {
  private static final long LEADER = 1;
  private static final long MINA = 2;
  private static final long JONAS = 3;
  private static final long LISTENER = 4;
  private static final long BEAT = 500_000;

  private final RoomDrive drive = new RoomDrive();
  private TakeNews.Announced take;

  @BeforeEach
  void twoPlay() {
    drive.open(LEADER, "Frau Ott");
    drive.join(MINA, "Mina");
    drive.join(JONAS, "Jonas");
    drive.join(LISTENER, "Wall", ClientMessage.Role.LISTENER, null);
    take = drive.start(LEADER);
    drive.pass(4_500);
  }

  private void plays(long who, long seq, long afterBarOneMicros) {
    drive.play(who, take, seq, take.startMicros() + afterBarOneMicros);
  }

  private HeardAttack last(long who) {
    List<HeardAttack> items = drive.last(who, TakeNews.Heard.class).items();
    return items.get(items.size() - 1);
  }

  private void share(boolean value) {
    drive.say(LEADER, new LeaderCommand.Share(9, drive.revision(), value));
  }

  @Test
  void anAttackIsJudgedAsItComes() {
    plays(MINA, 1, 0);
    assertThat(last(LEADER).judgement()).isEqualTo("together");
    plays(MINA, 2, BEAT + 2_000);
    assertThat(last(LEADER).judgement()).isEqualTo("together");
    assertThat(last(LEADER).asynchronyMillis()).isBetween(0.0, 2.0);
    plays(MINA, 3, 2 * BEAT + 90_000);
    assertThat(last(LEADER).judgement()).isEqualTo("late");
    plays(MINA, 4, 2 * BEAT + 100_000);
    assertThat(last(LEADER).judgement()).isEqualTo("setAside");
    assertThat(last(LEADER).asynchronyMillis()).isNull();
  }

  @Test
  void twoShareTheirJudgementsUntilTheLeaderSaysOtherwise() {
    plays(MINA, 1, 0);
    assertThat(last(JONAS).judgement()).isEqualTo("together");

    share(false);
    plays(MINA, 2, BEAT);
    assertThat(last(JONAS).judgement()).isNull();
    assertThat(last(JONAS).asynchronyMillis()).isNull();
    assertThat(last(LISTENER).judgement()).isNull();
    assertThat(last(LEADER).judgement()).isEqualTo("together");
    plays(MINA, 3, BEAT + 20_000);
    assertThat(last(JONAS).judgement()).as("no attack of its own").isEqualTo("setAside");

    share(true);
    plays(MINA, 4, 2 * BEAT);
    assertThat(last(JONAS).judgement()).isEqualTo("together");
    assertThat(drive.room.state().share()).isTrue();
  }

  @Test
  void threeKeepTheirJudgementsFromEachOther() {
    RoomDrive larger = new RoomDrive();
    larger.open(LEADER, "Frau Ott");
    for (long player : List.of(MINA, JONAS, LISTENER)) {
      larger.join(player, "Player " + player);
    }
    TakeNews.Announced announced = larger.start(LEADER);
    larger.pass(4_500);
    larger.play(MINA, announced, 1, announced.startMicros());

    assertThat(larger.last(JONAS, TakeNews.Heard.class).items())
        .allMatch(item -> item.judgement() == null);
    assertThat(larger.last(LEADER, TakeNews.Heard.class).items())
        .allMatch(item -> "together".equals(item.judgement()));
  }

  /** Mina has the beats and plays the ands: what was first taken for noise is off by a step. */
  @Test
  void whatLaterAttacksProveWrongIsSaidAgain() {
    share(false);
    Set<Long> again = new HashSet<>();
    for (int beat = 0; beat < 12; beat++) {
      plays(JONAS, beat + 1, beat * BEAT + BEAT / 2);
      plays(MINA, beat + 1, beat * BEAT + BEAT / 2);
    }
    for (TakeNews.Heard heard : drive.all(LEADER, TakeNews.Heard.class)) {
      for (HeardAttack item : heard.items()) {
        if (item.again()) {
          again.add(item.seq());
          assertThat(item.playerId()).isEqualTo("room-p2");
          assertThat(item.judgement()).isEqualTo("displaced");
          assertThat(item.micros())
              .isEqualTo(take.startMicros() + (item.seq() - 1) * BEAT + BEAT / 2);
        }
      }
    }
    assertThat(again).hasSizeBetween(1, 6);
    assertThat(last(LEADER).judgement()).isEqualTo("displaced");
    // Who may not know judgements hears each attack once.
    assertThat(drive.all(JONAS, TakeNews.Heard.class)).hasSize(12);
  }

  @Test
  void aLargerRoomsBatchHasJudgementsForTheLeaderAlone() {
    RoomDrive larger = new RoomDrive();
    larger.open(LEADER, "Frau Ott");
    for (long player = 2; player <= 12; player++) {
      larger.join(player, "Player " + player);
    }
    TakeNews.Announced announced = larger.start(LEADER);
    larger.pass(4_500);
    larger.play(MINA, announced, 1, announced.startMicros());
    larger.play(JONAS, announced, 1, announced.startMicros() + BEAT / 2);
    larger.pass(50);

    assertThat(larger.last(LEADER, TakeNews.Heard.class).items())
        .hasSize(2)
        .allMatch(item -> item.judgement() != null);
    assertThat(larger.last(12, TakeNews.Heard.class).items())
        .hasSize(2)
        .allMatch(item -> item.judgement() == null);
  }

  @Test
  void anAttackSentTwiceIsJudgedOnce() {
    plays(MINA, 1, 0);
    plays(MINA, 1, 0);

    assertThat(drive.all(LEADER, TakeNews.Heard.class)).hasSize(1);
  }

  @Test
  void theSameQueueIsJudgedTheSame() {
    for (int beat = 0; beat < 10; beat++) {
      plays(MINA, beat + 1, beat * BEAT + BEAT / 2);
    }
    RoomDrive replayed = new RoomDrive();
    for (RoomDrive.Entry entry : drive.queue) {
      replayed.effects.addAll(replayed.room.handle(entry.event(), entry.micros()));
    }

    assertThat(replayed.effects).isEqualTo(drive.effects);
  }
}
