package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import thinclick.server.net.Comings.Answer;
import thinclick.server.room.Room;

/** How often a room is entered, by a clock that the test moves. */
class ComingsTest {
  private static final long SECOND = 1_000_000_000L;

  private final Comings comings = new Comings(0);

  private boolean let(String token, long nowNanos) {
    return comings.ask(token, nowNanos) != Answer.WAIT;
  }

  private int allowed(String token, int times, long nowNanos) {
    int count = 0;
    for (int i = 0; i < times; i++) {
      count += let(token, nowNanos) ? 1 : 0;
    }
    return count;
  }

  @Test
  void allComeBackAtOnceAfterACut() {
    for (int member = 0; member < Room.MAX_MEMBERS; member++) {
      assertThat(let("token" + member, 0)).as("member %d", member).isTrue();
    }

    assertThat(let("token64", 0)).isFalse();
    assertThat(let("token64", SECOND / 2)).isTrue();
  }

  @Test
  void whoeverIsRefusedBecauseOfAllOthersLosesNothingOfTheirOwn() {
    for (int stranger = 0; stranger < Room.MAX_MEMBERS; stranger++) {
      comings.ask(null, 0);
    }
    assertThat(allowed("mina", 100, 0)).isZero();

    assertThat(allowed("mina", 100, 3 * SECOND)).isEqualTo(5);
  }

  @Test
  void oneWhoComesBackAllTheTimeWaitsAndTheOthersDoNot() {
    assertThat(allowed("mallory", 100, 0)).isEqualTo(5);

    assertThat(let("mina", 0)).isTrue();
    assertThat(let(null, 0)).isTrue();
    assertThat(allowed("mallory", 100, 2 * SECOND)).isEqualTo(1);
  }

  @Test
  void oneComingIsPaidForAndTheNextOnceTheyHaveStayed() {
    assertThat(comings.ask("mina", 0)).isEqualTo(Answer.WELCOME);
    assertThat(comings.ask("mina", SECOND)).isEqualTo(Answer.AS_A_STRANGER);
    assertThat(comings.ask("mina", 5 * SECOND)).isEqualTo(Answer.WELCOME);
    assertThat(comings.ask(null, 5 * SECOND)).isEqualTo(Answer.WELCOME);
    assertThat(comings.ask(null, 5 * SECOND)).isEqualTo(Answer.WELCOME);
  }

  @Test
  void whoIsRefusedCostsTheOthersNothing() {
    allowed("mallory", 1_000, 0);

    int others = 0;
    for (int member = 0; member < Room.MAX_MEMBERS; member++) {
      others += let("token" + member, 0) ? 1 : 0;
    }
    assertThat(others).isEqualTo(Room.MAX_MEMBERS - 5);
  }

  @Test
  void madeUpTokensAreNotAllRemembered() {
    long now = 0;
    for (int token = 0; token < 10_000; token++) {
      now += SECOND / 2;
      assertThat(let("made up " + token, now)).isTrue();
    }

    assertThat(comings.remembered()).isLessThanOrEqualTo(2 * Room.MAX_MEMBERS);
  }
}
