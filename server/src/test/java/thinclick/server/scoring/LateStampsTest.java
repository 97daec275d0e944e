package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;

/** Stamps that may have come late make the chair less certain, by how late on the average. */
class LateStampsTest {
  @Test
  void whatTheStampsMayBeLateByIsPartOfTheUncertainty() {
    assertThat(uncertainty(null)).isCloseTo(3, within(1e-9));
    assertThat(uncertainty(0.0)).isCloseTo(3, within(1e-9));
    assertThat(uncertainty(4.0)).isCloseTo(5, within(1e-9));
  }

  private static double uncertainty(Double lateByMillis) {
    List<Integer> steps = IntStream.range(0, 16).boxed().toList();
    Part part = Part.of("Ana", 0, steps).edited().uncertaintyMillis(3).part();
    List<Attack> attacks =
        steps.stream()
            .map(
                step ->
                    new Attack(
                        "Ana",
                        1_000_000 + step * 250_000L,
                        null,
                        null,
                        null,
                        lateByMillis,
                        false,
                        false))
            .toList();
    Take take =
        new Take(
            Take.FORMAT,
            Take.VERSION,
            "Late",
            Meter.FOUR_FOUR,
            120.0,
            2,
            Swing.STRAIGHT,
            1_000_000,
            50.0,
            List.of(Stage.ofBeats(2, 1, 1, 2, 3, 4)),
            List.of(part),
            attacks,
            null,
            List.of());
    return Scorer.analyse(take).review().players().get(0).uncertaintyMillis();
  }
}
