package thinclick.client.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class OffsetEstimatorTest {
  private static final SimulatedLine.Way JITTER = SimulatedLine.Way.normal(20, 5);

  private static List<Exchange> exchanges(SimulatedLine line, int count) {
    List<Exchange> list = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      list.add(line.exchange(i * 100_000_000L));
    }
    return list;
  }

  @Test
  void intervalOfTheConstructedSetIsWhatAllExchangesAllow() {
    // All eight intervals [offset - delay / 2, offset + delay / 2] have [127, 146] ms in common.
    OffsetEstimate estimate =
        OffsetEstimator.estimate(Ways.of(ExchangeTest.constructedSet(), 0, 0));
    assertThat(estimate.lowMicros()).isCloseTo(127_000, within(1e-6));
    assertThat(estimate.highMicros()).isCloseTo(146_000, within(1e-6));
    assertThat(estimate.offsetMicros()).isBetween(127_000.0, 146_000.0);
    assertThat(Math.abs(estimate.offsetMicros() - 137_000))
        .isLessThanOrEqualTo(estimate.worstMicros());
  }

  @Test
  void estimateLiesInsideTheCertainInterval() {
    for (long seed = 0; seed < 300; seed++) {
      SimulatedLine line =
          new SimulatedLine(
              seed, SimulatedLine.Way.logNormal(2, 10, 1.5), SimulatedLine.Way.exponential(2, 10));
      int count = 1 + (int) (seed % 60);
      OffsetEstimate estimate = OffsetEstimator.estimate(Ways.of(exchanges(line, count), 0, 0));
      assertThat(estimate.offsetMicros())
          .as("seed %d", seed)
          .isBetween(estimate.lowMicros(), estimate.highMicros());
      assertThat(line.trueOffset(0))
          .as("seed %d", seed)
          .isBetween(estimate.lowMicros() - 1, estimate.highMicros() + 1);
    }
  }

  @Test
  void laterOffsetChangesNothingButItself() {
    for (long seed = 0; seed < 50; seed++) {
      List<Exchange> set = exchanges(new SimulatedLine(seed, JITTER, JITTER), 40);
      List<Exchange> moved =
          set.stream()
              .map(
                  e ->
                      new Exchange(
                          e.sentNanos(),
                          e.receivedMicros() + 5_000,
                          e.answeredMicros() + 5_000,
                          e.arrivedNanos()))
              .toList();
      double before = OffsetEstimator.estimate(Ways.of(set, 0, 0)).offsetMicros();
      double after = OffsetEstimator.estimate(Ways.of(moved, 0, 0)).offsetMicros();
      assertThat(after - before).as("seed %d", seed).isCloseTo(5_000, within(1e-3));
    }
  }

  @Test
  void skewIsTakenOutToTheInstantThatIsAskedFor() {
    SimulatedLine line =
        new SimulatedLine(1, SimulatedLine.Way.normal(2, 0), SimulatedLine.Way.normal(2, 0))
            .skew(300);
    List<Exchange> set = exchanges(line, 100);
    long at = 20_000_000_000L;
    assertThat(OffsetEstimator.estimate(Ways.of(set, at, 300)).offsetMicros())
        .isCloseTo(line.trueOffset(at), within(1.5));
  }

  @Test
  void spreadTellsHowFarTheEstimateIsOut() {
    // The error in units of the stated spread over many lines: near 1 were it normal and known.
    int runs = 400;
    double sum = 0;
    for (long seed = 0; seed < runs; seed++) {
      SimulatedLine line = new SimulatedLine(seed, JITTER, JITTER);
      OffsetEstimate estimate = OffsetEstimator.estimate(Ways.of(exchanges(line, 100), 0, 0));
      double off = (estimate.offsetMicros() - line.trueOffset(0)) / estimate.spreadMicros();
      sum += Math.min(25, off * off);
    }
    assertThat(Math.sqrt(sum / runs)).as("seeds 0 to %d", runs - 1).isBetween(0.8, 1.8);
  }
}
