package thinclick.client.clock;

/**
 * How much faster the room's clock runs than this computer's.
 *
 * @param ppm parts in a million, drawn towards 0 as far as it is not known
 * @param errorPpm its standard error
 */
record Skew(double ppm, double errorPpm) {
  /**
   * What two clocks that run freely differ by, standard deviation. Crystals are sold at 20 to 50
   * parts in a million (common practice, no source).
   */
  static final double USUAL_PPM = 40;

  /**
   * How much more evidence than chance a skew needs. Most computers' clocks are disciplined from
   * outside and differ by next to nothing; a skew that is only noise does more harm over a minute
   * than one of 20 parts in a million that is left in.
   */
  private static final double DOUBT = 100;

  /** No two computers' clocks differ by more; what looks like it is a jump, not a skew. */
  static final double MOST_PPM = 500;

  /** Nothing known: none assumed. */
  static final Skew UNKNOWN = new Skew(0, USUAL_PPM);

  /** Known well enough that it may be taken out over a whole minute. */
  boolean settled() {
    return errorPpm <= 10;
  }

  /**
   * What to believe after a measured slope: either both clocks are disciplined and it is 0, or they
   * run freely and it is one of {@link #USUAL_PPM}; each belief counts as it explains the slope.
   *
   * @param errorPpm standard error of the slope, greater than 0
   */
  static Skew believed(double slopePpm, double errorPpm) {
    if (Math.abs(slopePpm) > MOST_PPM) {
      return UNKNOWN;
    }
    double usual = USUAL_PPM * USUAL_PPM;
    double error = errorPpm * errorPpm;
    double share = usual / (usual + error);
    double against =
        Math.sqrt(1 + usual / error) * Math.exp(-0.5 * slopePpm * slopePpm / error * share);
    double free = 1 / (1 + DOUBT * against);
    return new Skew(slopePpm * share * free, errorPpm * Math.sqrt(share));
  }
}
