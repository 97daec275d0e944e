package thinclick.server.words;

/** What a finding is about, in the order in which it matters to the next try. */
public enum Matter {
  /** How much was held, stage by stage: said first. */
  VERDICT,
  /**
   * Somebody played somewhere else than written: nothing else can be judged before it is mended.
   */
  PLACE,
  /** An entry or an ending was lost. */
  EDGES,
  /** The band's tempo, and where it stood when a click came back. */
  TIME,
  /** Dropped and added notes. */
  NOTES,
  /** Early or late, asked for or not. */
  LEAN,
  /** How even it was. */
  SPREAD,
  /** Who follows whom. */
  FOLLOWING,
  /** What a thinner click would do. */
  AHEAD,
  /** What went well. */
  GOOD,
  /** What is not counted, or could not be known. */
  CAVEAT
}
