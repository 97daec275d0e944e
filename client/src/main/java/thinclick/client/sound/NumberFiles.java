package thinclick.client.sound;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import thinclick.client.sound.SpokenNumber.Length;

/** Reads the spoken numbers that are kept beside the program; how they were made stands there. */
final class NumberFiles {
  /** What the numbers are called, from one on. */
  static final List<String> NAMES = List.of("one", "two", "three", "four", "five", "six", "seven");

  /** The files peak at .7 of full scale; this brings them under {@link SpokenNumber#LOUDEST}. */
  private static final double SCALE = 0.7 / Short.MAX_VALUE;

  private NumberFiles() {}

  /** All numbers at every length, from one on. */
  static Map<Length, List<SpokenNumber>> read() {
    try (InputStream in = stored("vowels.properties")) {
      Properties vowels = new Properties();
      vowels.load(in);
      Map<Length, List<SpokenNumber>> all = new EnumMap<>(Length.class);
      for (Length length : Length.values()) {
        List<SpokenNumber> numbers = new ArrayList<>();
        for (String name : NAMES) {
          String file = stem(name, length);
          int vowel = Integer.parseInt(vowels.getProperty(file));
          numbers.add(new SpokenNumber(numbers.size() + 1, vowel, samples(file + ".wav")));
        }
        all.put(length, List.copyOf(numbers));
      }
      return all;
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** What a number's file is called, without its ending. */
  static String stem(String name, Length length) {
    return length == Length.USUAL ? name : name + "-" + length.name().toLowerCase(Locale.ROOT);
  }

  private static float[] samples(String name) throws IOException {
    try (AudioInputStream in =
        AudioSystem.getAudioInputStream(new BufferedInputStream(stored(name)))) {
      byte[] bytes = in.readAllBytes();
      float[] samples = new float[bytes.length / 2];
      for (int i = 0; i < samples.length; i++) {
        samples[i] = (float) (SCALE * ((bytes[2 * i + 1] << 8) | (bytes[2 * i] & 0xFF)));
      }
      return samples;
    } catch (UnsupportedAudioFileException not) {
      throw new IOException(name + " is no sound file", not);
    }
  }

  private static InputStream stored(String name) {
    return Objects.requireNonNull(NumberFiles.class.getResourceAsStream("numbers/" + name), name);
  }
}
