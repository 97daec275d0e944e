package thinclick.client.sound;

import java.util.Arrays;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.TargetDataLine;
import org.jspecify.annotations.Nullable;
import thinclick.client.check.Recording;

/**
 * Listens for the length of a sound check. What it hears stays in memory and is let go with the
 * check; nothing is written down.
 */
public final class Microphone implements AutoCloseable {
  private static final AudioFormat FORMAT = new AudioFormat(Voice.RATE, 16, 1, true, false);
  private static final DataLine.Info LINE = new DataLine.Info(TargetDataLine.class, FORMAT);
  private static final int BLOCK = 480;
  private static final int BUFFER = 9_600;
  private static final double NANOS_A_SAMPLE = 1e9 / Voice.RATE;

  private final TargetDataLine line;
  private final Thread thread;
  private final float[] samples;
  private volatile int heard;
  private volatile boolean closed;

  // A block cannot be handed over before it was heard: the earliest hand-over is the truest.
  private volatile long firstNanos = Long.MAX_VALUE;

  private Microphone(TargetDataLine line, int mostSeconds) {
    this.line = line;
    this.samples = new float[mostSeconds * Voice.RATE];
    this.thread = new Thread(this::listen, "microphone");
    thread.setDaemon(true);
  }

  /** True where this computer has one; may take a moment to find out. */
  public static boolean canBeHad() {
    return AudioSystem.isLineSupported(LINE);
  }

  /** Begins to listen; null where there is none or it is taken. */
  public static @Nullable Microphone open(int mostSeconds) {
    try {
      TargetDataLine line = (TargetDataLine) AudioSystem.getLine(LINE);
      line.open(FORMAT, BUFFER * 2);
      line.start();
      Microphone made = new Microphone(line, mostSeconds);
      made.thread.start();
      return made;
    } catch (LineUnavailableException | IllegalArgumentException | SecurityException none) {
      return null;
    }
  }

  private void listen() {
    byte[] block = new byte[BLOCK * 2];
    while (!closed && heard + BLOCK <= samples.length) {
      int bytes = line.read(block, 0, block.length);
      long nanos = System.nanoTime();
      int count = Math.max(0, bytes) / 2;
      for (int i = 0; i < count; i++) {
        samples[heard + i] = (short) ((block[2 * i + 1] << 8) | (block[2 * i] & 0xFF)) / 32_768f;
      }
      int all = heard + count;
      firstNanos = Math.min(firstNanos, nanos - Math.round(all * NANOS_A_SAMPLE));
      heard = all; // last: who sees so many samples sees them whole
      if (count == 0) {
        return; // it is gone
      }
    }
  }

  /** What was heard so far. */
  public Recording heard() {
    int count = heard;
    return new Recording(Arrays.copyOf(samples, count), Voice.RATE, count == 0 ? 0 : firstNanos);
  }

  @Override
  public void close() {
    closed = true;
    Thread closer = new Thread(line::close, "microphone-close");
    closer.setDaemon(true);
    closer.start();
  }
}
