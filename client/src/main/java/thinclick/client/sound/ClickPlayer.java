package thinclick.client.sound;

import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongConsumer;
import thinclick.protocol.time.MonotonicClock;

/**
 * Sounds the click: the one thread that owns the output. Methods may be called from any thread and
 * return at once; the first turn opens the output.
 */
public final class ClickPlayer implements AutoCloseable {
  private final Queue<Runnable> orders = new ConcurrentLinkedQueue<>();
  private final SoundLoop loop;
  private final Thread thread;
  private volatile boolean closed;

  @SuppressWarnings(
      "ThreadPriorityCheck") // a wish only: nothing but the depth of buffer hangs on it
  private ClickPlayer(Outputs outputs, SoundEar ear, String output, Loudness loudness) {
    loop = new SoundLoop(outputs, MonotonicClock.SYSTEM, ear, output, loudness);
    thread = new Thread(this::run, "click");
    thread.setDaemon(true);
    thread.setPriority(Thread.MAX_PRIORITY);
  }

  /**
   * Starts on one of the system's outputs.
   *
   * @param output its name; empty for the system's own choice
   * @param loudness what that output opens at
   */
  public static ClickPlayer start(SoundEar ear, String output, Loudness loudness) {
    ClickPlayer player = new ClickPlayer(new SystemOutputs(), ear, output, loudness);
    player.thread.start();
    return player;
  }

  /** The outputs of this computer by name; may take a moment to find out. */
  public static List<String> outputs() {
    return new SystemOutputs().names();
  }

  /** Plays these cues by this time; what was playing before ends. */
  public void play(CueSheet cues, RoomTimes times) {
    order(() -> loop.play(cues, times));
  }

  /** Nothing more is begun. */
  public void stop() {
    order(loop::stop);
  }

  /** Keeps the output's buffer shallow, so that others can be heard as they arrive, or deep. */
  public void shallow(boolean wanted) {
    order(() -> loop.shallow(wanted));
  }

  /**
   * Sounds once at a room time, by the time of what is playing; as soon as it can where that is
   * past.
   *
   * @param heard told, on the sounding thread, the room time at which it comes out
   */
  public void strike(Voice voice, long micros, LongConsumer heard) {
    order(() -> loop.strike(voice, micros, heard));
  }

  /** Sets the level; it rises by 12 dB a second at most. */
  public void loudness(Loudness loudness) {
    order(() -> loop.loudness(loudness));
  }

  /** Silences this computer, or lets it sound again. */
  public void mute(boolean mute) {
    order(() -> loop.mute(mute));
  }

  /** Chooses an output by name; empty for the system's own choice. */
  public void output(String name) {
    order(() -> loop.output(name));
  }

  @Override
  public void close() {
    closed = true;
    LockSupport.unpark(thread);
  }

  private void order(Runnable order) {
    orders.add(order);
    LockSupport.unpark(thread);
  }

  private void run() {
    while (!closed) {
      for (Runnable order = orders.poll(); order != null; order = orders.poll()) {
        order.run();
      }
      long next = loop.turn();
      if (orders.isEmpty() && !closed) {
        LockSupport.parkNanos(Math.max(0, next - System.nanoTime()));
      }
    }
    loop.close();
  }
}
