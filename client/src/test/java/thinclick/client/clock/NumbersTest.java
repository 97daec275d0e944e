package thinclick.client.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NumbersTest {
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
}
