package thinclick.server.engraving;

/**
 * When a note is written to sound.
 *
 * @param start its step from bar 1
 * @param length its length in steps, at least 1
 */
public record NoteSpan(int start, int length) {
  public NoteSpan {
    if (start < 0 || length < 1) {
      throw new IllegalArgumentException("a note from step " + start + " of " + length + " steps");
    }
  }

  /** The first step after it. */
  public int end() {
    return start + length;
  }
}
