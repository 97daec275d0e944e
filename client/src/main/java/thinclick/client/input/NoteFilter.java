package thinclick.client.input;

/**
 * Which MIDI messages are attacks: note-ons with some velocity. Note-on with velocity 0 is a
 * note-off; pedal, aftertouch, clock and sensing are none.
 *
 * @param leastVelocity softer ones are taken for a neighbouring pad's trembling, 1-127
 * @param channel the only channel that counts, 0-15, or -1 for all
 */
public record NoteFilter(int leastVelocity, int channel) {
  /** Where nothing was learned. */
  public static final NoteFilter USUAL = new NoteFilter(8, -1);

  private static final int NOTE_ON = 0x90;
  private static final int NOTE_OFF = 0x80;

  /** True where the message lets a note go: a note-off, or a note-on with velocity 0. */
  public static boolean release(int status, int velocity) {
    int kind = status & 0xF0;
    return kind == NOTE_OFF || (kind == NOTE_ON && velocity == 0);
  }

  /** True where the message is an attack. */
  public boolean attack(int status, int velocity) {
    return (status & 0xF0) == NOTE_ON
        && velocity >= leastVelocity
        && (channel < 0 || (status & 0x0F) == channel);
  }
}
