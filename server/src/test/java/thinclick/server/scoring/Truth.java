package thinclick.server.scoring;

import java.util.List;
import java.util.Set;
import thinclick.protocol.file.Take;

/**
 * A simulated take with what really happened in it.
 *
 * @param take the take as the server would have recorded it
 * @param players one a part
 * @param pulseMillis the true pulse at each step, ms from step 0
 * @param story what was simulated, for failure messages
 */
record Truth(Take take, List<Player> players, double[] pulseMillis, String story) {

  /**
   * One simulated player.
   *
   * @param displacedBars bars in which written attacks were played off by whole steps
   * @param dropped written attacks that were not played
   * @param leanMillis mean distance from the true pulse of what was played undisplaced
   * @param spreadMillis standard deviation of the same
   * @param placed how many of them lie within the tolerance
   */
  record Player(
      Set<Integer> displacedBars,
      int written,
      int dropped,
      int added,
      double leanMillis,
      double spreadMillis,
      int placed) {}

  /** Least-squares slope of the true pulse against the written grid over a stage, percent. */
  double driftPercent(int fromStep, int toStep, double stepMillis, Sheet sheet) {
    int n = toStep - fromStep;
    double mean = (n - 1) / 2.0;
    double sxy = 0;
    double sxx = 0;
    for (int i = 0; i < n; i++) {
      double off = pulseMillis[fromStep + i] - sheet.nominalMillis(fromStep + i);
      sxy += (i - mean) * off;
      sxx += (i - mean) * (i - mean);
    }
    return 100 * sxy / sxx / stepMillis;
  }
}
