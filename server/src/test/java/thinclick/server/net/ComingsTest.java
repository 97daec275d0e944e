package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import thinclick.server.room.Room;

/** How often a room is entered, by a clock that the test moves. */
class ComingsTest {
  private static final long SECOND = 1_000_000_000L;

  private final Comings comings = new Comings(0);

  private int allowed(String token, int times, long nowNanos) {
    int count = 0;
    for (int i = 0; i < times; i++) {
      count += comings.allows(token, nowNanos) ? 1 : 0;
    }
    return count;
  }

  @Test
  void allComeBackAtOnceAfterACut() {
    for (int member = 0; member < Room.MAX_MEMBERS; member++) {
      assertThat(comings.allows("token" + member, 0)).as("member %d", member).isTrue();
    }

    assertThat(comings.allows("token64", 0)).isFalse();
    assertThat(comings.allows("token64", SECOND / 2)).isTrue();
  }

  @Test
  void whoeverIsRefusedBecauseOfAllOthersLosesNothingOfTheirOwn() {
    for (int stranger = 0; stranger < Room.MAX_MEMBERS; stranger++) {
      comings.allows(null, 0);
    }
    assertThat(allowed("mina", 100, 0)).isZero();

    assertThat(allowed("mina", 100, 3 * SECOND)).isEqualTo(5);
  }

  @Test
  void oneWhoComesBackAllTheTimeWaitsAndTheOthersDoNot() {
    assertThat(allowed("mallory", 100, 0)).isEqualTo(5);

    assertThat(comings.allows("mina", 0)).isTrue();
    assertThat(comings.allows(null, 0)).isTrue();
    assertThat(allowed("mallory", 100, 2 * SECOND)).isEqualTo(1);
  }

  @Test
  void oneComingIsPaidForAndTheNextOnceTheyHaveStayed() {
    assertThat(comings.paidFor("mina", 0)).isTrue();
    comings.allows("mina", 0);

    assertThat(comings.paidFor("mina", SECOND)).isFalse();
    assertThat(comings.paidFor("mina", 3 * SECOND)).isTrue();
    assertThat(comings.paidFor(null, 0)).isTrue();
  }

  @Test
  void whoIsRefusedCostsTheOthersNothing() {
    allowed("mallory", 1_000, 0);

    int others = 0;
    for (int member = 0; member < Room.MAX_MEMBERS; member++) {
      others += comings.allows("token" + member, 0) ? 1 : 0;
    }
    assertThat(others).isEqualTo(Room.MAX_MEMBERS - 5);
  }

  @Test
  void madeUpTokensAreNotAllRemembered() {
    long now = 0;
    for (int token = 0; token < 10_000; token++) {
      now += SECOND / 2;
      assertThat(comings.allows("made up " + token, now)).isTrue();
    }

    assertThat(comings.remembered()).isLessThanOrEqualTo(2 * Room.MAX_MEMBERS);
  }
}
