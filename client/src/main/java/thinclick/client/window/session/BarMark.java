package thinclick.client.window.session;

/**
 * How one written attack of a bar that is over was answered, or one attack that nobody wrote.
 *
 * @param kind the judgement
 * @param step the written step from bar 1; for an added attack the step it fell in
 * @param offMillis from the written place to the attack, negative early; for an added attack from
 *     the start of its step; 0 where nothing was played
 * @param offSteps the same distance in steps of the grid, for drawing
 */
public record BarMark(Kind kind, int step, double offMillis, double offSteps) {
  /** The judgements, each with a shape of its own. */
  public enum Kind {
    /** On its place: a plain tick. */
    PLACED,
    /** Before it: a tick with a foot to the left. */
    EARLY,
    /** After it: a tick with a foot to the right. */
    LATE,
    /** Written, not played: an open caret. */
    DROPPED,
    /** Played, not written: a hanging dash. */
    ADDED
  }

  /** The same without a word on how early or late it was. */
  public BarMark plain() {
    return kind == Kind.EARLY || kind == Kind.LATE
        ? new BarMark(Kind.PLACED, step, offMillis, offSteps)
        : this;
  }
}
