package thinclick.client.input;

import org.jspecify.annotations.Nullable;

/**
 * What belongs to one chair at a computer that serves several.
 *
 * @param keys its letters; null for none
 * @param midi whether MIDI inputs are its own
 * @param channel the only MIDI channel that is, 0-15, or -1 for all
 */
public record ChairReach(@Nullable KeyHalf keys, boolean midi, int channel) {
  /** The only chair at the computer. */
  public static final ChairReach ALL = new ChairReach(KeyHalf.ALL, true, -1);

  /** True where a letter, A to Z, taps for this chair. */
  public boolean hasKey(char letter) {
    return keys != null && keys.has(letter);
  }

  /** True where a note on this channel, 0-15, is this chair's. */
  public boolean hasNote(int on) {
    return midi && (channel < 0 || channel == on);
  }
}
