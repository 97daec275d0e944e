package thinclick.client.sound;

import java.util.ArrayList;
import java.util.List;

/** Finds where clicks begin in samples. */
final class Onsets {
  private Onsets() {}

  /**
   * The frames at which a voice begins: its first sample is silent, so the frame before the first
   * that sounds. Clicks are parted by at least 20 ms of silence.
   */
  static List<Long> in(float[] samples) {
    List<Long> onsets = new ArrayList<>();
    int silent = Integer.MAX_VALUE;
    for (int i = 0; i < samples.length; i++) {
      if (samples[i] == 0) {
        silent = silent == Integer.MAX_VALUE ? silent : silent + 1;
      } else {
        if (silent > Voice.RATE / 50) {
          onsets.add(i - 1L);
        }
        silent = 0;
      }
    }
    return onsets;
  }
}
