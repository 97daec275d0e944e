package thinclick.client.sound;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import thinclick.client.sound.SpokenNumber.Length;

/**
 * Which beats of a count-in are spoken, and how fast. Every beat is, in words as long as there is
 * time for before the next one begins; where even short ones would run into each other, every other
 * beat is spoken, and where a bar has none the one alone. What is spoken is always the number of
 * its own beat, the one that is shown: a very fast four is "one, three".
 */
final class SpokenCount {
  /** The least silence between two words, frames. */
  static final int BETWEEN = Voice.RATE / 200;

  private SpokenCount() {}

  /** What is spoken on each beat of a bar. */
  static List<Optional<SpokenNumber>> bar(int beats, double beatMicros) {
    double beatFrames = beatMicros * Voice.RATE / 1e6;
    for (int everyOther = 1; everyOther <= 2; everyOther++) {
      for (Length length : Length.values()) {
        List<Integer> spoken = spoken(beats, everyOther);
        if (fits(spoken, beats, beatFrames, length)) {
          return words(spoken, beats, length);
        }
      }
    }
    return words(List.of(0), beats, Length.SHORT);
  }

  /** Each beat, or every other one; of these none that stands right before the next bar's one. */
  private static List<Integer> spoken(int beats, int everyOther) {
    List<Integer> spoken = new ArrayList<>();
    for (int beat = 0; beat == 0 || beat + everyOther <= beats; beat += everyOther) {
      spoken.add(beat);
    }
    return spoken;
  }

  /** True where every word is over before the next begins, and before another click sounds. */
  private static boolean fits(List<Integer> spoken, int beats, double beatFrames, Length length) {
    for (int i = 0; i < spoken.size(); i++) {
      int beat = spoken.get(i);
      int next = i + 1 < spoken.size() ? spoken.get(i + 1) : beats;
      SpokenNumber word = SpokenNumber.of(beat + 1, length);
      SpokenNumber after = SpokenNumber.of(next % beats + 1, length);
      if (word.rest() + BETWEEN + after.lead() > (next - beat) * beatFrames
          || word.rest() + BETWEEN > beatFrames) {
        return false;
      }
    }
    return true;
  }

  private static List<Optional<SpokenNumber>> words(
      List<Integer> spoken, int beats, Length length) {
    List<Optional<SpokenNumber>> words = new ArrayList<>();
    for (int beat = 0; beat < beats; beat++) {
      words.add(
          spoken.contains(beat)
              ? Optional.of(SpokenNumber.of(beat + 1, length))
              : Optional.empty());
    }
    return words;
  }
}
