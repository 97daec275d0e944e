package thinclick.server.scoring.model;

/**
 * The points of a sweep over phi at which the likelihood is asked: at each the gains at their best
 * by Newton's steps, and their variance there.
 */
final class SweepNodes {
  /** How far the sweep goes to either side of the best phi, and the step, in its SDs. */
  private static final double REACH = 3.4;

  private static final double SPACING = 0.9;

  /** Cells between nodes, at least and at most. */
  private static final int LEAST_CELLS = 4;

  private static final int MOST_CELLS = 12;

  /** An end is far enough where f has risen by this much. */
  private static final double FALLEN = 7;

  /** Below this SD of phi the curvature in the gains changes little from node to node. */
  private static final double SHARP = 0.25;

  private static final double CURVATURE_STEP = 1e-3;
  private static final int MOST_STEPS = 3;

  /** No gain is less certain than this SD: beyond it the curvature says nothing. */
  private static final double MOST_VARIANCE = 1;

  final Likelihood likelihood;
  final int gains;
  final double[] phi;
  final double[] f;
  final double[] scale;
  final double[][] best;
  final double[][] variance;
  private final double[] at;
  private final double[] gradient;
  private final double[] moved;
  private final double[] movedGradient;
  private double[][] inverse;
  private boolean first = true;

  /** Nodes that reach to where the likelihood has fallen away, or to an end of phi. */
  static SweepNodes around(Fit fit) {
    double sd = fit.standardError(fit.theta.length - 1);
    double low = fit.phi() - REACH * sd;
    double high = fit.phi() + REACH * sd;
    while (true) {
      SweepNodes nodes = new SweepNodes(fit, Math.max(0, low), Math.min(Math.PI / 2, high), sd);
      int last = nodes.f.length - 1;
      // The curvature at the best promised an end here; where it deceived, look further.
      boolean lower = low > 0 && nodes.f[0] - fit.least < FALLEN;
      boolean higher = high < Math.PI / 2 && nodes.f[last] - fit.least < FALLEN;
      if (!lower && !higher) {
        return nodes;
      }
      low -= lower ? fit.phi() - low : 0;
      high += higher ? high - fit.phi() : 0;
    }
  }

  private SweepNodes(Fit fit, double low, double high, double sd) {
    likelihood = fit.likelihood;
    gains = fit.theta.length - 1;
    // With several gains their curvature is not taken at every node.
    int stride = gains < 2 ? 1 : sd < SHARP ? 4 : 2;
    int cells = (int) Math.ceil((high - low) / (SPACING * sd));
    cells = Math.max(LEAST_CELLS, Math.min(MOST_CELLS, cells));
    cells += (stride - cells % stride) % stride;
    int count = cells + 1;
    phi = new double[count];
    f = new double[count];
    scale = new double[count];
    best = new double[count][gains];
    variance = new double[count][gains];
    at = new double[gains + 1];
    gradient = new double[gains + 1];
    moved = new double[gains + 1];
    movedGradient = new double[gains + 1];
    inverse = new double[gains][gains];
    int middle = (int) Math.round((fit.phi() - low) / (high - low) * (count - 1));
    middle -= middle % stride;
    for (int node = 0; node < count; node++) {
      phi[node] = low + (high - low) * node / (count - 1);
    }
    System.arraycopy(fit.theta, 0, at, 0, gains);
    for (int node = middle; node < count; node++) {
      visit(node, node % stride == 0, node - 1, node - 2);
    }
    if (middle > 0) {
      // The curvature of the middle serves again until the next of its kind.
      curve(middle);
      for (int node = middle - 1; node >= 0; node--) {
        visit(node, node % stride == 0, node + 1, node + 2);
      }
    }
    for (int node = 0; node < count; node++) {
      int low3 = node - node % stride;
      int high3 = Math.min(low3 + stride, count - 1);
      double share = high3 == low3 ? 0 : (double) (node - low3) / (high3 - low3);
      for (int c = 0; c < gains; c++) {
        double left = variance[low3][c];
        variance[node][c] = left + share * (variance[high3][c] - left);
      }
    }
  }

  /** Newton's steps in the gains at one value of phi, from where the two nodes before point. */
  private void visit(int node, boolean curved, int near, int far) {
    if (scaleKnown(far)) {
      for (int c = 0; c < gains; c++) {
        at[c] = clamp(2 * best[near][c] - best[far][c]);
      }
    } else if (scaleKnown(near)) {
      System.arraycopy(best[near], 0, at, 0, gains);
    }
    at[gains] = phi[node];
    for (int i = 0; i < MOST_STEPS; i++) {
      double raw = likelihood.at(at, gradient);
      scale[node] = likelihood.scale();
      if (i == 0 && curved) {
        invertCurvature();
        for (int c = 0; c < gains; c++) {
          variance[node][c] = Math.min(MOST_VARIANCE, 2 * inverse[c][c]);
        }
      }
      double drop = 0;
      for (int c = 0; c < gains; c++) {
        double step = 0;
        for (int d = 0; d < gains; d++) {
          step -= inverse[c][d] * gradient[d];
        }
        drop -= 0.5 * step * gradient[c];
        moved[c] = clamp(at[c] + Math.max(-0.3, Math.min(0.3, step)));
      }
      System.arraycopy(moved, 0, at, 0, gains);
      f[node] = raw - Math.min(drop, 0.5);
      if (drop < 0.05) {
        break;
      }
    }
    System.arraycopy(at, 0, best[node], 0, gains);
  }

  private boolean scaleKnown(int node) {
    return node >= 0 && node < scale.length && scale[node] > 0;
  }

  private void curve(int node) {
    System.arraycopy(best[node], 0, at, 0, gains);
    at[gains] = phi[node];
    likelihood.at(at, gradient);
    invertCurvature();
  }

  /** Inverse curvature of f in the gains from differences of the gradient. */
  private void invertCurvature() {
    System.arraycopy(at, 0, moved, 0, gains + 1);
    double[][] curvature = new double[gains][gains];
    for (int c = 0; c < gains; c++) {
      moved[c] = at[c] + CURVATURE_STEP;
      likelihood.at(moved, movedGradient);
      moved[c] = at[c];
      for (int d = 0; d < gains; d++) {
        double second = (movedGradient[d] - gradient[d]) / CURVATURE_STEP;
        curvature[c][d] += 0.5 * second;
        curvature[d][c] += 0.5 * second;
      }
    }
    // Off the ridge the curvature may be none: then what was known beside it serves on.
    if (first || Symmetric.pivotsReach(curvature, 2 / MOST_VARIANCE)) {
      inverse = Symmetric.inverse(curvature, 2 / MOST_VARIANCE);
      first = false;
    }
  }

  /** A gain within what is looked at. */
  static double clamp(double gain) {
    return Math.max(Search.LEAST_GAIN, Math.min(Search.MOST_GAIN, gain));
  }
}
