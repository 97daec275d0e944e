package thinclick.client.sound;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.util.concurrent.TimeUnit;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.spi.MixerProvider;

/**
 * An output that the system finds like any other, where a test has switched it on: it plays to
 * nobody, by the monotonic clock. Otherwise this computer has no more outputs than it has.
 */
public final class ClockedSpeaker extends MixerProvider {
  private static final String NAME = "Loudspeaker";
  private static final int FRAME_BYTES = 4;

  private static volatile boolean on;

  /** Whether it is there, from the next look at the outputs on. */
  public static void on(boolean there) {
    on = there;
  }

  @Override
  public Mixer.Info[] getMixerInfo() {
    return on ? new Mixer.Info[] {new Info()} : new Mixer.Info[0];
  }

  @Override
  public Mixer getMixer(Mixer.Info info) {
    if (!on || !NAME.equals(info.getName())) {
      throw new IllegalArgumentException("no such output: " + info.getName());
    }
    return made(Mixer.class, new Outlet());
  }

  private static <T> T made(Class<T> kind, InvocationHandler does) {
    return kind.cast(
        Proxy.newProxyInstance(ClockedSpeaker.class.getClassLoader(), new Class<?>[] {kind}, does));
  }

  private static final class Info extends Mixer.Info {
    Info() {
      super(NAME, "Thinclick", "plays to nobody", "1");
    }
  }

  /** A mixer with one kind of line. */
  private static final class Outlet implements InvocationHandler {
    @Override
    public Object invoke(Object proxy, Method asked, Object[] with) {
      Line.Info line =
          new DataLine.Info(SourceDataLine.class, new AudioFormat(Voice.RATE, 16, 2, true, false));
      return switch (asked.getName()) {
        case "getMixerInfo" -> new Info();
        case "isLineSupported" -> ((Line.Info) with[0]).getLineClass().equals(SourceDataLine.class);
        case "getSourceLineInfo" -> new Line.Info[] {line};
        case "getTargetLineInfo" -> new Line.Info[0];
        case "getLine" -> made(SourceDataLine.class, new Playing());
        case "getMaxLines" -> 1;
        case "hashCode" -> 1;
        case "equals" -> proxy == with[0];
        case "toString" -> NAME;
        default -> throw new UnsupportedOperationException(asked.getName());
      };
    }
  }

  /** What is written is played at its rate from the first frame on; never runs dry unseen. */
  private static final class Playing implements InvocationHandler {
    private int buffer;
    private long startedNanos;
    private long written;

    @Override
    public Object invoke(Object proxy, Method asked, Object[] with) throws InterruptedException {
      return switch (asked.getName()) {
        case "open" -> {
          buffer = (int) with[1] / FRAME_BYTES;
          yield null;
        }
        case "start" -> {
          startedNanos = System.nanoTime();
          yield null;
        }
        case "getBufferSize" -> buffer * FRAME_BYTES;
        case "available" -> (int) (buffer - (written - played())) * FRAME_BYTES;
        case "getLongFramePosition" -> played();
        case "write" -> write((int) with[2] / FRAME_BYTES) * FRAME_BYTES;
        case "isOpen", "isActive", "isRunning" -> true;
        case "close", "stop", "flush", "drain" -> null;
        default -> throw new UnsupportedOperationException(asked.getName());
      };
    }

    private long played() {
      return Math.min(written, (long) ((System.nanoTime() - startedNanos) * (Voice.RATE / 1e9)));
    }

    private int write(int frames) throws InterruptedException {
      while (buffer - (written - played()) < frames) {
        TimeUnit.MILLISECONDS.sleep(1); // as a line holds up whoever writes into a full buffer
      }
      written += frames;
      return frames;
    }
  }
}
