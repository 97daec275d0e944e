package thinclick.client.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.client.check.Verdict.Known;
import thinclick.client.check.Verdict.Refused;
import thinclick.client.check.Verdict.Why;

/**
 * Recordings by arithmetic: a click that decays, knocks of noise, echoes, hiss. The true delay is
 * known, the microphone's own must fall out.
 */
class MicrophoneCheckTest {
  private static final int RATE = 48_000;

  /** How far a found delay may be from the true one, milliseconds. */
  private static final double TOLERANCE = 1.0;

  @ParameterizedTest
  @CsvSource({
    // output, input, microphone, hiss, echo, jitter
    "40, 8, 25, 0.001, 0.0, 0.0",
    "40, 8, 90, 0.001, 0.0, 0.0", // the microphone's own delay falls out
    "12, 2, 10, 0.01, 0.0, 0.0", // hiss
    "40, 8, 25, 0.003, 0.9, 0.0", // an echo nearly as loud as the click
    "40, 8, 25, 0.003, 0.5, 3.0", // stamps that jitter
    "180, 30, 60, 0.003, 0.3, 1.0", // a radio headset
  })
  void outputAndInputTogetherAreFound(
      double output, double input, double microphone, double hiss, double echo, double jitter) {
    Booth booth = new Booth(11, output, input, microphone, hiss, echo, jitter);
    Verdict verdict = booth.judge();
    assertThat(verdict).isInstanceOf(Known.class);
    Known known = (Known) verdict;
    assertThat(known.latencyMillis()).isCloseTo(output + input, within(TOLERANCE + jitter * 0.9));
    assertThat(known.how()).isEqualTo(Verdict.How.MICROPHONE);
    assertThat(known.uncertaintyMillis()).isBetween(2.0, 8.0);
  }

  @Test
  void theTruthLiesInsideTheUncertainty() {
    assertThat(inside(0, 8)).as("of 8 seeds from 0").isGreaterThanOrEqualTo(7);
  }

  @Test
  @Tag("long")
  void theTruthLiesInsideTheUncertaintyNineteenTimesOfTwenty() {
    assertThat(inside(0, 40)).as("of 40 seeds from 0").isGreaterThanOrEqualTo(38);
  }

  private static int inside(int from, int seeds) {
    int inside = 0;
    for (int seed = from; seed < from + seeds; seed++) {
      Known known = (Known) new Booth(seed, 40, 8, 25, 0.003, 0.4, 2).judge();
      inside += Math.abs(known.latencyMillis() - 48) <= known.uncertaintyMillis() ? 1 : 0;
    }
    return inside;
  }

  @Test
  void aFewMissedTapsDoNoHarm() {
    Booth booth = new Booth(3, 40, 8, 25, 0.003, 0, 0);
    booth.unheardTaps = 3;
    assertThat(((Known) booth.judge()).latencyMillis()).isCloseTo(48, within(TOLERANCE));
  }

  @Test
  void clicksInHeadphonesAreNotHeard() {
    Booth booth = new Booth(3, 40, 8, 25, 0.003, 0, 0);
    booth.clickLevel = 0;
    assertThat(((Refused) booth.judge()).why()).isEqualTo(Why.CLICK_UNHEARD);
  }

  @Test
  void soundlessTapsAreRefused() {
    Booth booth = new Booth(3, 40, 8, 25, 0.003, 0, 0);
    booth.unheardTaps = 12;
    assertThat(((Refused) booth.judge()).why()).isEqualTo(Why.TAPS_UNHEARD);
  }

  /** A microphone before a loudspeaker and a keyboard. */
  private static final class Booth {
    private final Random luck;
    private final double output;
    private final double input;
    private final double microphone;
    private final double hiss;
    private final double echo;
    private final double jitter;
    double clickLevel = 0.2;
    int unheardTaps;

    Booth(
        long seed,
        double output,
        double input,
        double microphone,
        double hiss,
        double echo,
        double jitter) {
      this.luck = new Random(seed);
      this.output = output;
      this.input = input;
      this.microphone = microphone;
      this.hiss = hiss;
      this.echo = echo;
      this.jitter = jitter;
    }

    Verdict judge() {
      float[] sound = new float[RATE * 16];
      float[] click = click();
      long zero = 77_000_000_000L;
      List<Long> clicks = new ArrayList<>();
      for (int i = 0; i < MicrophoneCheck.CLICKS; i++) {
        double millis = 500 + i * 600;
        clicks.add(zero + Math.round(millis * 1e6));
        strike(sound, click, clickLevel, millis + output + microphone);
        strike(sound, click, clickLevel * echo, millis + output + microphone + 23);
      }
      List<Long> stamps = new ArrayList<>();
      for (int i = 0; i < MicrophoneCheck.TAPS; i++) {
        double millis = 6_500 + i * 650 + luck.nextGaussian() * 60;
        double late = input + luck.nextGaussian() * jitter;
        stamps.add(zero + Math.round((millis + late) * 1e6));
        if (i >= unheardTaps) {
          strike(sound, knock(), 0.1, millis + microphone);
          strike(sound, knock(), 0.1 * echo, millis + microphone + 19);
        }
      }
      for (int i = 0; i < sound.length; i++) {
        sound[i] += (float) (hiss * luck.nextGaussian());
      }
      return MicrophoneCheck.judge(
          new Recording(sound, RATE, zero), click, longs(clicks), longs(stamps), false);
    }

    private static float[] click() {
      float[] shape = new float[RATE * 40 / 1_000];
      for (int i = 0; i < shape.length; i++) {
        double t = (double) i / RATE;
        double rise = Math.min(1, t / 0.001);
        shape[i] = (float) (rise * Math.exp(-t / 0.009) * Math.sin(2 * Math.PI * 1_500 * t));
      }
      return shape;
    }

    /** A key that lands: noise that dies away in a few milliseconds, another one each time. */
    private float[] knock() {
      float[] shape = new float[RATE * 20 / 1_000];
      for (int i = 0; i < shape.length; i++) {
        shape[i] = (float) (luck.nextGaussian() * Math.exp(-(double) i / RATE / 0.003));
      }
      return shape;
    }

    private static void strike(float[] sound, float[] shape, double level, double millis) {
      int at = (int) Math.round(millis * RATE / 1e3);
      for (int i = 0; i < shape.length && at + i < sound.length; i++) {
        sound[at + i] += (float) (level * shape[i]);
      }
    }

    private static long[] longs(List<Long> values) {
      return values.stream().mapToLong(Long::longValue).toArray();
    }
  }
}
