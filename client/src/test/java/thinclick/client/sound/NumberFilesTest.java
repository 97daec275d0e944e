package thinclick.client.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedInputStream;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import thinclick.client.sound.SpokenNumber.Length;

/** The spoken numbers as they are kept and as they are read. */
class NumberFilesTest {
  static Stream<Arguments> words() {
    return NumberFiles.NAMES.stream()
        .flatMap(name -> Stream.of(Length.values()).map(length -> Arguments.of(name, length)));
  }

  @ParameterizedTest
  @MethodSource("words")
  void aWordIsShortWholeAndOfTheClicksRate(String name, Length length) throws Exception {
    short[] samples = kept(name, length);
    double seconds = (double) samples.length / Voice.RATE;
    double most =
        switch (length) {
          case USUAL -> 0.36;
          case QUICK -> 0.26;
          case SHORT -> 0.18;
        };
    assertThat(seconds).isBetween(0.15, most);
    double peak = 0;
    for (short sample : samples) {
      peak = Math.max(peak, Math.abs((double) sample));
    }
    assertThat(peak / Short.MAX_VALUE).as("loud enough, and not clipped").isBetween(0.3, 0.7001);
    assertThat((int) samples[0]).as("begins in silence").isZero();
    assertThat((int) samples[samples.length - 1]).as("ends in it").isZero();
    int begins = 0;
    while (Math.abs(samples[begins]) < 0.01 * peak) {
      begins++;
    }
    assertThat(begins).as("and not with silence").isLessThan(5 * Voice.RATE / 1_000);
  }

  @ParameterizedTest
  @MethodSource("words")
  void wordsAreAsLoudAsEachOther(String name, Length length) throws Exception {
    short[] samples = kept(name, length);
    double loudest = 0;
    for (int from = 0; from + Voice.RATE / 20 < samples.length; from += 48) {
      loudest = Math.max(loudest, power(samples, from, from + Voice.RATE / 20));
    }
    assertThat(10 * Math.log10(loudest)).isCloseTo(-16.8, within(0.5));
  }

  /** Where a consonant without voice stands before it, the vowel is where it gets loud. */
  @ParameterizedTest
  @MethodSource("words")
  void theVowelBeginsWhereItIsSaidTo(String name, Length length) throws Exception {
    short[] samples = kept(name, length);
    SpokenNumber word = SpokenNumber.of(NumberFiles.NAMES.indexOf(name) + 1, length);
    int vowel = word.lead();
    assertThat(vowel).isBetween(Voice.RATE / 50, samples.length / 2);
    if (!name.equals("one") && !name.equals("three")) { // w and r are voiced as well
      int some = Voice.RATE * 15 / 1_000;
      double before = power(samples, Math.max(0, vowel - some), vowel);
      double after = power(samples, vowel + some, vowel + 2 * some);
      assertThat(10 * Math.log10(after / before)).as("dB louder").isGreaterThan(6);
    }
  }

  @ParameterizedTest
  @MethodSource("words")
  void withEitherClickAWordIsNoLouderThanTheClick(String name, Length length) {
    SpokenNumber word = SpokenNumber.of(NumberFiles.NAMES.indexOf(name) + 1, length);
    for (Voice click : new Voice[] {Voice.ONE, Voice.BEAT}) {
      for (int i = 0; i < word.frames(); i++) {
        int at = i - word.lead();
        double clicks = at < 0 || at >= click.frames() ? 0 : Math.abs(click.sample(at));
        assertThat(Math.abs(word.sample(i)) + clicks).isLessThanOrEqualTo(1 + 1e-6);
        assertThat((double) Math.abs(word.sample(i))).isLessThanOrEqualTo(SpokenNumber.LOUDEST);
      }
    }
  }

  private static double power(short[] samples, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      double share = (double) samples[i] / Short.MAX_VALUE;
      sum += share * share;
    }
    return sum / (to - from);
  }

  private static short[] kept(String name, Length length) throws Exception {
    String file = "numbers/" + NumberFiles.stem(name, length) + ".wav";
    try (AudioInputStream in =
        AudioSystem.getAudioInputStream(
            new BufferedInputStream(NumberFiles.class.getResourceAsStream(file)))) {
      AudioFormat format = in.getFormat();
      assertThat(format.getSampleRate()).isEqualTo((float) Voice.RATE);
      assertThat(format.getChannels()).isEqualTo(1);
      assertThat(format.getSampleSizeInBits()).isEqualTo(16);
      assertThat(format.isBigEndian()).isFalse();
      byte[] bytes = in.readAllBytes();
      short[] samples = new short[bytes.length / 2];
      for (int i = 0; i < samples.length; i++) {
        samples[i] = (short) (bytes[2 * i + 1] << 8 | bytes[2 * i] & 0xFF);
      }
      return samples;
    }
  }
}
