package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.scoring.EnsembleReview;
import thinclick.server.scoring.Interval;

/** Who follows whom. */
final class FollowRules {
  /** A leader is named only where the two gains differ by so much and their intervals part. */
  private static final double LEAST_DIFFERENCE = 0.1;

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
    for (int i = 0; i < gains.size(); i++) {
      for (int j = 0; j < gains.size(); j++) {
        Double there = i == j ? null : gains.get(i).get(j);
        Double back = i == j ? null : gains.get(j).get(i);
        Interval thereInterval = i == j ? null : intervals.get(i).get(j);
        Interval backInterval = i == j ? null : intervals.get(j).get(i);
        if (there != null
            && back != null
            && thereInterval != null
            && backInterval != null
            && there - back >= LEAST_DIFFERENCE
            && thereInterval.partsFrom(backInterval)) {
          findings.add(
              new Finding(
                  "follows",
                  Matter.FOLLOWING,
                  evidence.players.get(i).name(),
                  there - back,
                  Said.of(
                      "follow.takesUp",
                      evidence.players.get(i).name(),
                      evidence.players.get(j).name(),
                      hundredths(there, thereInterval),
                      hundredths(thereInterval.low(), thereInterval),
                      hundredths(thereInterval.high(), thereInterval)),
                  Advice.CHANGE_THE_LEAD));
        }
      }
    }
    return findings;
  }

  private static Quantity hundredths(double gain, Interval interval) {
    return new Quantity(100 * gain, 50 * (interval.high() - interval.low()), 1);
  }
}
