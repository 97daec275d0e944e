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

  /** True where the message is an attack. */
  public boolean attack(int status, int velocity) {
    return (status & 0xF0) == NOTE_ON
        && velocity >= leastVelocity
        && (channel < 0 || (status & 0x0F) == channel);
  }
}
