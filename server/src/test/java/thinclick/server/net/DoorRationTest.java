package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** What strangers may take of a core while somebody plays, by a clock that the test moves. */
class DoorRationTest {
  private static final long MILLI = 1_000_000L;
  private static final long SECOND = 1_000 * MILLI;

  private boolean playing = true;
  private final DoorRation ration = new DoorRation(() -> playing, 0, 0);
  private long used;
  private long now;

  /** One turn of the loop and its rest, milliseconds. */
  private double restAfter(double workMillis) {
    used += (long) (workMillis * MILLI);
    now += (long) (workMillis * MILLI);
    long rest = ration.restNanos(used, now);
    now += rest;
    return rest / (double) MILLI;
  }

  /** The part of the time that was worked over so many turns. */
  private double share(double workMillis, int turns) {
    long usedBefore = used;
    long began = now;
    for (int turn = 0; turn < turns; turn++) {
      restAfter(workMillis);
    }
    return (used - usedBefore) / (double) (now - began);
  }

  @Test
  void whoeverComesAtFirstIsServedAtOnce() {
    for (int turn = 0; turn < 10; turn++) {
      assertThat(restAfter(1)).isZero();
    }
  }

  @Test
  void oneAfterAnotherGetsItsShareAndNoMore() {
    share(.25, 400);

    assertThat(share(.25, 1_000)).isCloseTo(DoorRation.SHARE, within(.001));
  }

  @Test
  void veryManyAtOnceWaitATenthOfASecondATurnAndOweNothingThen() {
    share(1, 100);
    assertThat(restAfter(500)).isCloseTo(100, within(.001));

    assertThat(restAfter(.5)).isCloseTo(99.5, within(.001)); // its own half millisecond alone
  }

  @Test
  void whoeverIsLetInHasPaid() {
    share(.25, 400);
    for (int guest = 0; guest < 30; guest++) {
      ration.letIn();
      assertThat(restAfter(1.9)).isZero();
    }
  }

  @Test
  void whileNobodyPlaysNothingIsRationed() {
    playing = false;

    assertThat(share(10, 1_000)).isEqualTo(1);
  }

  @Test
  void whatWasNotTakenDoesNotPileUp() {
    share(.25, 400);
    now += 3_600 * SECOND;
    restAfter(0);
    assertThat(restAfter(10)).isZero();

    assertThat(restAfter(1)).isPositive();
  }
}
