package thinclick.client.sound;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import thinclick.client.check.MicrophoneCheck;
import thinclick.client.check.Recording;
import thinclick.client.check.Verdict;
import thinclick.protocol.music.Click;

/**
 * Plays clicks on this process's output, records them from its microphone and prints how far their
 * spacing was from what was asked, and how late the microphone path finds the output.
 */
final class SinkProbe {
  private static final long SPACING_MICROS = 200_000;

  /** A stumble spoils what is under way in the buffers, and the clock is learnt anew after it. */
  private static final long BEFORE_MICROS = 300_000;

  private static final long AFTER_MICROS = 2_300_000;

  private SinkProbe() {}

  /**
   * @param args how many clicks
   */
  public static void main(String[] args) {
    int clicks = Integer.parseInt(args[0]);
    List<long[]> stumbles = new CopyOnWriteArrayList<>();
    SoundEar ear =
        new SoundEar() {
          @Override
          public void soundChanged(SoundState state, String output) {}

          @Override
          public void clickInterrupted(long fromMicros, long toMicros) {
            stumbles.add(new long[] {fromMicros, toMicros});
          }
        };
    int seconds = (int) (clicks * SPACING_MICROS / 1_000_000) + 8;
    Microphone microphone = Microphone.open(seconds);
    if (microphone == null) {
      System.out.println("spacing none: the sink cannot be recorded from");
      return;
    }
    try (microphone;
        ClickPlayer player = ClickPlayer.start(ear, "", Loudness.nearest(-12))) {
      long zero = System.nanoTime() + 4_000_000_000L; // two seconds for the clock to settle
      List<Click> cues = new ArrayList<>();
      for (int i = 0; i < clicks; i++) {
        cues.add(new Click(i, i * SPACING_MICROS, 0, false));
      }
      player.play(
          CueSheet.of(cues, SPACING_MICROS),
          new RoomTimes() {
            @Override
            public long nanosOf(long micros) {
              return zero + micros * 1_000;
            }

            @Override
            public long roomMicros(long nanos) {
              return Math.floorDiv(nanos - zero, 1_000L);
            }
          });
      long end = zero + TimeUnit.MICROSECONDS.toNanos(clicks * SPACING_MICROS) + 1_500_000_000L;
      while (System.nanoTime() < end) {
        LockSupport.parkNanos(50_000_000L);
      }
      Recording heard = microphone.heard();
      print(heard, zero, stumbles);
      long[] asked = LongStream.range(0, 8).map(i -> zero + i * SPACING_MICROS * 1_000).toArray();
      Verdict alone = MicrophoneCheck.judge(heard, Voice.BEAT.shape(), asked, new long[0], false);
      System.out.println("microphone: " + alone); // clicks heard, no taps
    }
  }

  /** Only where the output did not run dry: what was missed there is told apart. */
  private static void print(Recording heard, long zero, List<long[]> stumbles) {
    List<Long> onsets = Onsets.in(heard.samples());
    double[] errors =
        IntStream.range(0, Math.max(0, onsets.size() - 1))
            .filter(i -> whole(heard, zero, onsets.get(i), onsets.get(i + 1), stumbles))
            .mapToDouble(
                i -> {
                  double millis = (onsets.get(i + 1) - onsets.get(i)) * 1e3 / Voice.RATE;
                  return Math.abs(millis - SPACING_MICROS / 1e3);
                })
            .sorted()
            .toArray();
    if (errors.length < 10) {
      System.out.println("spacing none: only " + errors.length + " in a row were heard");
    } else {
      System.out.printf(
          Locale.ROOT,
          "spacing p50 %.3f p99 %.3f worst %.3f clicks %d stumbles %d%n",
          errors[errors.length / 2],
          errors[(int) Math.ceil(errors.length * 0.99) - 1],
          errors[errors.length - 1],
          onsets.size(),
          stumbles.size());
    }
  }

  private static boolean whole(
      Recording heard, long zero, long from, long to, List<long[]> stumbles) {
    double first = micros(heard, zero, from);
    double last = micros(heard, zero, to);
    return stumbles.stream()
        .noneMatch(span -> first < span[1] + AFTER_MICROS && last > span[0] - BEFORE_MICROS);
  }

  /** The room time of a sample, give or take the way through the sink. */
  private static double micros(Recording heard, long zero, long sample) {
    return (heard.firstNanos() - zero) / 1e3 + sample * 1e6 / heard.rate();
  }
}
