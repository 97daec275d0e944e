package thinclick.server.dealing;

/** How hard a player's part is made, compared with what the drill writes. */
public enum Ability {
  /** The heavier half of the figure. */
  EASIER,
  /** What is written. */
  AS_WRITTEN,
  /** The figure with pickups. */
  HARDER;

  /**
   * What past takes suggest: easier below 75 % of hold, harder from 90 % on. The thresholds are our
   * own choice, those of the ladder.
   *
   * @param holdPercent the share of written attacks that were placed, 0 to 100
   */
  public static Ability afterHold(double holdPercent) {
    return holdPercent < 75 ? EASIER : holdPercent >= 90 ? HARDER : AS_WRITTEN;
  }
}
