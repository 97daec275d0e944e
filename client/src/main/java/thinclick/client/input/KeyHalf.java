package thinclick.client.input;

/**
 * Which letters a chair taps on. The halves are those of a Latin keyboard with QWERTY, QWERTZ or
 * AZERTY letters; where one letter sits in the other half it does no harm within one chair.
 */
public enum KeyHalf {
  /** Every letter: one chair at the computer. */
  ALL,
  /** The left hand's letters. */
  LEFT,
  /** The right hand's letters. */
  RIGHT;

  private static final String LEFT_LETTERS = "QWERTASDFGZXCVB";

  /** True where a letter, A to Z, taps for this chair. */
  public boolean has(char letter) {
    if (letter < 'A' || letter > 'Z') {
      return false;
    }
    boolean left = LEFT_LETTERS.indexOf(letter) >= 0;
    return this == ALL || left == (this == LEFT);
  }
}
