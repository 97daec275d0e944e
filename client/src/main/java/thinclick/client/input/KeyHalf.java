package thinclick.client.input;

/**
 * Which letters a chair taps on. The halves are those of a Latin keyboard with QWERTY, QWERTZ or
 * AZERTY letters; where one letter sits in the other half it does no harm within one chair.
 */
public enum KeyHalf {
  /** Every letter: one chair at the computer. */
  ALL("any letter"),
  /** The left hand's letters. */
  LEFT("letters of the left half"),
  /** The right hand's letters. */
  RIGHT("letters of the right half");

  private static final String LEFT_LETTERS = "QWERTASDFGZXCVB";

  private final String words;

  KeyHalf(String words) {
    this.words = words;
  }

  /** As it is said in a sentence. */
  public String words() {
    return words;
  }

  /** True where a letter, A to Z, taps for this chair. */
  public boolean has(char letter) {
    if (letter < 'A' || letter > 'Z') {
      return false;
    }
    boolean left = LEFT_LETTERS.indexOf(letter) >= 0;
    return this == ALL || left == (this == LEFT);
  }
}
