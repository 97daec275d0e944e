package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.function.LongFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Takes as people play them, simulated: nobody in them is displaced, whatever the tempo does. */
class HumansTest {
  private static final int SEEDS = 2;

  static Stream<String> kinds() {
    return Humans.all().keySet().stream();
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void nobodyIsDisplacedAndHardlyAnythingInvented(String kind) {
    Scoreboard board = board(kind, SEEDS);
    String found = kind + ": " + board.summary() + "\n" + String.join("\n", board.worst);
    assertThat(board.invented).as(found).isZero();
    assertThat(Scoreboard.quantile(board.dropped, 0.9)).as(found).isLessThan(3);
    assertThat(Scoreboard.quantile(board.added, 0.9)).as(found).isLessThan(3);
  }

  @Test
  void oneTapperThirtyMillisecondsAheadKeepsLeanAndSpread() {
    Scoreboard board = board("tapper 30 ms ahead", 6);
    assertThat(Scoreboard.quantile(board.lean, 1)).isLessThan(3);
    assertThat(Scoreboard.quantile(board.spread, 1)).isLessThan(10);
  }

  @Test
  void aBandThatSlowsByAFifthWithoutAClickHasItsDrift() {
    Scoreboard board = board("band slows by a fifth", 3);
    assertThat(Scoreboard.quantile(board.drift, 1)).as(board.summary()).isLessThan(0.5);
  }

  @Test
  void aKitSplitIntoVoicesHasNoInventedAttacks() {
    Scoreboard board = board("split kit", 3);
    assertThat(Scoreboard.quantile(board.added, 1)).isZero();
    assertThat(Scoreboard.quantile(board.dropped, 1)).isZero();
  }

  private static Scoreboard board(String kind, int seeds) {
    Map<String, LongFunction<Truth>> all = Humans.all();
    Scoreboard board = new Scoreboard();
    for (int seed = 0; seed < seeds; seed++) {
      board.add(all.get(kind).apply(seed));
    }
    return board;
  }
}
