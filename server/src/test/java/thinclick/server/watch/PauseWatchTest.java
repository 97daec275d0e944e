package thinclick.server.watch;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PauseWatchTest {
  @Test
  void napThatEndsInTimeIsNoPause() {
    assertThat(PauseWatch.late(0, 10_100_000)).isLessThan(PauseWatch.WORTH_TELLING_NANOS);
  }

  @Test
  void whatIsLateBeyondTheNapIsThePause() {
    assertThat(PauseWatch.late(5_000_000, 515_000_000)).isEqualTo(500_000_000);
  }
}
