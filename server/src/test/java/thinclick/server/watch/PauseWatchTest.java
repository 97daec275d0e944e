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

  @Test
  void pausesAreCountedAmongTheFiguresAndNapsInTimeAreNot() {
    HostMeters meters = new HostMeters();
    PauseWatch.Naps naps = new PauseWatch.Naps(0, meters::paused);
    naps.woke(10_000_000); // as it should be
    naps.woke(69_000_000); // 49 ms late
    naps.woke(159_000_000); // 80 ms late
    naps.woke(2_169_000_000L); // 2 s late

    assertThat(meters.text())
        .containsPattern("thinclick_pauses_seconds_count 2\\b")
        .containsPattern("thinclick_pauses_seconds_sum 2\\.08\\b")
        .containsPattern("thinclick_pauses_seconds_bucket\\{le=\"0\\.1\"} 1\\b");
  }
}
