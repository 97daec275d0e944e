package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.EnsembleReview;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.PairReview;

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
    List<String> names = evidence.players.stream().map(Chairful::name).toList();
    List<Finding> findings = new ArrayList<>();
    for (PairReview pair : ensemble.pairs()) {
      String leader = pair.leader();
      if (leader == null || !clearAmong(ensemble.pairs().size(), pair.difference())) {
        continue;
      }
      String follower = leader.equals(pair.first()) ? pair.second() : pair.first();
      Double gain = gains.get(names.indexOf(follower)).get(names.indexOf(leader));
      Interval interval = intervals.get(names.indexOf(follower)).get(names.indexOf(leader));
      if (gain != null && interval != null) {
        findings.add(
            new Finding(
                "follows",
                Matter.FOLLOWING,
                follower,
                Math.abs(pair.difference().get()),
                Said.of(
                    "follow.takesUp",
                    follower,
                    leader,
                    Quantity.share(gain, interval),
                    Quantity.share(interval.low(), interval),
                    Quantity.share(interval.high(), interval)),
                Advice.CHANGE_THE_LEAD));
      }
    }
    return findings;
  }

  private static boolean clearAmong(int pairs, Figure difference) {
    Interval interval = difference.interval();
    if (!difference.known() || interval == null) {
      return false;
    }
    double value = difference.get();
    double wider =
        NORMAL.inverseCumulativeProbability(1 - ALOUD_TAIL / pairs)
            / NORMAL.inverseCumulativeProbability(1 - MODELS_TAIL);
    double towardsZero = value > 0 ? value - interval.low() : interval.high() - value;
    return Math.abs(value) > wider * towardsZero;
  }
}
