package thinclick.client.clock;

/** The lines that the estimator is held against. */
enum LineProfile {
  /** 2 ms each way, hardly any scatter. */
  CLEAN(SimulatedLine.Way.normal(2, 0.05), SimulatedLine.Way.normal(2, 0.05)),
  /** 20 ms each way, scattered evenly by 5 ms. */
  JITTER(SimulatedLine.Way.normal(20, 5), SimulatedLine.Way.normal(20, 5)),
  /** 10 ms there, 30 ms back: an error of 10 ms that no estimator can see. */
  ASYMMETRIC(SimulatedLine.Way.normal(10, 0.5), SimulatedLine.Way.normal(30, 0.5)),
  /** A floor of 5 ms and queues of 20 ms on the average. */
  EXPONENTIAL(SimulatedLine.Way.exponential(5, 20), SimulatedLine.Way.exponential(5, 20)),
  /** A floor of 5 ms and a heavy tail: half above 20 ms, one in twenty above 100 ms. */
  HEAVY_TAIL(SimulatedLine.Way.logNormal(5, 20, 1), SimulatedLine.Way.logNormal(5, 20, 1));

  private final SimulatedLine.Way forward;
  private final SimulatedLine.Way backward;

  LineProfile(SimulatedLine.Way forward, SimulatedLine.Way backward) {
    this.forward = forward;
    this.backward = backward;
  }

  SimulatedLine line(long seed) {
    return new SimulatedLine(seed, forward, backward);
  }
}
