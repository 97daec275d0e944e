package thinclick.client.sound;

/**
 * Judges an output by its position, read by read: whether it has begun to play, whether it ran dry,
 * whether it is gone. Follows its clock meanwhile. Knows no device and allocates nothing.
 */
final class OutputWatch {
  /** A device whose position stands still for so long is gone. */
  static final long STILL_NANOS = 500_000_000L;

  private static final double BEHIND_FRAMES = -0.005 * Voice.RATE;
  private static final int BEHIND_TIMES = 3;

  /** A position moves by no more at once; further, and frames were taken, not played. */
  private static final int MOST_LUMP = 1_920;

  /** The position has advanced so often before it is believed. */
  private static final int STARTING_READS = 2;

  /** What a read comes to. */
  enum Finding {
    /** Not to be believed yet: only silence is written. */
    STARTING,
    /** It plays; whether it ran dry is another question. */
    RUNNING,
    /** It stood still for too long: it is gone. */
    STILL
  }

  private final DeviceClock device;
  private long playedFrames;
  private long movedNanos;
  private long readNanos;
  private int behind;
  private int advances;

  /**
   * @param device the output's clock, which is told of every read that is believed
   */
  OutputWatch(DeviceClock device) {
    this.device = device;
  }

  /** An output has just been opened. */
  void opened(long nanos) {
    playedFrames = 0;
    movedNanos = nanos;
    advances = 0;
    behind = 0;
    device.restartPhase();
  }

  /**
   * The position was read.
   *
   * @param before when it was asked for
   * @param played frames since the output was opened
   * @param after when it was answered
   */
  Finding read(long before, long played, long after) {
    if (advances < STARTING_READS) {
      return starts(played, after);
    }
    boolean used = device.read(before, played, after);
    // The position moved at some time since it was last read: what this thread was late by, it was.
    double unseenFrames = (before - readNanos) * (Voice.RATE / 1e9);
    readNanos = after;
    if (played != playedFrames) {
      playedFrames = played;
      movedNanos = after;
    } else if (after - movedNanos > STILL_NANOS) {
      return Finding.STILL;
    }
    boolean late = used && device.residualFrames() + unseenFrames < BEHIND_FRAMES;
    if (late && device.settled()) {
      behind++;
    } else if (used) {
      behind = 0;
    }
    return Finding.RUNNING;
  }

  /**
   * An output that has just been opened. A sound server may take the whole first buffer into one of
   * its own at once, which looks as if it had been played in no time and the output had run dry.
   * Silence is written until the position has advanced twice, no faster than time.
   */
  private Finding starts(long played, long nanos) {
    readNanos = nanos;
    if (played != playedFrames) {
      double most = (nanos - movedNanos) * (Voice.RATE / 1e9) + MOST_LUMP;
      advances = played - playedFrames > most ? 0 : advances + 1;
      playedFrames = played;
      movedNanos = nanos;
    } else if (nanos - movedNanos > STILL_NANOS) {
      return Finding.STILL;
    }
    return Finding.STARTING;
  }

  /**
   * True where an output that runs has nothing left to play.
   *
   * @param writtenFrames frames written since it was opened
   * @param empty true where the whole buffer may be written
   */
  boolean dry(long writtenFrames, boolean empty) {
    boolean started = writtenFrames > 0 && playedFrames > 0;
    return started && (empty || playedFrames > writtenFrames || behind >= BEHIND_TIMES);
  }

  /** After it ran dry its frames are numbered anew from where it stands. */
  void anew(long nanos, long played) {
    device.restartPhase();
    device.read(nanos, played, nanos);
    behind = 0;
  }

  /** When the position last moved. */
  long movedNanos() {
    return movedNanos;
  }

  /** How often in a row it was heard to be behind. */
  int behind() {
    return behind;
  }
}
