package thinclick.server.scoring.model;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * The model written out in full, as a referee: every attack as a sum of independent noises, from
 * that the whole covariance matrix, from that the textbook formulas. Cubic, and shares no line with
 * the filter.
 */
final class DenseModel {
  /** Covariance of the attacks over Vc + Vm. */
  final RealMatrix covariance;

  /** Positional means, then the tendency. */
  final RealMatrix design;

  /** Attacks less what heard attacks make of them. */
  final RealMatrix data;

  private final double beatMillis;

  DenseModel(Track track, double[] theta, double startVariance) {
    beatMillis = track.beatMillis;
    int events = track.events();
    double phi = theta[theta.length - 1];
    double motor = Math.sin(phi) * Math.sin(phi);
    double timekeeper = Math.cos(phi) * Math.cos(phi);
    int sources = 1 + 2 * events;
    double[] sourceVariance = new double[sources];
    sourceVariance[0] = startVariance;
    double[] x = new double[sources];
    x[0] = 1;
    double line = 0;
    double known = 0;
    int n = track.observed;
    double[][] attacks = new double[n][sources];
    design = new Array2DRowRealMatrix(n, track.positions + 1);
    data = new Array2DRowRealMatrix(n, 1);
    int attack = 0;
    for (int k = 0; k < events; k++) {
      sourceVariance[1 + k] = motor;
      sourceVariance[1 + events + k] = timekeeper * track.gapBeats[k];
      double[] r = x.clone();
      if (track.position[k] >= 0) {
        r[1 + k] += 1;
        attacks[attack] = r.clone();
        design.setEntry(attack, track.position[k], 1);
        design.setEntry(attack, track.positions, line);
        data.setEntry(attack, 0, track.ownMillis[k] - known);
        attack++;
      }
      double rKnown = known;
      double rLine = line;
      if (track.click[k]) {
        double g = theta[track.clickGain];
        for (int s = 0; s < sources; s++) {
          x[s] -= g * r[s];
        }
        known -= g * rKnown;
        line -= g * rLine;
      }
      for (int h = track.heardFrom[k]; h < track.heardFrom[k + 1]; h++) {
        double g = theta[track.heardGain[h]];
        for (int s = 0; s < sources; s++) {
          x[s] -= g * r[s];
        }
        known -= g * (rKnown - track.heardMillis[h]);
        line -= g * rLine;
      }
      x[1 + events + k] += 1;
      line += track.gapBeats[k];
    }
    covariance = new Array2DRowRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double sum = 0;
        for (int s = 0; s < sources; s++) {
          sum += attacks[i][s] * attacks[j][s] * sourceVariance[s];
        }
        covariance.setEntry(i, j, sum);
      }
    }
  }

  /** -2 log of the restricted likelihood, the tendency a normal prior's, at a given scale. */
  double restricted(double scale) {
    int n = data.getRowDimension();
    int means = design.getColumnDimension() - 1;
    double sd = Likelihood.TENDENCY_SHARE * beatMillis;
    RealMatrix line = design.getColumnMatrix(means);
    RealMatrix whole =
        covariance
            .scalarMultiply(scale)
            .add(line.multiply(line.transpose()).scalarMultiply(sd * sd));
    return restricted(whole, design.getSubMatrix(0, n - 1, 0, means - 1));
  }

  /** -2 log of the plain likelihood with free means at its best scale. */
  double plain() {
    int n = data.getRowDimension();
    RealMatrix x = design.getSubMatrix(0, n - 1, 0, design.getColumnDimension() - 2);
    LUDecomposition lu = new LUDecomposition(covariance);
    RealMatrix inverse = lu.getSolver().getInverse();
    RealMatrix rest = rest(inverse, x);
    double squares = rest.transpose().multiply(inverse).multiply(rest).getEntry(0, 0);
    return n * Math.log(squares / n) + n + Math.log(lu.getDeterminant());
  }

  private double restricted(RealMatrix whole, RealMatrix x) {
    LUDecomposition lu = new LUDecomposition(whole);
    RealMatrix inverse = lu.getSolver().getInverse();
    RealMatrix information = x.transpose().multiply(inverse).multiply(x);
    RealMatrix rest = rest(inverse, x);
    return Math.log(lu.getDeterminant())
        + Math.log(new LUDecomposition(information).getDeterminant())
        + rest.transpose().multiply(inverse).multiply(rest).getEntry(0, 0);
  }

  private RealMatrix rest(RealMatrix inverse, RealMatrix x) {
    return data.subtract(x.multiply(means(inverse, x)));
  }

  private RealMatrix means(RealMatrix inverse, RealMatrix x) {
    RealMatrix information = x.transpose().multiply(inverse).multiply(x);
    return new LUDecomposition(information)
        .getSolver()
        .solve(x.transpose().multiply(inverse).multiply(data));
  }

  /** Expected variance (n - 1) about the mean and its degrees of freedom, from the matrix. */
  double[] spread() {
    int n = data.getRowDimension();
    RealMatrix centring = new Array2DRowRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        centring.setEntry(i, j, (i == j ? 1 : 0) - 1.0 / n);
      }
    }
    RealMatrix centred = centring.multiply(covariance);
    double trace = centred.getTrace();
    return new double[] {trace / (n - 1), trace * trace / centred.multiply(centred).getTrace()};
  }
}
