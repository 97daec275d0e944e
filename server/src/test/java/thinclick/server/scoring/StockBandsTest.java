package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Bands at the drills of the stock, with stages as long as its ladders make them: what the review
 * finds against what was simulated, held against every aim. The numbers that the bands are drawn
 * from were written down before the first run and have not been changed since.
 */
class StockBandsTest {
  @Test
  void bandsAtTheStocksDrillsAreFoundAsTheyPlayed() {
    // two takes of these forty hold most of what is missed: their share is larger than in all
    check(0, 40, 0.97);
  }

  @Test
  @Tag("long")
  void threeHundredBandsAreFoundAsTheyPlayed() {
    check(0, 300, 0.985);
  }

  private static void check(int from, int to, double leastF1) {
    Scoreboard board = new Scoreboard();
    for (int seed = from; seed < to; seed++) {
      board.add(StockBands.of(seed));
    }
    String found =
        "seeds " + from + "-" + to + ": " + board.summary() + "\n" + String.join("\n", board.worst);
    assertThat(board.f1()).as(found).isGreaterThanOrEqualTo(leastF1);
    assertThat(Scoreboard.quantile(board.lean, 0.95)).as(found).isLessThanOrEqualTo(2);
    assertThat(Scoreboard.quantile(board.drift, 0.95)).as(found).isLessThanOrEqualTo(0.12);
    assertThat(Scoreboard.quantile(board.hold, 0.95)).as(found).isLessThanOrEqualTo(5);
    assertThat(Scoreboard.quantile(board.dropped, 0.95)).as(found).isLessThanOrEqualTo(1.5);
  }
}
