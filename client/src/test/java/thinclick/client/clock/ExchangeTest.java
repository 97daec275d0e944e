package thinclick.client.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Offset and delay by the formulas of RFC 5905 section 8, theta = ((T2 - T1) + (T3 - T4)) / 2 and
 * delta = (T4 - T1) - (T3 - T2).
 */
class ExchangeTest {
  private static Exchange millis(double t1, double t2, double t3, double t4) {
    return new Exchange(
        Math.round(t1 * 1e6), Math.round(t2 * 1e3), Math.round(t3 * 1e3), Math.round(t4 * 1e6));
  }

  @Test
  void apparentDelayMayBeNegativeAsRfc5905Says() {
    // RFC 5905 section 8: 100 ppm of frequency difference over T4 - T1 = 64 s, no delay at all:
    // "the apparent delay is -6.4 ms".
    Exchange exchange = millis(0, 0, 64_006.4, 64_000);
    assertThat(exchange.delayMicros()).isCloseTo(-6_400, within(1e-6));
  }

  @Test
  void clockSetAfterARoundTripOf800MillisIsHalfOfItAhead() {
    // Cristian's method, example in lecture notes after P. Krzyzanowski: sent 5:08:15.100, received
    // 5:08:15.900, server 5:09:25.300; to set: 5:09:25.700.
    Exchange exchange = millis(15_100, 85_300, 85_300, 15_900);
    assertThat(15_900 + exchange.offsetMicros() / 1e3).isCloseTo(85_700, within(1e-6));
  }

  @Test
  void shortestOfThreeRoundTripsSetsTheClock() {
    // Textbook variant of Cristian's method: round trips of 18, 23 and 20 ms with server times
    // 10:46:23.547, :25.405 and :28.642; the first gives 10:46:23.556, good to 9 ms.
    List<Exchange> three =
        List.of(
            millis(0, 23_547, 23_547, 18),
            millis(1_858, 25_405, 25_405, 1_881),
            millis(5_095, 28_642, 28_642, 5_115));
    Exchange best =
        three.stream().min(Comparator.comparingDouble(Exchange::delayMicros)).orElseThrow();
    assertThat(18 + best.offsetMicros() / 1e3).isCloseTo(23_556, within(1e-6));
    assertThat(best.delayMicros() / 2e3).isCloseTo(9, within(1e-9));
  }

  @Test
  void exchangeBetweenServersOfTheTextbookGivesItsOffsetAndAccuracy() {
    // After Coulouris et al., exercise on NTP; from memory, arithmetic re-derived: A sends
    // 16:34:13.430, B receives :23.480, B sends :25.700, A receives :15.725.
    Exchange exchange = millis(13_430, 23_480, 25_700, 15_725);
    assertThat(exchange.offsetMicros()).isCloseTo(10_012_500, within(1e-6));
    assertThat(exchange.delayMicros()).isCloseTo(75_000, within(1e-6));
  }

  @Test
  void classroomExampleGivesMinus325And50() {
    // SNTP classroom example, from memory, arithmetic re-derived: T1 1100, T2 800, T3 850, T4 1200.
    Exchange exchange = millis(1_100, 800, 850, 1_200);
    assertThat(exchange.offsetMicros()).isCloseTo(-325_000, within(1e-6));
    assertThat(exchange.delayMicros()).isCloseTo(50_000, within(1e-6));
  }

  /** A constructed set: true offset +137 ms, the server holds each question for 1 ms. */
  static List<Exchange> constructedSet() {
    return List.of(
        millis(0, 149, 150, 25),
        millis(1_000, 1_168, 1_169, 1_044),
        millis(2_000, 2_149, 2_150, 2_068),
        millis(3_000, 3_151, 3_152, 3_028),
        millis(4_000, 4_146, 4_147, 4_050),
        millis(5_000, 5_148, 5_149, 5_022),
        millis(6_000, 6_207, 6_208, 6_082),
        millis(7_000, 7_157, 7_158, 7_040));
  }

  @Test
  void constructedSetHasItsOffsetsAndDelays() {
    double[] offsets = {137.0, 146.5, 115.5, 137.5, 121.5, 137.5, 166.5, 137.5};
    double[] delays = {24, 43, 67, 27, 49, 21, 81, 39};
    List<Exchange> set = constructedSet();
    IntStream.range(0, set.size())
        .forEach(
            i -> {
              assertThat(set.get(i).offsetMicros() / 1e3).as("row %d", i).isEqualTo(offsets[i]);
              assertThat(set.get(i).delayMicros() / 1e3).as("row %d", i).isEqualTo(delays[i]);
            });
  }

  @Test
  void offsetIsNeverFurtherOutThanHalfTheDelay() {
    for (long seed = 0; seed < 500; seed++) {
      SimulatedLine line =
          new SimulatedLine(
              seed,
              SimulatedLine.Way.exponential(1, 30),
              SimulatedLine.Way.logNormal(1, 20, new Random(seed).nextDouble()));
      Stream.of(0L, 1_000_000_000L)
          .forEach(
              at -> {
                Exchange e = line.exchange(at);
                double error = e.offsetMicros() - line.trueOffset(e.arrivedNanos());
                assertThat(Math.abs(error))
                    .as("seed of the line and instant %d", at)
                    .isLessThanOrEqualTo(e.delayMicros() / 2 + 1);
              });
    }
  }
}
