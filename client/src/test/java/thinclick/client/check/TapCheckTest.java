package thinclick.client.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import thinclick.client.check.Verdict.Known;
import thinclick.client.check.Verdict.Refused;
import thinclick.client.check.Verdict.Why;

/** Taps by script against a click of 100 a minute. */
class TapCheckTest {
  private static final long BEAT = 600_000_000L;
  private static final int CLICKS = TapCheck.LEAD_IN + TapCheck.COUNTED;
  private static final long[] CLICK =
      IntStream.range(0, CLICKS).mapToLong(i -> 5_000_000_000L + i * BEAT).toArray();

  @Test
  void thirtySixTapsAtEightyMillisecondsGiveEighty() {
    Random luck = new Random(6);
    Known known = known(taps(80, i -> luck.nextGaussian() * 3));
    assertThat(known.latencyMillis()).isCloseTo(80, within(2.0));
    assertThat(known.taps()).isEqualTo(36);
    assertThat(known.how()).isEqualTo(Verdict.How.TAPS);
  }

  @Test
  void theTruthLiesInsideTheUncertaintyForTapsThatResembleEachOther() {
    int inside = 0;
    int passed = 0;
    for (int seed = 0; seed < 400; seed++) {
      double[] noise = alike(seed, 0.5, 15);
      Verdict verdict = judge(taps(43, i -> noise[i]));
      if (verdict instanceof Known known) {
        passed++;
        inside += Math.abs(known.latencyMillis() - 43) <= known.uncertaintyMillis() ? 1 : 0;
      }
    }
    assertThat(passed).as("of 400 seeds from 0").isGreaterThan(300);
    assertThat(inside / (double) passed).as("seeds from 0").isGreaterThan(0.95);
  }

  @Test
  void aSteadyTapperIsKnownBetterThanALooseOne() {
    Known steady = known(taps(30, i -> alike(3, 0.3, 5)[i]));
    Known loose = known(taps(30, i -> alike(3, 0.3, 14)[i]));
    assertThat(steady.uncertaintyMillis()).isLessThan(loose.uncertaintyMillis() / 2);
  }

  @Test
  void irregularTapsAreRefused() {
    Random luck = new Random(7);
    assertThat(refused(taps(0, i -> luck.nextDouble() * 600 - 300)).why())
        .isIn(Why.SCATTERED, Why.OUTLIERS, Why.HALVES);
  }

  @Test
  void tooFewTapsAreRefused() {
    assertThat(refused(Arrays.copyOf(taps(80, i -> 0), 27)))
        .isEqualTo(new Refused(Why.FEW, 23, IntStream.range(0, 23).mapToObj(i -> 80.0).toList()));
  }

  @Test
  void aFewMissedAndDoubledTapsDoNoHarm() {
    long[] taps = taps(80, i -> i % 2 == 0 ? 2 : -2);
    long[] some =
        IntStream.range(0, CLICKS)
            .filter(i -> i % 6 != 0)
            .mapToLong(i -> taps[i])
            .flatMap(t -> t % 5 == 0 ? LongStream.of(t, t + 200_000_000L) : LongStream.of(t))
            .toArray();
    assertThat(known(some).latencyMillis()).isCloseTo(80, within(2.0));
  }

  @Test
  void tapsFarFromTheOthersAreLeftOutUpToAFifth() {
    assertThat(known(taps(80, i -> i % 9 == 0 ? 150 : i % 2)).latencyMillis())
        .isCloseTo(80.5, within(1.0));
    assertThat(refused(taps(80, i -> i % 4 == 0 ? 150 : i % 2)).why()).isEqualTo(Why.OUTLIERS);
  }

  @Test
  void aDelayThatMovesIsRefused() {
    Random luck = new Random(8);
    assertThat(refused(taps(60, i -> (i < 22 ? 0 : 25) + luck.nextGaussian() * 4)).why())
        .isIn(Why.HALVES, Why.SCATTERED);
  }

  @Test
  void aDelayOfMoreThanHalfABeatIsNotTakenForAnEarlyTap() {
    assertThat(known(taps(330, i -> i % 2)).latencyMillis()).isCloseTo(330.5, within(1.0));
    assertThat(known(taps(-40, i -> i % 2)).latencyMillis()).isCloseTo(-39.5, within(1.0));
  }

  @Test
  void whatNoUsableMachineHasIsRefused() {
    assertThat(refused(taps(400, i -> i % 2)).why()).isEqualTo(Why.BEYOND);
  }

  @Test
  void anOutputThatStumbledIsRefused() {
    assertThat(TapCheck.judge(CLICK, taps(80, i -> 0), true))
        .isInstanceOfSatisfying(
            Refused.class, refused -> assertThat(refused.why()).isEqualTo(Why.STUMBLED));
  }

  /** What a tap is off by beside its delay, milliseconds. */
  private interface Noise {
    double of(int tap);
  }

  private static long[] taps(double millis, Noise noise) {
    return IntStream.range(0, CLICKS)
        .mapToLong(i -> CLICK[i] + Math.round((millis + noise.of(i)) * 1e6))
        .sorted()
        .toArray();
  }

  /** Each value resembles the one before it by {@code r}. */
  private static double[] alike(long seed, double r, double sd) {
    Random luck = new Random(seed);
    double[] noise = new double[CLICKS];
    noise[0] = luck.nextGaussian() * sd;
    for (int i = 1; i < CLICKS; i++) {
      noise[i] = r * noise[i - 1] + Math.sqrt(1 - r * r) * luck.nextGaussian() * sd;
    }
    return noise;
  }

  private static Verdict judge(long[] taps) {
    return TapCheck.judge(CLICK, taps, false);
  }

  private static Known known(long[] taps) {
    Verdict verdict = judge(taps);
    assertThat(verdict).isInstanceOf(Known.class);
    return (Known) verdict;
  }

  private static Refused refused(long[] taps) {
    Verdict verdict = judge(taps);
    assertThat(verdict).isInstanceOf(Refused.class);
    return (Refused) verdict;
  }
}
