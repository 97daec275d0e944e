package thinclick.client.sound;

import java.util.Arrays;
import thinclick.protocol.time.VirtualTime;

/**
 * An output by script: its crystal is off by so many parts in a million, its position moves in
 * lumps, it runs dry where nobody fills it, and it can be unplugged. What was heard is kept with
 * the instant at which it was heard.
 */
final class ScriptedLine implements OutputLine {
  private final VirtualTime time;
  private final double framesPerNano;
  private final int lump;
  private final int buffer;
  private long openedNanos;

  private float[] heard = new float[1 << 16];
  private long written;

  /** Frames that passed while the buffer was empty, before the frame written next. */
  private double dryFrames;

  /** The first frame that was heard after it ran dry. */
  private long dryAtFrame = Long.MAX_VALUE;

  /** What a server behind the line takes ahead, frames; they count as played. */
  private int taken;

  private boolean unplugged;
  private long unpluggedPlayed;
  boolean closed;

  ScriptedLine(VirtualTime time, double ppm, int lump, int buffer) {
    this.time = time;
    this.framesPerNano = Voice.RATE / 1e9 * (1 + ppm / 1e6);
    this.lump = lump;
    this.buffer = buffer;
    this.openedNanos = time.nanos();
  }

  /** The same, opened now. */
  ScriptedLine restarted() {
    openedNanos = time.nanos();
    return this;
  }

  /** The same with room for what is heard in so many seconds, so that it need not grow. */
  ScriptedLine roomFor(int seconds) {
    heard = new float[seconds * Voice.RATE];
    return this;
  }

  /** The same before a server with a buffer of its own. */
  ScriptedLine takenAhead(int frames) {
    taken = frames;
    return this;
  }

  @Override
  public int bufferFrames() {
    return buffer;
  }

  @Override
  public int availableFrames() {
    return (int) Math.max(0, Math.min(buffer, buffer - (written - reported())));
  }

  /** How many of the written frames have really been played. */
  private long playedExactly() {
    if (unplugged) {
      return unpluggedPlayed;
    }
    double passed = (time.nanos() - openedNanos) * framesPerNano - dryFrames;
    if (passed > written) {
      dryFrames += passed - written;
      dryAtFrame = written;
      passed = written;
    }
    return (long) passed;
  }

  private long reported() {
    return Math.min(written, playedExactly() + taken);
  }

  @Override
  public long playedFrames() {
    return reported() / lump * lump;
  }

  @Override
  public int write(byte[] bytes, int frames) {
    if (unplugged) {
      return 0;
    }
    int took = Math.min(frames, availableFrames());
    if (written + took > heard.length) {
      heard = Arrays.copyOf(heard, heard.length * 2);
    }
    for (int i = 0; i < took; i++) {
      int low = bytes[4 * i] & 0xFF;
      heard[(int) written++] = (short) (bytes[4 * i + 1] << 8 | low) / 32_767f;
    }
    return took;
  }

  @Override
  public void close() {
    closed = true;
  }

  /** Stands still for a moment without running dry. */
  void stall(long nanos) {
    openedNanos += nanos;
  }

  void unplug() {
    unpluggedPlayed = playedExactly();
    unplugged = true;
  }

  /** The instant at which a frame was heard, as long as the line ran dry once at most. */
  double heardNanos(long frame) {
    return openedNanos + (frame + (frame >= dryAtFrame ? dryFrames : 0)) / framesPerNano;
  }

  float[] heard() {
    return Arrays.copyOf(heard, (int) written);
  }
}
