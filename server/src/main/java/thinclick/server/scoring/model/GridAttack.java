package thinclick.server.scoring.model;

/**
 * An attack that answers a written one.
 *
 * @param step the written step, from 0 at bar 1
 * @param millis the attack less the written place (swing and feel applied), ms, positive late; it
 *     may be large where the ensemble has drifted away from the written grid
 */
public record GridAttack(int step, double millis) {
  public GridAttack {
    if (!Double.isFinite(millis)) {
      throw new IllegalArgumentException("expected finite milliseconds, found " + millis);
    }
  }
}
