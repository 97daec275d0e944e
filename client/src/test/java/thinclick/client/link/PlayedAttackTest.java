package thinclick.client.link;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import thinclick.client.clock.ClockMapping;
import thinclick.client.clock.ClockView;
import thinclick.protocol.message.PreparingMessage.ClockState;
import thinclick.protocol.message.TakeMessage.WireAttack;

class PlayedAttackTest {
  private static final long SECOND = 1_000_000_000L;

  /** The room's clock showed 5 s when this computer's showed 100 s. */
  private static ClockView clock(ClockState state) {
    return new ClockView(new ClockMapping(100 * SECOND, 5e6, 0), state, 1, 100, 10, 100, 100);
  }

  @Test
  void attackIsStampedWithRoomTime() {
    PlayedAttack struck = new PlayedAttack(101 * SECOND, 90, 60, null, 2.5);

    assertThat(struck.stamped(clock(ClockState.STEADY), 0))
        .isEqualTo(new WireAttack(6_000_000, null, 90, 60, null, 2.5, false));
  }

  @Test
  void lateChairIsStampedEarlierAndTheRawStampGoesAlong() {
    PlayedAttack tap = PlayedAttack.tap(101 * SECOND);

    assertThat(tap.stamped(clock(ClockState.STEADY), 30))
        .isEqualTo(new WireAttack(5_970_000, 6_000_000L, null, null, null, null, false));
  }

  @Test
  void stampIsUnsureUntilTheClockIsSteady() {
    PlayedAttack tap = PlayedAttack.tap(101 * SECOND);

    assertThat(tap.stamped(clock(ClockState.FINDING), 0).unsure()).isTrue();
    assertThat(tap.stamped(clock(ClockState.LOST), 0).unsure()).isTrue();
  }

  @Test
  void noStampIsBeforeTheRoomsFirstInstant() {
    PlayedAttack early = PlayedAttack.tap(90 * SECOND);

    assertThat(early.stamped(clock(ClockState.STEADY), 30))
        .isEqualTo(new WireAttack(0, 0L, null, null, null, null, false));
  }

  @Test
  void lengthIsSaidInTenthsOfAMillisecondAndNeverBelowNothing() {
    PlayedAttack tap = PlayedAttack.tap(100 * SECOND);

    assertThat(tap.heldMillis(100 * SECOND + 123_456_000)).isEqualTo(123.5);
    assertThat(tap.heldMillis(99 * SECOND)).isZero();
  }
}
