package thinclick.client.standin;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Part;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;

/**
 * The stand-ins' hands against the closed forms of linear phase correction: Vorberg and Wing 1996
 * for a click, Wing, Endo, Bradbury and Vorberg 2014 for a duo. With timekeeper variance Vc a beat,
 * motor variance Vm and gain a, a tap on every beat of a click that sounds every m-th has variance
 * {@code (1-a)^2 g0 + j Vc + 2 a Vm}, j beats after it, {@code g0 = (m Vc + 2 a Vm) / (a (2 - a))}.
 */
class PlayerTest {
  private static final int BARS = 5_000;
  private static final StepGrid GRID =
      new StepGrid(Meter.FOUR_FOUR, 2, 120, Swing.STRAIGHT, 10_000_000);
  private static final Timing VC_100_VM_25 = new Timing(10, 5, 0.5, 0, 0, 0);

  @Test
  void everyBeatOfAFullClickHasTheVarianceOfVorbergAndWing() {
    double[] asynchronies = tapEveryBeat(Stage.ofBeats(BARS, 1, 1, 2, 3, 4));

    assertThat(variance(asynchronies, 0, 1)).isCloseTo(166.6667, withinPercentage(4));
  }

  @Test
  void underOneClickABarTheVarianceGrowsFromClickToClick() {
    double[] asynchronies = tapEveryBeat(Stage.ofBeats(BARS, 1, 1));

    double[] afterTheClick = {566.667, 266.667, 366.667, 466.667}; // on the one, then 1, 2, 3 beats
    for (int beat = 0; beat < 4; beat++) {
      assertThat(variance(asynchronies, beat, 4))
          .as("beat %d", beat + 1)
          .isCloseTo(afterTheClick[beat], withinPercentage(8));
    }
  }

  @Test
  void aDuoWithoutAClickKeepsTogetherAsTheTwoPlayerModelSays() {
    Timing duo = new Timing(10, 5, 0, 0.25, 0, 0);
    Part ana = everyBeat("Ana");
    Part ben = everyBeat("Ben");
    Player first = new Player(duo, Slip.NONE, ana, List.of(ben), GRID, List.of(), 4);
    Player second = new Player(duo, Slip.NONE, ben, List.of(ana), GRID, List.of(), 5);
    double[] apart = new double[BARS * 4];
    for (int i = 0; i < apart.length; i++) {
      Player.Move one = first.settle();
      Player.Move two = second.settle();
      first.heard("Ben", two.micros());
      second.heard("Ana", one.micros());
      apart[i] = (one.micros() - two.micros()) / 1e3;
    }

    // (Vc1 + Vc2 + 2 s (Vm1 + Vm2)) / (s (2 - s)) with s = .25 + .25
    assertThat(variance(apart, 0, 1)).isCloseTo(333.333, withinPercentage(5));
  }

  @Test
  void aSlipDisplacesTheBarsItNamesAndNoOthers() {
    Timing exact = new Timing(0, 0, 0, 0, 0, 0);
    Part part = Part.of("Ana", 0, List.of(0, 3, 8, 11, 16, 19));
    Player player = new Player(exact, new Slip(1, 2, 1), part, List.of(), GRID, List.of(), 1);

    List<Long> steps = new ArrayList<>();
    while (player.settleMicros() != null) {
      steps.add(Math.round((player.settle().micros() - 10_000_000) / GRID.stepMicros()));
    }

    assertThat(steps).containsExactly(0L, 3L, 9L, 12L, 16L, 19L);
  }

  @Test
  void theSameSeedPlaysTheSameTake() {
    assertThat(tapEveryBeat(Stage.ofBeats(BARS, 1, 1)))
        .isEqualTo(tapEveryBeat(Stage.ofBeats(BARS, 1, 1)));
  }

  private static double[] tapEveryBeat(Stage stage) {
    List<Click> clicks = new ClickPlan(List.of(stage)).clicks(GRID);
    Player player =
        new Player(VC_100_VM_25, Slip.NONE, everyBeat("Ana"), List.of(), GRID, clicks, 11);
    double[] asynchronies = new double[BARS * 4];
    for (int i = 0; i < asynchronies.length; i++) {
      Player.Move move = player.settle();
      asynchronies[i] = (move.micros() - GRID.microsAt(move.writtenStep())) / 1e3;
    }
    return asynchronies;
  }

  private static Part everyBeat(String name) {
    return Part.of(name, 0, IntStream.range(0, BARS * 4).map(beat -> beat * 2).boxed().toList());
  }

  private static double variance(double[] values, int from, int every) {
    double sum = 0;
    double squares = 0;
    int n = 0;
    for (int i = from + every * 50; i < values.length; i += every) {
      sum += values[i];
      squares += values[i] * values[i];
      n++;
    }
    return squares / n - (sum / n) * (sum / n);
  }
}
