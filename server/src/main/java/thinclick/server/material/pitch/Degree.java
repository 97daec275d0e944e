package thinclick.server.material.pitch;

import java.util.Arrays;
import java.util.List;

/**
 * A note by its place above a root.
 *
 * @param letters letters above the root: 0 for the root, 2 for a third, 8 for a ninth
 * @param semitones semitones above the root: 3 for a minor third
 */
record Degree(int letters, int semitones) {
  /** Reads {@code "b3"}, {@code "#11"}, {@code "bb7"}: against the major scale on the root. */
  static Degree parse(String written) {
    int number = Integer.parseInt(written.replaceAll("[b#]", ""));
    long flats = written.chars().filter(mark -> mark == 'b').count();
    long sharps = written.chars().filter(mark -> mark == '#').count();
    int letters = number - 1;
    int natural = PitchName.naturalSemitones(letters % 7) + 12 * (letters / 7);
    return new Degree(letters, natural + (int) (sharps - flats));
  }

  /** Reads several, with spaces between. */
  static List<Degree> parseAll(String written) {
    return Arrays.stream(written.split(" ", -1)).map(Degree::parse).toList();
  }

  PitchName above(PitchName root) {
    return root.up(letters, semitones);
  }
}
