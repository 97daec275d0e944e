package thinclick.client.sound;

import java.util.Arrays;

/**
 * Cues in, samples out, block by block; every onset on the frame its cue asks for. Pure arithmetic
 * that allocates nothing while it renders, so that the same code serves the sounding thread, a test
 * and a file.
 */
final class ClickRenderer {
  private static final int MOST_AT_ONCE = 8;

  private final Fader fader;
  private final Limiter limiter = new Limiter();
  private final Sound[] sounding = new Sound[MOST_AT_ONCE];
  private final long[] since = new long[MOST_AT_ONCE];
  private int count;
  private int missed;

  ClickRenderer(Fader fader) {
    this.fader = fader;
  }

  /**
   * Fills {@code out} with the frames from {@code firstFrame}.
   *
   * @param firstFrame the frame of {@code out[0]}; each call goes on where the last one ended
   */
  void render(long firstFrame, float[] out, CueReader cues, FrameTimes times) {
    // The limiter looks ahead, which delays; what is to come out at a frame goes in that much
    // earlier.
    long first = firstFrame + Limiter.AHEAD;
    Arrays.fill(out, 0);
    while (!cues.done()) {
      long frame = cues.frame(times);
      long begins = frame - cues.sound().lead();
      if (begins >= first + out.length) {
        break;
      }
      if (begins < first) {
        cues.missed();
        missed++;
      } else {
        begin(cues.sound(), begins);
        cues.placed(frame);
      }
    }
    if (count == 0 && limiter.empty() && fader.steady()) {
      return;
    }
    for (int i = 0; i < count; i++) {
      mix(sounding[i], since[i], first, out);
    }
    dropFinished(first + out.length);
    fader.apply(out);
    limiter.apply(out);
  }

  /**
   * Begins a sound outside the cues.
   *
   * @param frame where it is to come out; from {@link #earliest} on
   */
  void strike(Voice voice, long frame) {
    begin(voice, frame);
  }

  /**
   * The earliest frame at which a sound can still come out whole where {@code next} is rendered.
   */
  static long earliest(long next) {
    return next + Limiter.AHEAD;
  }

  /** How many cues came too late to sound. */
  int missed() {
    return missed;
  }

  /** Forgets what sounds. */
  void silence() {
    count = 0;
  }

  private void begin(Sound sound, long frame) {
    if (count == MOST_AT_ONCE) {
      System.arraycopy(sounding, 1, sounding, 0, count - 1);
      System.arraycopy(since, 1, since, 0, count - 1);
      count--;
    }
    sounding[count] = sound;
    since[count] = frame;
    count++;
  }

  private static void mix(Sound sound, long since, long first, float[] out) {
    int from = (int) Math.max(0, since - first);
    int to = (int) Math.min(out.length, since + sound.frames() - first);
    for (int i = from; i < to; i++) {
      out[i] += sound.sample((int) (first + i - since));
    }
  }

  private void dropFinished(long end) {
    int kept = 0;
    for (int i = 0; i < count; i++) {
      if (since[i] + sounding[i].frames() > end) {
        sounding[kept] = sounding[i];
        since[kept] = since[i];
        kept++;
      }
    }
    count = kept;
  }
}
