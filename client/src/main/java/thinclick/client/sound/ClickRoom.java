package thinclick.client.sound;

import java.util.Arrays;

/**
 * What the click leaves to a word that sounds with it: nothing at its peak, all of it some
 * thirtieth of a second later.
 */
final class ClickRoom {
  /** How gently it gives way: as long before the click's peak and after it, frames. */
  private static final int AROUND = 2 * Voice.RATE / 1_000;

  /** From so many frames before the click on: the gain at which nothing is too loud. */
  private static final double[] GAIN = gain();

  private ClickRoom() {}

  /** A word at a gain at which both together peak no higher than the click alone. */
  static float[] givingWay(float[] word, int instant) {
    float[] given = word.clone();
    for (int i = 0; i < GAIN.length; i++) {
      int frame = instant - 2 * AROUND + i;
      if (frame >= 0 && frame < given.length) {
        given[frame] *= (float) GAIN[i];
      }
    }
    return given;
  }

  private static double[] gain() {
    int frames = Math.max(Voice.ONE.frames(), Voice.BEAT.frames());
    double[] most = new double[frames + 4 * AROUND];
    Arrays.fill(most, 1);
    for (int i = 0; i < frames; i++) {
      double click = Math.max(Math.abs(at(Voice.ONE, i)), Math.abs(at(Voice.BEAT, i)));
      most[i + 2 * AROUND] = Math.min(1, (1 - click) / SpokenNumber.LOUDEST);
    }
    // The least of what is near, then the mean of what is near: no mean is above what it stands
    // for.
    double[] least = new double[most.length];
    for (int i = 0; i < most.length; i++) {
      least[i] = Arrays.stream(most, from(i), to(i, most)).min().orElse(1);
    }
    double[] gain = new double[most.length];
    for (int i = 0; i < most.length; i++) {
      gain[i] = Arrays.stream(least, from(i), to(i, most)).average().orElse(1);
    }
    return gain;
  }

  private static int from(int frame) {
    return Math.max(0, frame - AROUND);
  }

  private static int to(int frame, double[] of) {
    return Math.min(of.length, frame + AROUND + 1);
  }

  private static double at(Voice voice, int frame) {
    return frame < voice.frames() ? voice.sample(frame) : 0;
  }
}
