package thinclick.client.sound;

import java.util.Arrays;

/**
 * Which frame an output plays at which instant of the computer's monotonic clock, learnt from reads
 * of its position.
 *
 * <p>A position moves in lumps and is read a little after it moved, so a read can be behind, hardly
 * ever ahead: the line is laid near the upper edge of the reads. Its rate is the median slope
 * between reads half a window apart (Theil-Sen on disjoint pairs), over up to a minute; its phase
 * is a high quantile of the residuals of the last two seconds at that rate. Allocates nothing after
 * its construction.
 */
final class DeviceClock {
  /** A read whose two time stamps are further apart says too little. */
  static final long WIDEST_BRACKET_NANOS = 500_000;

  /** How long the phase remembers. */
  static final long PHASE_NANOS = 2_000_000_000L;

  private static final long BLOCK_NANOS = 250_000_000L;
  private static final int BLOCKS = 240;
  private static final int READS = 4_096;
  private static final int FEWEST_BLOCKS = 6;

  /** So many of the reads are behind the line. */
  private static final double QUANTILE = 0.85;

  /** Crystals differ by less; a slope beyond is a misreading. */
  private static final double MOST_PPM = 1_000;

  private static final double NOMINAL = Voice.RATE / 1e9;

  private final long[] readNanos = new long[READS];
  private final long[] readFrames = new long[READS];
  private final double[] sorted = new double[READS];
  private int reads;
  private int newest = -1;

  private final long[] blockNanos = new long[BLOCKS];
  private final double[] blockFrames = new double[BLOCKS];
  private final double[] slopes = new double[BLOCKS / 2];
  private int blocks;
  private int newestBlock = -1;
  private long blockEndsNanos;
  private long bestNanos;
  private long bestFrames;
  private boolean blockHasRead;

  private double rate = NOMINAL;
  private long atNanos;
  private double atFrame;
  private boolean stale;

  /**
   * Takes one read of the position.
   *
   * @param beforeNanos the clock just before the read
   * @param frames the position read
   * @param afterNanos the clock just after
   * @return true where the read was of use
   */
  boolean read(long beforeNanos, long frames, long afterNanos) {
    if (afterNanos - beforeNanos > WIDEST_BRACKET_NANOS) {
      return false;
    }
    if (reads > 0 && frames <= readFrames[newest]) {
      return false;
    }
    long nanos = beforeNanos + (afterNanos - beforeNanos) / 2;
    newest = (newest + 1) % READS;
    readNanos[newest] = nanos;
    readFrames[newest] = frames;
    reads = Math.min(READS, reads + 1);
    intoBlock(nanos, frames);
    stale = true;
    return true;
  }

  /** True once a position has been read. */
  boolean known() {
    return reads > 0;
  }

  /** True once the line rests on two seconds of reads. */
  boolean settled() {
    return blocks * BLOCK_NANOS >= PHASE_NANOS;
  }

  /** The frame, with its fraction, that is played at an instant; only where {@link #known()}. */
  double frameAt(long nanos) {
    fit();
    return atFrame + (nanos - atNanos) * rate;
  }

  /** How far the newest read lies from the line, frames; negative where it is behind. */
  double residualFrames() {
    fit();
    return readFrames[newest] - (atFrame + (readNanos[newest] - atNanos) * rate);
  }

  /** Frames a second, as far as learnt. */
  double framesPerSecond() {
    fit();
    return rate * 1e9;
  }

  /** The output stumbled: the rate stays, the phase is learnt anew. */
  void restartPhase() {
    fit();
    reads = 0;
    blocks = 0;
    newest = -1;
    newestBlock = -1;
    blockHasRead = false;
    blockEndsNanos = 0;
  }

  private void intoBlock(long nanos, long frames) {
    if (blockHasRead && nanos >= blockEndsNanos) {
      newestBlock = (newestBlock + 1) % BLOCKS;
      blockNanos[newestBlock] = bestNanos;
      blockFrames[newestBlock] = bestFrames;
      blocks = Math.min(BLOCKS, blocks + 1);
      blockHasRead = false;
    }
    if (!blockHasRead) {
      blockEndsNanos = nanos + BLOCK_NANOS;
      bestNanos = nanos;
      bestFrames = frames;
      blockHasRead = true;
    } else if (frames - bestFrames > (nanos - bestNanos) * rate) {
      bestNanos = nanos;
      bestFrames = frames;
    }
  }

  private void fit() {
    if (!stale) {
      return;
    }
    stale = false;
    if (blocks >= FEWEST_BLOCKS) {
      fitRate();
    }
    long now = readNanos[newest];
    int count = 0;
    for (int i = 0; i < reads; i++) {
      int index = Math.floorMod(newest - i, READS);
      if (now - readNanos[index] > PHASE_NANOS) {
        break;
      }
      sorted[count++] = readFrames[index] - readFrames[newest] - (readNanos[index] - now) * rate;
    }
    Arrays.sort(sorted, 0, count);
    atNanos = now;
    atFrame = readFrames[newest] + sorted[(int) Math.round((count - 1) * QUANTILE)];
  }

  private void fitRate() {
    int half = blocks / 2;
    for (int i = 0; i < half; i++) {
      int late = Math.floorMod(newestBlock - i, BLOCKS);
      int early = Math.floorMod(newestBlock - i - half, BLOCKS);
      slopes[i] = (blockFrames[late] - blockFrames[early]) / (blockNanos[late] - blockNanos[early]);
    }
    Arrays.sort(slopes, 0, half);
    double median =
        half % 2 == 1 ? slopes[half / 2] : (slopes[half / 2 - 1] + slopes[half / 2]) / 2;
    double most = NOMINAL * MOST_PPM / 1e6;
    rate = Math.max(NOMINAL - most, Math.min(NOMINAL + most, median));
  }
}
