package thinclick.client.input;

import org.jspecify.annotations.Nullable;
import thinclick.client.link.PlayedAttack;

/** The notes of one MIDI input that have been struck and not let go. One thread at a time. */
final class HeldNotes {
  private static final int PITCHES = 128;
  private static final int CHANNELS = 16;

  private final @Nullable PlayedAttack[] held = new PlayedAttack[CHANNELS * PITCHES];

  /** A note of some pitch was struck; the one that sounded on it before is never let go. */
  void struck(int channel, PlayedAttack attack) {
    Integer pitch = attack.pitch();
    if (pitch != null) {
      held[channel * PITCHES + pitch] = attack;
    }
  }

  /** What was struck and is let go now; null where nothing was that counted. */
  @Nullable PlayedAttack released(int channel, int pitch) {
    PlayedAttack was = held[channel * PITCHES + pitch];
    held[channel * PITCHES + pitch] = null;
    return was;
  }
}
