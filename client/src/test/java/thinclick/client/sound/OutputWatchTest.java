package thinclick.client.sound;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import thinclick.client.sound.OutputWatch.Finding;

/** What an output's position says, read every ten milliseconds. */
class OutputWatchTest {
  private static final long READ_NANOS = 10_000_000;
  private static final long ANSWERED_NANOS = 20_000;
  private static final long READ_FRAMES = Voice.RATE / 100;
  private static final long DEEP = 1_000_000;

  private final OutputWatch watch = new OutputWatch(new DeviceClock());
  private long nanos = 5_000_000_000L;
  private long played;

  OutputWatchTest() {
    watch.opened(nanos);
  }

  @Test
  void anOutputIsBelievedOnceItHasAdvancedTwice() {
    assertThat(read(0)).isEqualTo(Finding.STARTING);
    assertThat(read(READ_FRAMES)).isEqualTo(Finding.STARTING);
    assertThat(read(READ_FRAMES)).isEqualTo(Finding.STARTING);
    assertThat(read(READ_FRAMES)).isEqualTo(Finding.RUNNING);
  }

  /** A sound server takes the first buffer into one of its own. */
  @Test
  void framesTakenInNoTimeAreNotPlayed() {
    read(READ_FRAMES);
    assertThat(read(4_800)).isEqualTo(Finding.STARTING);
    read(READ_FRAMES);
    assertThat(read(READ_FRAMES)).as("counted anew").isEqualTo(Finding.STARTING);
    assertThat(read(READ_FRAMES)).isEqualTo(Finding.RUNNING);
  }

  @Test
  void aPositionThatStandsStillForHalfASecondIsGoneBothAtTheStartAndLater() {
    assertThat(still()).as("ten milliseconds each").isEqualTo(50);
    watch.opened(nanos);
    played = 0;
    runs();
    long moved = nanos + ANSWERED_NANOS;
    assertThat(still()).as("counted from the answer").isEqualTo(51);
    assertThat(watch.movedNanos()).isEqualTo(moved);
  }

  @Test
  void anOutputThatRunsIsDryWhereNothingIsLeft() {
    assertThat(watch.dry(DEEP, true)).as("nothing was played yet").isFalse();
    runs();
    assertThat(watch.dry(DEEP, false)).isFalse();
    assertThat(watch.dry(DEEP, true)).isTrue();
    assertThat(watch.dry(played - 1, false)).as("more was played than written").isTrue();
  }

  /** A position that fell behind by 20 ms, three times; numbered anew it is in time again. */
  @Test
  void anOutputThatFallsBehindRanDry() {
    runs();
    read(0);
    read(0);
    read(READ_FRAMES);
    read(READ_FRAMES);
    assertThat(watch.dry(DEEP, false)).as("twice").isFalse();
    read(READ_FRAMES);
    assertThat(watch.behind()).isEqualTo(3);
    assertThat(watch.dry(DEEP, false)).isTrue();
    watch.anew(nanos, played);
    assertThat(read(READ_FRAMES)).isEqualTo(Finding.RUNNING);
    assertThat(watch.dry(DEEP, false)).isFalse();
  }

  private void runs() {
    for (int i = 0; i < 400; i++) {
      read(READ_FRAMES);
    }
  }

  /** How many reads until a position that does not move is given up. */
  private int still() {
    int reads = 1;
    while (read(0) != Finding.STILL) {
      reads++;
    }
    return reads;
  }

  private Finding read(long more) {
    nanos += READ_NANOS;
    played += more;
    return watch.read(nanos, played, nanos + ANSWERED_NANOS);
  }
}
