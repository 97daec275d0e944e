package thinclick.client.sound;

/**
 * Gives each cue its frame, in order and once. The newest belief about the clocks places it, but
 * from one cue to the next the belief may pull by half a millisecond a beat only, so that a
 * correction is never heard as a stumble; what is further out waits for a bar line.
 */
final class CueReader {
  /** The most that a beat is stretched or squeezed, frames. */
  static final double PULL_A_BEAT = 0.000_5 * Voice.RATE;

  /** From here on a bar line takes the whole correction at once, frames. */
  static final double LOST = 0.005 * Voice.RATE;

  private final CueSheet sheet;
  private int next;
  private long lastFrame;
  private long lastMicros;
  private boolean anchored;

  CueReader(CueSheet sheet) {
    this.sheet = sheet;
  }

  /** True where nothing is left. */
  boolean done() {
    return next >= sheet.size();
  }

  /** The frame of the next cue's instant; only where not {@link #done()}. */
  long frame(FrameTimes times) {
    long micros = sheet.micros(next);
    double wanted = times.frameAt(micros);
    if (!anchored) {
      return Math.round(wanted);
    }
    double beats = (micros - lastMicros) / sheet.beatMicros();
    double expected = lastFrame + wanted - times.frameAt(lastMicros);
    double off = wanted - expected;
    if (Math.abs(off) > LOST && sheet.downbeat(next)) {
      return Math.round(wanted);
    }
    double most = PULL_A_BEAT * Math.max(beats, 0);
    return Math.round(expected + Math.max(-most, Math.min(most, off)));
  }

  Sound sound() {
    return sheet.sound(next);
  }

  /** The next cue's instant stands at {@code frame}; goes on to the one after. */
  void placed(long frame) {
    lastFrame = frame;
    lastMicros = sheet.micros(next);
    anchored = true;
    next++;
  }

  /**
   * The next cue cannot sound any more; goes on to the one after. A word that is missed leaves the
   * clicks where they are: it began before them, and what is late for it need not be for them.
   */
  void missed() {
    anchored &= sound().lead() > 0;
    next++;
  }

  /** The output's frames are numbered anew: the next cue stands where the clocks put it. */
  void anchorAnew() {
    anchored = false;
  }

  /** Leaves out what is left of the bar; the sound comes back on a bar line. */
  void skipToBarLine() {
    while (!done() && !sheet.downbeat(next)) {
      next++;
    }
    anchored = false;
  }

  /** Leaves out what lies before a room time. */
  void skipTo(long micros) {
    while (!done() && sheet.micros(next) < micros) {
      next++;
    }
    anchored = false;
  }
}
