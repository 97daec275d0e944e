package thinclick.server.scoring;

/** Which shift a player who jumps jumps to: likeliest to the next, and home. */
final class Jumps {
  private static final double NEARER = 0.5; // each step further, a jump is half as likely

  private Jumps() {}

  /** How much of a jump from one shift goes to another. */
  static double[][] pulls(int[] shifts) {
    double[][] pull = new double[shifts.length][shifts.length];
    for (int d = 0; d < shifts.length; d++) {
      double total = 0;
      for (int e = 0; e < shifts.length; e++) {
        if (e != d) {
          pull[d][e] =
              Math.pow(NEARER, Math.abs(shifts[e] - shifts[d]) - 1) + (shifts[e] == 0 ? 1 : 0);
          total += pull[d][e];
        }
      }
      for (int e = 0; e < shifts.length; e++) {
        pull[d][e] /= Math.max(total, 1e-300);
      }
    }
    return pull;
  }
}
