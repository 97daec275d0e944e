package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.EnsembleReview;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.model.Coupling;
import thinclick.server.scoring.model.Estimate;

/**
 * Who follows whom, where the timing model can tell who leads. The model judges each two players by
 * themselves, with 95 % confidence; what is read aloud must be surer: 99 % for all pairs of a band
 * together (Bonferroni's correction).
 */
final class FollowRules {
  private static final NormalDistribution NORMAL = new NormalDistribution();

  /** Each side of the model's interval. */
  private static final double MODELS_TAIL = 0.025;

  private static final double ALOUD_TAIL = 0.005;

  private FollowRules() {}

  /** "Piano takes up 40 % (20-60 %) of its gap to the drums." */
  static List<Finding> follows(Evidence evidence) {
    EnsembleReview ensemble = evidence.review().ensemble();
    List<List<@Nullable Double>> gains = ensemble.gains();
    List<List<@Nullable Interval>> intervals = ensemble.gainsInterval();
    if (gains == null || intervals == null) {
      return List.of();
    }
    List<Finding> findings = new ArrayList<>();
    List<Coupling.Pair> pairs = coupling(gains, intervals).pairs();
    for (Coupling.Pair pair : pairs) {
      Integer leader = pair.leader();
      if (leader != null && clearAmong(pairs.size(), pair.difference())) {
        int follower = leader == pair.first() ? pair.second() : pair.first();
        Double gain = gains.get(follower).get(leader);
        Interval interval = intervals.get(follower).get(leader);
        Double difference = pair.difference().value();
        if (gain != null && interval != null && difference != null) {
          findings.add(
              new Finding(
                  "follows",
                  Matter.FOLLOWING,
                  evidence.players.get(follower).name(),
                  Math.abs(difference),
                  Said.of(
                      "follow.takesUp",
                      evidence.players.get(follower).name(),
                      evidence.players.get(leader).name(),
                      hundredths(gain, interval),
                      hundredths(interval.low(), interval),
                      hundredths(interval.high(), interval)),
                  Advice.CHANGE_THE_LEAD));
        }
      }
    }
    return findings;
  }

  private static boolean clearAmong(int pairs, Estimate difference) {
    Double value = difference.value();
    thinclick.server.scoring.model.Interval interval = difference.interval();
    if (value == null || interval == null) {
      return false;
    }
    double wider =
        NORMAL.inverseCumulativeProbability(1 - ALOUD_TAIL / pairs)
            / NORMAL.inverseCumulativeProbability(1 - MODELS_TAIL);
    double towardsZero = value > 0 ? value - interval.low() : interval.high() - value;
    return Math.abs(value) > wider * towardsZero;
  }

  /** The review's gains as the model takes them, so that one rule decides who leads. */
  private static Coupling coupling(
      List<List<@Nullable Double>> gains, List<List<@Nullable Interval>> intervals) {
    List<List<@Nullable Estimate>> rows = new ArrayList<>();
    for (int i = 0; i < gains.size(); i++) {
      List<@Nullable Estimate> row = new ArrayList<>();
      for (int j = 0; j < gains.size(); j++) {
        row.add(i == j ? null : estimate(gains.get(i).get(j), intervals.get(i).get(j)));
      }
      rows.add(row);
    }
    return Coupling.of(rows);
  }

  private static Estimate estimate(@Nullable Double gain, @Nullable Interval interval) {
    return gain == null || interval == null
        ? Estimate.unknown(Estimate.Cause.TOO_UNSURE, "the review does not know it")
        : Estimate.of(
            gain, new thinclick.server.scoring.model.Interval(interval.low(), interval.high()));
  }

  private static Quantity hundredths(double gain, Interval interval) {
    return new Quantity(100 * gain, 100 * Quantity.halfWidth(interval), 1);
  }
}
