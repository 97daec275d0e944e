package thinclick.client.clock;

/**
 * An offset, room time minus this computer's time, as some exchanges show it; microseconds.
 *
 * @param offsetMicros the estimate, inside the certain interval
 * @param lowMicros the offset is certainly not below this, if no clock jumped
 * @param highMicros nor above this
 * @param spreadMicros standard error, as leaving out a tenth of the exchanges at a time shows it;
 *     half the interval's width where there are too few
 */
record OffsetEstimate(
    double offsetMicros, double lowMicros, double highMicros, double spreadMicros) {

  /** Half the width of the certain interval. */
  double halfWidthMicros() {
    return (highMicros - lowMicros) / 2;
  }

  /** The largest error that is possible: to the farther end of the interval. */
  double worstMicros() {
    return halfWidthMicros() + Math.abs(offsetMicros - (lowMicros + highMicros) / 2);
  }
}
