package thinclick.client.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class SkewTest {
  private static final SimulatedLine.Way CLEAN = SimulatedLine.Way.normal(2, 0.05);
  private static final SimulatedLine.Way JITTER = SimulatedLine.Way.normal(20, 5);

  private static Skew after(SimulatedLine line, int seconds) {
    SkewBlocks blocks = new SkewBlocks();
    for (int i = 0; i < seconds * 2; i++) {
      blocks.add(line.exchange(i * 500_000_000L));
    }
    return blocks.skew();
  }

  @Test
  void nothingIsAssumedBeforeThreeBlocks() {
    assertThat(after(new SimulatedLine(1, CLEAN, CLEAN).skew(80), 29)).isEqualTo(Skew.UNKNOWN);
  }

  @Test
  void cleanLineShowsItsSkewAfterFortySeconds() {
    for (long seed = 0; seed < 20; seed++) {
      Skew skew = after(new SimulatedLine(seed, CLEAN, CLEAN).skew(80), 40);
      assertThat(skew.ppm()).as("seed %d", seed).isCloseTo(80, within(5.0));
    }
  }

  @Test
  void noisyLineShowsItsSkewAfterFiveMinutes() {
    for (long seed = 0; seed < 20; seed++) {
      Skew skew = after(new SimulatedLine(seed, JITTER, JITTER).skew(-60), 300);
      assertThat(skew.ppm()).as("seed %d", seed).isCloseTo(-60, within(12.0));
      assertThat(skew.settled()).as("seed %d", seed).isTrue();
    }
  }

  @Test
  void weakSlopeIsTakenForNoise() {
    assertThat(Math.abs(Skew.believed(20, 20).ppm())).isLessThan(1);
    assertThat(Skew.believed(80, 2).ppm()).isCloseTo(80, within(0.5));
  }

  @Test
  void jumpIsNotTakenForASkew() {
    assertThat(Skew.believed(2_000, 5)).isEqualTo(Skew.UNKNOWN);
  }

  @Test
  void whatWasMeasuredBeforeAClearIsForgotten() {
    SkewBlocks blocks = new SkewBlocks();
    SimulatedLine line = new SimulatedLine(3, CLEAN, CLEAN).skew(80);
    for (int i = 0; i < 120; i++) {
      blocks.add(line.exchange(i * 500_000_000L));
    }
    assertThat(blocks.skew()).isNotEqualTo(Skew.UNKNOWN);
    blocks.clear();
    assertThat(blocks.skew()).isEqualTo(Skew.UNKNOWN);
  }
}
