package thinclick.server.engraving;

import org.jspecify.annotations.Nullable;

/** How a beat is divided in writing: as the meter does, or by a tuplet. */
enum BeatDivision {
  /** As the meter divides it. */
  PLAIN(0, 0, NoteValue.EIGHTH),
  /** Three eighths in the time of two. */
  TRIPLET(3, 2, NoteValue.EIGHTH),
  /** Six sixteenths in the time of four. */
  SEXTUPLET(6, 4, NoteValue.SIXTEENTH),
  /** Three quarters over two beats. */
  QUARTER_TRIPLET(3, 2, NoteValue.QUARTER);

  private final int actual;
  private final int normal;
  private final NoteValue unit;

  BeatDivision(int actual, int normal, NoteValue unit) {
    this.actual = actual;
    this.normal = normal;
    this.unit = unit;
  }

  @Nullable Tuplet tuplet(int start, int length) {
    return this == PLAIN ? null : new Tuplet(start, length, actual, normal, unit);
  }
}
