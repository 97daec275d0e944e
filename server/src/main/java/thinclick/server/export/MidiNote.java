package thinclick.server.export;

/**
 * A note for a MIDI file.
 *
 * @param step its step from bar 1
 * @param length its written length in steps, at least 1
 * @param staccato true where only the first half of it sounds; every other note sounds to its end
 * @param key the concert MIDI note or percussion key, 0 to 127
 * @param velocity 1 to 127
 */
public record MidiNote(int step, int length, boolean staccato, int key, int velocity) {
  /** How hard an unaccented note is struck. */
  public static final int PLAIN = 80;

  /** How hard an accented note is struck. */
  public static final int ACCENTED = 108;

  public MidiNote {
    if (step < 0 || length < 1 || key < 0 || key > 127 || velocity < 1 || velocity > 127) {
      throw new IllegalArgumentException(
          "a MIDI note at step "
              + step
              + " of "
              + length
              + " steps, key "
              + key
              + ", velocity "
              + velocity);
    }
  }
}
