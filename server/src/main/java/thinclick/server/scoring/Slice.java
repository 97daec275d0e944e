package thinclick.server.scoring;

/**
 * Some of a player's counted written attacks: a stretch of them, of all kinds or one.
 *
 * @param from the first, by index
 * @param to the one after the last
 */
record Slice(int from, int to, Kind kind) {
  /** Which places count. */
  enum Kind {
    /** All. */
    ALL,
    /** Those on beats. */
    ONBEAT,
    /** Those off beats. */
    OFFBEAT
  }

  boolean holds(Sheet sheet, int step) {
    return switch (kind) {
      case ALL -> true;
      case ONBEAT -> sheet.grid.onbeat(step);
      case OFFBEAT -> !sheet.grid.onbeat(step);
    };
  }

  Slice only(Kind other) {
    return new Slice(from, to, other);
  }
}
