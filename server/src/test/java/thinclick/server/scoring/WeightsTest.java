package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;

/**
 * Timekeeper chairs count more in the pulse: it is the mean of the players' slow parts by weight,
 * so that who leans is told against those who keep time. Worked by hand: two on the click, one 30
 * ms late.
 */
class WeightsTest {
  private static final long START = 5_000_000;

  private static Review review(double timekeepers, double other) {
    List<Part> parts = new ArrayList<>();
    List<Attack> attacks = new ArrayList<>();
    Random random = new Random(5);
    List<Integer> beats = IntStream.range(0, 16 * 8).filter(step -> step % 2 == 0).boxed().toList();
    for (String name : List.of("Mina", "Jonas", "Ilse")) {
      boolean late = name.equals("Ilse");
      parts.add(Part.of(name, 0, beats).edited().weight(late ? other : timekeepers).part());
      for (int step : beats) {
        double millis = 250.0 * step + (late ? 30 : 0) + 4 * random.nextGaussian();
        attacks.add(Attack.tap(name, START + Math.round(1_000 * millis)));
      }
    }
    return Scorer.review(
        new Take(
            Take.FORMAT,
            Take.VERSION,
            "Weights",
            Meter.FOUR_FOUR,
            120,
            2,
            Swing.STRAIGHT,
            START,
            50.0,
            List.of(Stage.ofBeats(16, 1, 1, 2, 3, 4)),
            parts,
            attacks,
            null,
            List.of()));
  }

  private static double lean(Review review, String player) {
    return review.player(player).leanMillis().get();
  }

  @Test
  void theLeanOfAnAnswerIsToldAgainstThoseWhoKeepTime() {
    Review weighted = review(2, 0.5);

    // The pulse lies (2*0 + 2*0 + .5*30) / 4.5 = 3.33 ms behind the click.
    assertThat(lean(weighted, "Ilse")).isCloseTo(26.67, within(1.5));
    assertThat(lean(weighted, "Mina")).isCloseTo(-3.33, within(1.5));
    assertThat(weighted.ensemble().offClickMillis().get()).isCloseTo(3.33, within(1.5));
  }

  @Test
  void whereNobodyIsATimekeeperAllCountOnce() {
    Review alike = review(1, 1);

    assertThat(lean(alike, "Ilse")).isCloseTo(20, within(1.5));
    assertThat(lean(alike, "Mina")).isCloseTo(-10, within(1.5));
    assertThat(alike.ensemble().offClickMillis().get()).isCloseTo(10, within(1.5));
  }
}
