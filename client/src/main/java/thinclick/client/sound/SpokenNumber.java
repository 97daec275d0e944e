package thinclick.client.sound;

import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * A spoken number. It is placed at the beginning of its vowel, where the beat of a syllable is
 * heard (Morton, Marcus and Frankish 1976, Scott 1993; from memory), and gives way to the click
 * that sounds there: both together are never louder than the click alone, so that every limit which
 * holds for the click holds for them.
 */
final class SpokenNumber implements Sound {
  /** No sample is above this share of the click's peak. */
  static final double LOUDEST = 0.5;

  /** How long a word takes. */
  enum Length {
    /** As somebody speaks who has the time. */
    USUAL,
    /** In three quarters of that time. */
    QUICK,
    /** In half of it. */
    SHORT
  }

  private static final Map<Length, List<SpokenNumber>> SPOKEN = NumberFiles.read();

  private final int number;
  private final int vowel;
  private final float[] samples;

  /**
   * @param number which number it is
   * @param vowel the frame at which its vowel begins
   * @param samples as shares of the click's peak
   */
  SpokenNumber(int number, int vowel, float[] samples) {
    this.number = number;
    this.vowel = vowel;
    this.samples = ClickRoom.givingWay(samples, vowel);
  }

  /**
   * A number as it is spoken.
   *
   * @param number 1 to 7, the beats that a bar may have
   */
  static SpokenNumber of(int number, Length length) {
    return Objects.requireNonNull(SPOKEN.get(length)).get(number - 1); // all lengths are read
  }

  /** Which number it is. */
  int number() {
    return number;
  }

  @Override
  public int frames() {
    return samples.length;
  }

  @Override
  public float sample(int frame) {
    return samples[frame];
  }

  @Override
  public int lead() {
    return vowel;
  }

  /** How long it goes on after its instant, frames. */
  int rest() {
    return samples.length - vowel;
  }

  @Override
  public boolean ofTheOne() {
    return number == 1;
  }
}
