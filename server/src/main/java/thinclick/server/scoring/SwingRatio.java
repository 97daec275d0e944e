package thinclick.server.scoring;

import java.util.List;

/**
 * Measures how long to short a player or a band plays pairs of steps, from the distance of odd
 * steps to the same player's even ones.
 */
final class SwingRatio {
  /** Fewer attacks of either kind say nothing. */
  static final int LEAST = 8;

  private SwingRatio() {}

  /** True where a beat of so many steps falls into pairs. */
  static boolean exists(int stepsPerBeat) {
    return stepsPerBeat == 2 || stepsPerBeat == 4;
  }

  /**
   * The share of a pair at which its second step lies, with the variance of that share.
   *
   * @param place where the odd step sounds, as a share of the pair, 0.5 for straight
   */
  record Place(double place, double variance) {
    double ratio() {
      return place / (1 - place);
    }

    /** Standard error of the ratio: d(phi / (1 - phi)) = (1 + ratio)^2 d phi. */
    double ratioError() {
      return (1 + ratio()) * (1 + ratio()) * Math.sqrt(variance);
    }
  }

  /** Weighs several measurements by their certainty. */
  static Place together(List<Place> places) {
    double sum = 0;
    double weights = 0;
    for (Place one : places) {
      sum += one.place() / one.variance();
      weights += 1 / one.variance();
    }
    return new Place(sum / weights, 1 / weights);
  }

  /**
   * From means of distances to the laid grid.
   *
   * @param laidRatio the ratio already laid into the grid
   * @param oddMinusEven mean distance of odd steps less that of even ones, ms
   * @param standardError of that difference, ms
   */
  static Place place(
      double laidRatio, double oddMinusEven, double standardError, double stepMillis) {
    double laid = laidRatio / (1 + laidRatio);
    double pair = 2 * stepMillis;
    double place = laid + oddMinusEven / pair;
    double error = Math.max(standardError, 0.05) / pair;
    return new Place(Math.max(0.05, Math.min(0.95, place)), error * error);
  }
}
