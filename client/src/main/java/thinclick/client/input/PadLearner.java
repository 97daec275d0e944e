package thinclick.client.input;

import org.jspecify.annotations.Nullable;

/**
 * Learns a pad from a few soft strokes: its channel, where all came on one, and how soft a stroke
 * still counts. Half of the softest is left for softer ones; trembling of neighbours lies below.
 */
final class PadLearner {
  /** So many strokes are needed. */
  static final int STROKES = 4;

  private static final int NOTE_ON = 0x90;
  private static final int SOFTEST = 2;

  private int strokes;
  private int channel = -2;
  private int softest = 127;

  /** A message; the filter once enough was heard, else null. */
  @Nullable NoteFilter heard(int status, int velocity) {
    if ((status & 0xF0) != NOTE_ON || velocity == 0) {
      return null;
    }
    int now = status & 0x0F;
    channel = strokes == 0 || channel == now ? now : -1;
    softest = Math.min(softest, velocity);
    strokes++;
    return strokes < STROKES ? null : new NoteFilter(Math.max(SOFTEST, softest / 2), channel);
  }
}
