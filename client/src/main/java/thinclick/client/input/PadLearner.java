package thinclick.client.input;

import org.jspecify.annotations.Nullable;

/**
 * Learns a pad from a few soft strokes: its channel, where all came on one, and how soft a stroke
 * still counts. Half of the softest is left for softer ones; trembling of neighbours lies below.
 * Strokes on another input begin anew: what is learned is one pad's.
 */
final class PadLearner {
  /** So many strokes are needed. */
  static final int STROKES = 4;

  private static final int NOTE_ON = 0x90;
  private static final int SOFTEST = 2;

  private @Nullable String input;
  private int strokes;
  private int channel;
  private int softest = 127;

  /** A message of an input; the filter once enough was heard of that one, else null. */
  @Nullable NoteFilter heard(String from, int status, int velocity) {
    if ((status & 0xF0) != NOTE_ON || velocity == 0) {
      return null;
    }
    if (!from.equals(input)) {
      input = from;
      strokes = 0;
      softest = 127;
    }
    int now = status & 0x0F;
    channel = strokes == 0 || channel == now ? now : -1;
    softest = Math.min(softest, velocity);
    strokes++;
    return strokes < STROKES ? null : new NoteFilter(Math.max(SOFTEST, softest / 2), channel);
  }
}
