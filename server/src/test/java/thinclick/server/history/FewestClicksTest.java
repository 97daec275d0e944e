package thinclick.server.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.Speaker;

/** The fewest clicks that were held at a drill and tempo. */
class FewestClicksTest {
  private static final Stage ALL = new Stage(4, 1, List.of(1, 2, 3, 4), null);
  private static final Stage ONE = new Stage(4, 1, List.of(1), null);
  private static final Stage TWO = new Stage(4, 1, List.of(1, 3), null);

  /** A take of beats in which the second stage is played, or left out. */
  private static Entry entry(String day, double tempo, Stage second, boolean held) {
    List<Integer> beats = new ArrayList<>();
    for (int step = 0; step < 64; step += 2) {
      beats.add(step);
    }
    Take bare =
        new Take(
            Take.FORMAT,
            Take.VERSION,
            "Beats",
            Meter.FOUR_FOUR,
            tempo,
            2,
            Swing.STRAIGHT,
            0,
            50.0,
            List.of(ALL, second),
            List.of(Part.of("Mina", 0, beats), Part.of("Jonas", 0, beats)),
            List.of(),
            null,
            List.of());
    List<Attack> attacks = new ArrayList<>();
    for (Part part : bare.parts()) {
      for (int step : part.attackSteps()) {
        if (held || step < 32) {
          attacks.add(Attack.tap(part.player(), Math.round(bare.grid().microsAt(step)) + 1_000));
        }
      }
    }
    Instant when = Instant.parse(day + "T10:00:00Z");
    return new Entry(
        day, when, Entry.Key.of(bare), Scorer.analyse(bare.withAttacks(attacks)).review());
  }

  @Test
  void theThinnestStageThatWasEverHeldIsFoundWithItsFirstDay() {
    List<Entry> entries =
        List.of(
            entry("2026-03-01", 100, TWO, true),
            entry("2026-03-08", 100, ONE, true),
            entry("2026-03-15", 100, ONE, true),
            entry("2026-03-22", 120, new Stage(4, 1, List.of(), null), true),
            entry("2026-03-29", 100, new Stage(4, 2, List.of(1), null), false));
    FewestClicks found = FewestClicks.of(entries, "Beats", 100).orElseThrow();
    assertThat(found.clicksPerBar()).isEqualTo(1.0);
    assertThat(found.begunAt()).isEqualTo(Instant.parse("2026-03-08T10:00:00Z"));
    assertThat(Speaker.english().say(found.click())).isEqualTo("the one of every bar");
    assertThat(found.holdPercent()).isEqualTo(100.0);
  }

  @Test
  void nothingHeldIsNothingFound() {
    assertThat(FewestClicks.of(List.of(), "Beats", 100)).isEmpty();
    assertThat(FewestClicks.of(List.of(entry("2026-03-01", 100, TWO, true)), "Other", 100))
        .isEmpty();
  }
}
