package thinclick.server.export;

/** Letters of the staff as MusicXML writes them. */
final class PitchLetters {
  private static final String LETTERS = "CDEFGAB";

  private PitchLetters() {}

  /**
   * The letter's name.
   *
   * @param letter 0 for C to 6 for B
   */
  static String of(int letter) {
    return LETTERS.substring(letter, letter + 1);
  }
}
