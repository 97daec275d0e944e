package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * One-to-one matching against published onset detection scores: mir_eval, tests/data/onset (MIT
 * licence), whose window is 50 ms, both ends included. Times are shown to 9 significant digits.
 */
class OnsetMatchingTest {
  private static final double WINDOW_MILLIS = 50;

  /** Set 05: its first pair is 49.3 ms apart and its last 50.5 ms, so that only one is a hit. */
  @Test
  void publishedSet05HasOneHit() {
    double[] reference = millis(0.19446712, 1.12863946, 2.02387755, 4.07972789);
    double[] estimated = millis(0.243809524, 1.19002268, 2.08689342, 4.13024943, 4.61206349);

    int[] partners = match(reference, estimated);
    assertThat(partners).containsExactly(0, Matcher.NONE, Matcher.NONE, Matcher.NONE);
    assertScores(partners, estimated.length, 0.2, 0.25, 0.222222222222222);
  }

  @Test
  void publishedSet07HasTenHits() {
    double[] reference = millis(0, .33, .496, .65, .96, 1.116, 1.278, 1.613, 1.933, 2.109, 2.25);
    double[] estimated =
        millis(
            .312154195,
            .454376417,
            .605306122,
            .947800454,
            1.07260771,
            1.25256236,
            1.56893424,
            1.88820862,
            2.06526077,
            2.24811791);

    int[] partners = match(reference, estimated);
    assertThat(partners).containsExactly(Matcher.NONE, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9);
    assertScores(partners, estimated.length, 1, 10 / 11.0, 0.952380952380952);
  }

  /** Set 04 has one reference and 45 estimates and no hit; here with the estimates far away. */
  @Test
  void nothingInsideTheWindowIsNoHit() {
    assertThat(match(millis(1), millis(0.949, 1.0501))).containsExactly(Matcher.NONE);
    assertThat(match(millis(1), millis(0.95))).containsExactly(0);
    assertThat(match(millis(1), millis(1.05))).containsExactly(0);
  }

  private static int[] match(double[] reference, double[] estimated) {
    double[] windows = new double[reference.length];
    Arrays.fill(windows, WINDOW_MILLIS);
    return Matcher.match(reference, windows, estimated);
  }

  private static void assertScores(
      int[] partners, int estimated, double precision, double recall, double fMeasure) {
    double hits = Arrays.stream(partners).filter(partner -> partner != Matcher.NONE).count();
    double p = hits / estimated;
    double r = hits / partners.length;

    assertThat(p).isCloseTo(precision, within(1e-12));
    assertThat(r).isCloseTo(recall, within(1e-12));
    assertThat(2 * p * r / (p + r)).isCloseTo(fMeasure, within(1e-12));
  }

  private static double[] millis(double... seconds) {
    return Arrays.stream(seconds).map(second -> 1_000 * second).toArray();
  }
}
