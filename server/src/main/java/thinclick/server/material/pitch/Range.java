package thinclick.server.material.pitch;

/**
 * A range of sounding notes.
 *
 * @param low lowest MIDI note
 * @param high highest MIDI note
 */
public record Range(int low, int high) {
  public Range {
    if (low < 0 || high > 127 || low > high) {
      throw new IllegalArgumentException("no range from " + low + " to " + high);
    }
  }

  /** True where the note can be played. */
  public boolean contains(int midi) {
    return midi >= low && midi <= high;
  }

  /** Semitones from the lowest to the highest note. */
  public int width() {
    return high - low;
  }
}
