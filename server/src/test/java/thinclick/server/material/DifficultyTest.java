package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Stage;

class DifficultyTest {
  /** Spearman's rho of the formula with the stock's levels, which people chose, is .88 or more. */
  @Test
  void theFormulaAgreesInRankWithTheLevelsOfTheStock() {
    List<Drill> drills =
        Stock.drills().stream().filter(drill -> !drill.title().equals(Demo.TITLE)).toList();
    double[] chosen = drills.stream().mapToDouble(Drill::level).toArray();
    double[] computed = drills.stream().mapToDouble(Difficulty::unrounded).toArray();

    assertThat(new SpearmansCorrelation().correlation(chosen, computed)).isGreaterThan(0.88);
  }

  @Test
  void fasterThinnerAndFinerIsHarder() {
    Drill even = Stock.find("Even eighths");
    Drill thin = even.withStages(List.of(Stage.ofBeats(8, 4, 1)));

    assertThat(Difficulty.unrounded(thin)).isGreaterThan(Difficulty.unrounded(even) + 2);
    assertThat(Difficulty.level(Stock.find("Even eighths"))).isEqualTo(1);
    assertThat(Difficulty.level(Stock.find("Long sevens"))).isGreaterThanOrEqualTo(8);
  }

  @Test
  void levelsStayBetweenOneAndTenEvenWithoutAnyClick() {
    for (Drill drill : Stock.drills()) {
      Drill silent = drill.withStages(List.of(Stage.ofBeats(64, 1)));
      assertThat(Difficulty.level(silent)).as(drill.title()).isBetween(1, 10);
    }
  }
}
