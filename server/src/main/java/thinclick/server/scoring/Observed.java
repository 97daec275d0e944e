package thinclick.server.scoring;

/**
 * What one chair tells of the pulse: where it attacked, against where the grid has those steps.
 *
 * @param at the sounding steps, ascending
 * @param offMillis attack minus place, ms
 * @param doubt variance of each against the others, at least 1; large where the match is doubtful
 */
@SuppressWarnings("ArrayRecordComponent") // columns of numbers, never compared or changed
record Observed(int[] at, double[] offMillis, double[] doubt) {
  static final Observed NONE = new Observed(new int[0], new double[0], new double[0]);

  int size() {
    return at.length;
  }
}
