package thinclick.protocol.music;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Click instants over 30 minutes against exact fractions. */
class ClickInstantsTest {
  private static final long THIRTY_MINUTES_MICROS = 30L * 60 * 1_000_000;
  private static final long START_MICROS = 3_000_001;
  private static final long SEED = 20_260_101;

  /** Steps a beat that each meter has. */
  static Stream<StepGrid> grids() {
    List<StepGrid> grids = new ArrayList<>();
    for (double tempo : tempos()) {
      for (String meter : List.of("2/4", "3/4", "4/4", "5/4", "6/4", "7/4", "6/8", "9/8", "12/8")) {
        Meter written = Meter.parse(meter);
        for (int stepsPerBeat : written.compound() ? new int[] {3, 6} : new int[] {2, 3, 4, 6}) {
          grids.add(new StepGrid(written, stepsPerBeat, tempo, Swing.STRAIGHT, START_MICROS));
        }
      }
      for (double ratio : new double[] {1.3, 1.5, 2, 3, 3.5, 4}) {
        for (int stepsPerBeat : new int[] {2, 4}) {
          grids.add(
              new StepGrid(Meter.FOUR_FOUR, stepsPerBeat, tempo, Swing.of(ratio), START_MICROS));
        }
      }
    }
    return grids.stream();
  }

  /** The edges, tempos whose step is no whole number of microseconds, and seeded ones. */
  private static List<Double> tempos() {
    List<Double> tempos = new ArrayList<>(List.of(30.0, 60.0, 89.9, 97.0, 120.0, 133.7, 320.0));
    Random random = new Random(SEED);
    for (int i = 0; i < 5; i++) {
      tempos.add(30 + 290 * random.nextDouble());
    }
    return tempos;
  }

  @ParameterizedTest
  @MethodSource("grids")
  void noStepOfThirtyMinutesIsMoreThanAMicrosecondFromItsExactFraction(StepGrid grid) {
    long steps = (long) (THIRTY_MINUTES_MICROS / grid.stepMicros());
    // Every step of the first and last bars, and a coprime stride between them.
    for (long step = -64; step <= steps; step += step < 64 || step > steps - 64 ? 1 : 37) {
      assertWithinAMicrosecond(grid, step);
    }
  }

  @Test
  void aPlanOfThirtyMinutesClicksEveryBeatAndDoesNotDrift() {
    StepGrid grid = new StepGrid(Meter.FOUR_FOUR, 2, 133.7, Swing.STRAIGHT, START_MICROS);
    int bars = 1_004; // 30 minutes and a little
    List<Click> clicks = new ClickPlan(List.of(Stage.ofBeats(bars, 1, 1, 2, 3, 4))).clicks(grid);

    assertThat(clicks).hasSize(4 * bars);
    for (int i = 0; i < clicks.size(); i++) {
      assertThat(clicks.get(i).step()).isEqualTo(2L * i);
      assertThat(BigDecimal.valueOf(clicks.get(i).micros()).subtract(exact(grid, 2L * i)).abs())
          .isLessThanOrEqualTo(BigDecimal.ONE);
    }
    assertThat(clicks.get(clicks.size() - 1).micros() - START_MICROS)
        .isGreaterThan(THIRTY_MINUTES_MICROS);
  }

  /**
   * Off-beat position s/(s+1) of the beat, ms at 120 beats a minute: derived from the swing ratio's
   * definition (long:short, Benadon 2006; Corcoran and Frieler 2021).
   */
  @ParameterizedTest
  @CsvSource({
    "1,   0.5,      250",
    "1.3, 0.565217, 282.609",
    "1.5, 0.6,      300",
    "2,   0.666667, 333.333",
    "3,   0.75,     375",
    "3.5, 0.777778, 388.889",
  })
  void theOffbeatComesAtTheRatiosShareOfTheBeat(double ratio, double ofBeat, double millis) {
    StepGrid eighths = new StepGrid(Meter.FOUR_FOUR, 2, 120, Swing.of(ratio), 0);

    for (long beat = -3; beat < 100; beat++) {
      double at = eighths.microsAt(2 * beat + 1) / 1_000 - beat * 500;
      assertThat(at).isCloseTo(millis, within(.0005));
      assertThat(at / 500).isCloseTo(ofBeat, within(.0000005));
      assertThat(eighths.instantOf(2 * beat)).isEqualTo(beat * 500_000);
    }
  }

  @ParameterizedTest
  @CsvSource({"1, 125", "2, 166.667", "3, 187.5"})
  void sixteenthsSwingInPairsOfSixteenths(double ratio, double millis) {
    StepGrid sixteenths = new StepGrid(Meter.FOUR_FOUR, 4, 120, Swing.of(ratio), 0);

    assertThat(sixteenths.microsAt(1) / 1_000).isCloseTo(millis, within(.0005));
    assertThat(sixteenths.microsAt(2)).isEqualTo(250_000);
    assertThat(sixteenths.microsAt(3) / 1_000).isCloseTo(250 + millis, within(.0005));
  }

  @Test
  void setSwingMovesClickedOffbeatsAndBandSwingLeavesThemStraight() {
    ClickPlan offbeats = new ClickPlan(List.of(Stage.ofSteps(1, 1, 1, 3, 5, 7)));

    assertThat(offbeats.clicks(new StepGrid(Meter.FOUR_FOUR, 2, 120, Swing.of(2), 0)))
        .extracting(Click::micros)
        .containsExactly(333_333L, 833_333L, 1_333_333L, 1_833_333L);
    assertThat(offbeats.clicks(new StepGrid(Meter.FOUR_FOUR, 2, 120, Swing.BAND, 0)))
        .extracting(Click::micros)
        .containsExactly(250_000L, 750_000L, 1_250_000L, 1_750_000L);
  }

  private static void assertWithinAMicrosecond(StepGrid grid, long step) {
    BigDecimal apart = BigDecimal.valueOf(grid.instantOf(step)).subtract(exact(grid, step)).abs();
    assertThat(apart)
        .as("%s, step %d, seed %d", grid, step, SEED)
        .isLessThanOrEqualTo(BigDecimal.ONE);
  }

  /** {@code start + position * 60,000,000 / (tempo * stepsPerBeat)} to 60 digits. */
  private static BigDecimal exact(StepGrid grid, long step) {
    MathContext digits = new MathContext(60);
    BigDecimal position = BigDecimal.valueOf(step);
    if (Math.floorMod(step, 2L) == 1) {
      BigDecimal ratio = new BigDecimal(grid.swing().ratio());
      position =
          BigDecimal.valueOf(step - 1)
              .add(
                  ratio.add(ratio).divide(BigDecimal.ONE.add(ratio), digits)); // 2r/(1+r) of a pair
    }
    return BigDecimal.valueOf(grid.startMicros())
        .add(
            position
                .multiply(BigDecimal.valueOf(60_000_000))
                .divide(
                    new BigDecimal(grid.tempo()).multiply(BigDecimal.valueOf(grid.stepsPerBeat())),
                    digits));
  }
}
