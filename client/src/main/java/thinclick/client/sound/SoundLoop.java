package thinclick.client.sound;

import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.time.MonotonicClock;

/**
 * What the sounding thread does, turn by turn: keeps the output's buffer filled with blocks,
 * follows its clock, notices a stumble and a device that is gone, and finds the way back.
 *
 * <p>Clicks are announced ahead, so a deep buffer delays nothing but stopping and the volume. One
 * thread calls it; a turn allocates nothing unless the output changes.
 */
final class SoundLoop {
  /** Frames written at a time. */
  static final int BLOCK = 240;

  /** The depth of buffer asked for, frames. */
  static final int BUFFER = 4_800;

  /** As deep as the buffer is kept where others sound as they arrive: the least that ran clean. */
  static final int SHALLOW = 1_920;

  /** How often a lost output is looked for. */
  static final long RETRY_NANOS = 1_000_000_000L;

  private static final Logger LOG = LoggerFactory.getLogger(SoundLoop.class);
  private static final long BUSY_NANOS = 1_000_000L;
  private static final long IDLE_NANOS = 5_000_000L;
  private static final int SHORT_TIMES = 2;

  private static final int CHANNELS = 2;

  private final Outputs outputs;
  private final MonotonicClock clock;
  private final SoundEar ear;
  private final Fader fader;
  private final ClickRenderer renderer;
  private final DeviceClock device = new DeviceClock();
  private final OutputWatch watch = new OutputWatch(device);
  private final FrameTimes frameTimes = this::frameAt;
  private final float[] samples = new float[BLOCK];
  private final byte[] bytes = new byte[BLOCK * CHANNELS * 2];

  private int depth = BUFFER;
  private Loudness loudness;
  private boolean muted;
  private String wantedOutput;
  private @Nullable OutputLine line;

  /** What sounds, or sounded last; at first the one that the level is meant for. */
  private String lineName;

  private CueReader cues = new CueReader(CueSheet.SILENT);
  private @Nullable RoomTimes times;
  private long writtenFrames;
  private long retryNanos;
  private int shortWrites;
  private boolean lost;
  private boolean told;

  /**
   * @param output the output that is wanted and that {@code loudness} is meant for; empty for the
   *     system's own choice
   */
  SoundLoop(Outputs outputs, MonotonicClock clock, SoundEar ear, String output, Loudness loudness) {
    this.wantedOutput = output;
    this.lineName = output;
    this.outputs = outputs;
    this.clock = clock;
    this.ear = ear;
    this.loudness = loudness;
    this.fader = new Fader(loudness);
    this.renderer = new ClickRenderer(fader);
    this.retryNanos = clock.nanos();
  }

  // ---------------------------------------------------------------- what it is told

  /** Plays these cues by this time; what was playing before ends. */
  void play(CueSheet sheet, RoomTimes roomTimes) {
    times = roomTimes;
    cues = new CueReader(sheet);
    cues.skipTo(roomTimes.roomMicros(clock.nanos()));
  }

  /** Nothing more is begun; what sounds dies away. */
  void stop() {
    cues = new CueReader(CueSheet.SILENT);
  }

  /** How deep the buffer is kept, frames; shallow where others are to be heard at once. */
  void shallow(boolean wanted) {
    depth = wanted ? SHALLOW : BUFFER;
  }

  /**
   * Sounds once, at a room time, or as soon as it can where that is past.
   *
   * @param heard told the room time at which it comes out
   */
  void strike(Voice voice, long micros, LongConsumer heard) {
    if (line == null || times == null || !device.known()) {
      return;
    }
    long soonest = ClickRenderer.earliest(writtenFrames);
    long wanted = Math.round(frameAt(micros));
    long frame = Math.max(soonest, wanted);
    if (frame - soonest > Voice.RATE * 10L) {
      return; // nothing is struck so far ahead
    }
    renderer.strike(voice, frame);
    heard.accept(micros + Math.round((frame - frameAt(micros)) * 1e6 / Voice.RATE));
  }

  void loudness(Loudness wanted) {
    loudness = wanted;
    if (!muted) {
      fader.to(wanted);
    }
  }

  void mute(boolean mute) {
    muted = mute;
    if (mute) {
      fader.mute();
    } else {
      fader.to(loudness);
    }
  }

  /** Chooses an output by name; empty for the system's own choice. */
  void output(String name) {
    if (!name.equals(wantedOutput)) {
      wantedOutput = name;
      letGo();
      told = false;
      retryNanos = clock.nanos();
    }
  }

  // ---------------------------------------------------------------- what it does

  /** Does what is due; answers the instant of the clock at which it wants to be called again. */
  long turn() {
    long now = clock.nanos();
    if (line == null) {
      if (now - retryNanos < 0) {
        return retryNanos;
      }
      open();
      if (line == null) {
        retryNanos = now + RETRY_NANOS;
        return retryNanos;
      }
    }
    follow(line);
    if (line != null) {
      fill(line);
    }
    return now + (cues.done() ? IDLE_NANOS : BUSY_NANOS);
  }

  /** Lets the output go. */
  void close() {
    letGo();
  }

  private void open() {
    OutputLine opened;
    String name = wantedOutput;
    try {
      opened = outputs.open(wantedOutput, BUFFER);
    } catch (Outputs.NoOutput none) {
      if (wantedOutput.isEmpty() || !lost) {
        tellOnce(lost ? SoundState.LOST : SoundState.NONE, none);
        return;
      }
      try {
        name = "";
        opened = outputs.open("", BUFFER);
      } catch (Outputs.NoOutput neither) {
        tellOnce(SoundState.LOST, neither);
        return;
      }
    }
    line = opened;
    if (!name.equals(lineName)) {
      fader.another();
    }
    lineName = name;
    writtenFrames = 0;
    watch.opened(clock.nanos());
    shortWrites = 0;
    if (lost) {
      cues.skipTo(times == null ? 0 : times.roomMicros(clock.nanos()));
      cues.skipToBarLine();
      if (!muted) {
        fader.back(loudness);
      }
    } else {
      cues.anchorAnew();
    }
    lost = false;
    told = false;
    LOG.info("sound output \"{}\", buffer {} frames", name, opened.bufferFrames());
    ear.soundChanged(SoundState.SOUNDING, lineName);
  }

  private void tellOnce(SoundState state, Outputs.NoOutput why) {
    if (!told) {
      told = true;
      LOG.info("no sound output: {}", why.getMessage());
      ear.soundChanged(state, "");
    }
  }

  /** Reads the position and does what that comes to. */
  private void follow(OutputLine open) {
    long before = clock.nanos();
    long played = open.playedFrames();
    long after = clock.nanos();
    switch (watch.read(before, played, after)) {
      case STARTING -> writtenFrames = Math.max(writtenFrames, played);
      case STILL -> gone("its position stood still");
      case RUNNING -> {
        boolean empty = open.availableFrames() >= open.bufferFrames();
        if (watch.dry(writtenFrames, empty)) {
          stumbled(after, played);
        }
      }
    }
  }

  /** The output ran dry: its frames are numbered anew from where it stands. */
  private void stumbled(long nowNanos, long played) {
    LOG.info(
        "the output ran dry: written {}, played {}, behind {}",
        writtenFrames,
        played,
        watch.behind());
    interrupted(nowNanos - BUFFER * 1_000_000_000L / Voice.RATE, nowNanos);
    watch.anew(nowNanos, played);
    writtenFrames = Math.max(writtenFrames, played);
    cues.anchorAnew();
    renderer.silence();
  }

  private void fill(OutputLine open) {
    for (int block = 0; block < BUFFER / BLOCK && room(open) >= BLOCK; block++) {
      renderer.render(writtenFrames, samples, cues, frameTimes);
      pack();
      int took = open.write(bytes, BLOCK);
      writtenFrames += took;
      if (took < BLOCK) {
        shortWrites++;
        if (shortWrites >= SHORT_TIMES) {
          gone("it takes nothing more");
        }
        return;
      }
      shortWrites = 0;
    }
  }

  /** How many frames may be written without waiting and without going deeper than wanted. */
  private int room(OutputLine open) {
    int available = open.availableFrames();
    return Math.min(available, available - open.bufferFrames() + depth);
  }

  private double frameAt(long micros) {
    if (times == null || !device.known()) {
      return Double.MAX_VALUE; // nothing is placed before the output's clock is known
    }
    return device.frameAt(times.nanosOf(micros));
  }

  private void pack() {
    int at = 0;
    for (float sample : samples) {
      int value = Math.round(sample * Short.MAX_VALUE);
      for (int channel = 0; channel < CHANNELS; channel++) {
        bytes[at++] = (byte) value;
        bytes[at++] = (byte) (value >> 8);
      }
    }
  }

  private void gone(String why) {
    LOG.info("the sound output \"{}\" is gone: {}", lineName, why);
    interrupted(watch.movedNanos(), clock.nanos());
    letGo();
    lost = true;
    told = true;
    retryNanos = clock.nanos();
    ear.soundChanged(SoundState.LOST, lineName);
  }

  private void interrupted(long fromNanos, long toNanos) {
    if (times != null && !cues.done()) {
      ear.clickInterrupted(times.roomMicros(fromNanos), times.roomMicros(toNanos));
    }
  }

  /** Closing may hang on a device that is gone, so nobody waits for it. */
  private void letGo() {
    OutputLine old = line;
    line = null;
    if (old != null) {
      Thread closer = new Thread(old::close, "sound-close");
      closer.setDaemon(true);
      closer.start();
    }
  }
}
