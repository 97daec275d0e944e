package thinclick.client.sound;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.LockSupport;
import thinclick.protocol.time.MonotonicClock;

/**
 * The sound of many computers on one, for benches: each has the program's own sound loop and an
 * output that drains by the clock and keeps when each click began; one thread turns them all.
 */
public final class RoomSpeakers implements AutoCloseable {
  private static final long TURN_NANOS = 4_000_000;

  private final List<Speaker> speakers = new ArrayList<>();
  private final Thread thread = new Thread(this::run, "speakers");
  private volatile boolean closed;

  /** Starts so many. */
  public RoomSpeakers(int count) {
    for (int i = 0; i < count; i++) {
      speakers.add(new Speaker());
    }
    thread.setDaemon(true);
    thread.setPriority(Thread.MAX_PRIORITY);
    thread.start();
  }

  /** One computer's. */
  public Speaker of(int computer) {
    return speakers.get(computer);
  }

  private void run() {
    while (!closed) {
      speakers.forEach(Speaker::turn);
      LockSupport.parkNanos(TURN_NANOS);
    }
  }

  @Override
  public void close() {
    closed = true;
  }

  /** The output of one computer. */
  public static final class Speaker {
    private final ConcurrentLinkedQueue<Runnable> orders = new ConcurrentLinkedQueue<>();
    private final DrainingLine line = new DrainingLine();
    private final SoundLoop loop =
        new SoundLoop(new Only(line), MonotonicClock.SYSTEM, DEAF, "", LOUD);

    private static final Loudness LOUD = Loudness.FIRST;

    private void turn() {
      for (Runnable order = orders.poll(); order != null; order = orders.poll()) {
        order.run();
      }
      loop.turn();
    }

    /** Plays these cues by this time, as the window does. */
    public void play(CueSheet cues, RoomTimes times) {
      orders.add(
          () -> {
            line.times = times;
            loop.play(cues, times);
          });
    }

    /** Nothing more is begun. */
    public void stop() {
      orders.add(loop::stop);
    }

    /** When clicks were heard to begin, room time as this computer had it then, microseconds. */
    public List<Long> begun() {
      synchronized (line) {
        return List.copyOf(line.begun);
      }
    }
  }

  private static final SoundEar DEAF =
      new SoundEar() {
        @Override
        public void soundChanged(SoundState state, String output) {}

        @Override
        public void clickInterrupted(long fromMicros, long toMicros) {}
      };

  private record Only(DrainingLine line) implements Outputs {
    @Override
    public List<String> names() {
      return List.of("bench");
    }

    @Override
    public OutputLine open(String name, int bufferFrames) {
      return line;
    }
  }

  /** Takes frames as fast as they are played; a frame that comes too late is heard too late. */
  private static final class DrainingLine implements OutputLine {
    private static final int SILENT_FRAMES = Voice.RATE / 50;

    final List<Long> begun = new ArrayList<>();
    private final long openedNanos = System.nanoTime();
    private RoomTimes times;
    private long written;
    private long dry;
    private long silent = SILENT_FRAMES;

    @Override
    public int bufferFrames() {
      return SoundLoop.BUFFER;
    }

    @Override
    public int availableFrames() {
      return (int) Math.max(0, Math.min(SoundLoop.BUFFER, SoundLoop.BUFFER - written + played()));
    }

    private long heardNanos(long frame) {
      return openedNanos + Math.round((frame + dry) * 1e9 / Voice.RATE);
    }

    private long played() {
      long passed = Math.round((System.nanoTime() - openedNanos) / 1e9 * Voice.RATE) - dry;
      if (passed > written) {
        dry += passed - written;
        passed = written;
      }
      return passed;
    }

    @Override
    public long playedFrames() {
      return played();
    }

    @Override
    public int write(byte[] bytes, int frames) {
      int took = Math.min(frames, availableFrames());
      for (int i = 0; i < took; i++) {
        if (bytes[4 * i] == 0 && bytes[4 * i + 1] == 0) {
          silent++;
        } else {
          if (silent >= SILENT_FRAMES) {
            synchronized (this) {
              begun.add(times.roomMicros(heardNanos(written + i)));
            }
          }
          silent = 0;
        }
      }
      written += took;
      return took;
    }

    @Override
    public void close() {}
  }
}
