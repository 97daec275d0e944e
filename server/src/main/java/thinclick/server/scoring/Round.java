package thinclick.server.scoring;

/** Rounds figures to what is worth writing down; words round further. */
final class Round {
  private Round() {}

  /** Milliseconds to a thousandth. */
  static double millis(double value) {
    return to(value, 1e3);
  }

  /** Percents to a hundredth. */
  static double percent(double value) {
    return to(value, 1e2);
  }

  /** Slopes and ratios to a ten-thousandth. */
  static double fine(double value) {
    return to(value, 1e4);
  }

  private static double to(double value, double grain) {
    double rounded = Math.rint(value * grain) / grain;
    return rounded == 0 ? 0 : rounded; // no negative zero
  }
}
