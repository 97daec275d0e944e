package thinclick.client.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class NumbersTest {
  /** NIST StRD, linear regression, Norris: x in file order. */
  private static final double[] NORRIS_X = {
    0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5,
    666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2,
    999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5
  };

  /** The same, y. */
  private static final double[] NORRIS_Y = {
    0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1,
    668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0,
    998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2
  };

  @Test
  void medianOfAnEvenCountIsTheMeanOfTheMiddleTwo() {
    assertThat(Numbers.median(new double[] {9, 1, 5, 3})).isEqualTo(4);
    assertThat(Numbers.median(new double[] {9, 1, 5})).isEqualTo(5);
  }

  @Test
  void lowestQuarterOfFewerThanEightIsTheLeast() {
    assertThat(Numbers.lowestQuarter(new double[] {2, 4, 8})).isEqualTo(2);
    assertThat(Numbers.lowestQuarter(new double[] {1, 2, 3, 4, 5, 6, 7, 8})).isEqualTo(1.5);
  }

  @Test
  void inputsStayAsTheyWere() {
    double[] values = {3, 1, 2};
    assertThat(Numbers.rising(values)).containsExactly(1, 2, 3);
    assertThat(Numbers.median(values)).isEqualTo(2);
    assertThat(values).containsExactly(3, 1, 2);
  }

  @Test
  void varianceDividesByOneLess() {
    assertThat(Numbers.variance(new double[] {2, 4, 4, 4, 5, 5, 7, 9})).isEqualTo(32.0 / 7);
    assertThat(Numbers.variance(new double[] {2})).isZero();
  }

  @Test
  void slopeSurvivesAQuarterOfWildPoints() {
    for (long seed = 0; seed < 200; seed++) {
      Random random = new Random(seed);
      double slope = 200 * random.nextDouble() - 100;
      double[] x = new double[20];
      double[] y = new double[20];
      Arrays.setAll(x, i -> 10.0 * i);
      Arrays.setAll(y, i -> i % 4 == 0 ? 1e6 * random.nextGaussian() : 7 + slope * x[i]);
      assertThat(Numbers.theilSen(x, y)).as("seed %d", seed).isCloseTo(slope, within(1e-6));
    }
  }

  @Test
  void slopeErrorIsThatOfLeastSquares() {
    // Points at -1, 0, 1 with standard deviation 3: 3 / sqrt(2), closed form.
    assertThat(Numbers.slopeError(new double[] {-1, 0, 1}, 3))
        .isCloseTo(3 / Math.sqrt(2), within(1e-12));
  }

  @Test
  void slopeErrorIsTheCertifiedOneOfNorris() {
    // NIST StRD, Norris, certified: residual standard deviation 0.884796396144373, standard
    // deviation of the slope 0.429796848199937E-03.
    assertThat(Numbers.slopeError(NORRIS_X, 0.884796396144373))
        .isCloseTo(0.429796848199937e-3, within(1e-15));
  }

  @Test
  void medianSlopeOfNorrisIsTheCertifiedOneWithinItsError() {
    // The certified slope is that of least squares, 1.00211681802045; the median of slopes is
    // another estimate of the same line. The second point at x = 0.3 is left out: the points must
    // differ in x.
    int again = 24;
    double[] x = without(NORRIS_X, again);
    double[] y = without(NORRIS_Y, again);
    assertThat(Numbers.theilSen(x, y))
        .isCloseTo(1.00211681802045, within(2 * 0.429796848199937e-3));
  }

  private static double[] without(double[] values, int index) {
    return IntStream.range(0, values.length)
        .filter(i -> i != index)
        .mapToDouble(i -> values[i])
        .toArray();
  }
}
