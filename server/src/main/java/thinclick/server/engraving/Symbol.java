package thinclick.server.engraving;

import org.jspecify.annotations.Nullable;

/**
 * One written note or rest. A note that needs several is tied together of them.
 *
 * @param start its step from bar 1
 * @param length its length in steps
 * @param value its shape
 * @param dots 0 or 1
 * @param note the index of the note it writes; -1 for a rest
 * @param tiedBack true where it continues the symbol before
 * @param tiedOn true where the next symbol continues it
 * @param wholeBar true for the rest of a whole bar, whatever the bar's length
 * @param tuplet the tuplet it stands in, or null
 */
public record Symbol(
    int start,
    int length,
    NoteValue value,
    int dots,
    int note,
    boolean tiedBack,
    boolean tiedOn,
    boolean wholeBar,
    @Nullable Tuplet tuplet) {

  /** True where nothing sounds. */
  public boolean rest() {
    return note < 0;
  }

  /** The first step after it. */
  public int end() {
    return start + length;
  }

  /** True where an attack is written, not the continuation of one. */
  public boolean attack() {
    return !rest() && !tiedBack;
  }
}
