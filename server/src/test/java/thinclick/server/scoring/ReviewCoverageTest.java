package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import thinclick.protocol.music.Stage;

/**
 * The review's 95 % intervals, from simulated attacks through decoding to the figure, hold the
 * truth at least 85 times of a hundred; {@link ReviewCoverage#main} makes the full counts.
 */
class ReviewCoverageTest {
  private static final double LEAST = .85;
  private static final Stage SILENT = Stage.ofBeats(64, 1);

  @Test
  void aSoloUnderAThinningClickIsCovered() {
    holds(
        ReviewCoverage.of(ReviewCoverage.solo(), 40),
        "lean",
        "spread",
        "hold",
        "timekeeper",
        "motor",
        "clickGain",
        "contrast");
  }

  @Test
  void fourUnderAThinningClickAreCovered() {
    holds(
        ReviewCoverage.of(ReviewCoverage.band(4, .4, .1, .05), 25),
        "lean",
        "spread",
        "hold",
        "drift",
        "gains",
        "offClick",
        "contrast");
  }

  @Test
  void aReturnFromSilenceIsCovered() {
    Stage full = Stage.ofBeats(8, 1, 1, 2, 3, 4);
    Stage quiet = Stage.ofBeats(4, 1);
    holds(
        ReviewCoverage.of(ReviewCoverage.band(4, .4, .1, 0, full, quiet, full, quiet, full), 25),
        "return",
        "drift",
        "lean");
  }

  @Test
  void ofPlayersWhoDoNotFollowInSilenceGainsAreCoveredAndNothingClaimsTheirPulse() {
    ReviewCoverage found = ReviewCoverage.of(ReviewCoverage.band(2, .4, 0, 0, SILENT), 50);
    holds(found, "gains");
    for (String figure : new String[] {"drift", "lean", "spread", "hold"}) {
      assertThat(found.of(figure)).as("no interval of %s:%s", figure, found).isNaN();
    }
    assertThat(found.of("leaderNamed")).as("%s", found).isLessThanOrEqualTo(.08);
  }

  @Test
  void aForecastHoldsWhatIsThenPlayed() {
    holds(ReviewCoverage.foretold(40, 2), "forecast");
  }

  @Test
  @Tag("long")
  void allOfItHoldsInTwoHundredRuns() {
    holds(
        ReviewCoverage.of(ReviewCoverage.solo(), 200),
        "lean",
        "spread",
        "hold",
        "timekeeper",
        "motor",
        "clickGain",
        "contrast");
    holds(
        ReviewCoverage.of(ReviewCoverage.band(4, .4, .1, .05), 200),
        "lean",
        "spread",
        "hold",
        "drift",
        "gains",
        "offClick",
        "contrast");
    holds(
        ReviewCoverage.of(ReviewCoverage.band(2, .4, .15, 0, SILENT), 200),
        "lean",
        "spread",
        "hold",
        "drift",
        "gains",
        "contrast");
    holds(ReviewCoverage.of(ReviewCoverage.band(3, .4, 0, 0, SILENT), 200), "gains");
    for (int every : new int[] {1, 2, 4}) {
      holds(ReviewCoverage.foretold(200, every), "forecast");
    }
  }

  private static void holds(ReviewCoverage found, String... figures) {
    for (String figure : figures) {
      assertThat(found.of(figure))
          .as("%s of seeds from 0:%s", figure, found)
          .isGreaterThanOrEqualTo(LEAST);
    }
  }
}
