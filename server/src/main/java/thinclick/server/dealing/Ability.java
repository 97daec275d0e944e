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

  /**
   * The level somebody stands at after a take: one above the part's where it was held, one below
   * where it was not, by the same thresholds.
   *
   * @param level of the part that was played, 1 to 10
   * @return 1 to 10
   */
  public static int levelAfter(int level, double holdPercent) {
    int step =
        switch (afterHold(holdPercent)) {
          case EASIER -> -1;
          case AS_WRITTEN -> 0;
          case HARDER -> 1;
        };
    return Math.max(1, Math.min(10, level + step));
  }

  /** What brings a written part nearer to the level that somebody stands at. */
  public static Ability fitting(int level, int written) {
    return level < written ? EASIER : level > written ? HARDER : AS_WRITTEN;
  }
}
