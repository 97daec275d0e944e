package thinclick.server.engraving;

/** The shape of a note or rest, without dots; each is half of the one before. */
public enum NoteValue {
  WHOLE(16, "whole"),
  HALF(8, "half"),
  QUARTER(4, "quarter"),
  EIGHTH(2, "eighth"),
  SIXTEENTH(1, "sixteenth");

  private final int sixteenths;
  private final String word;

  NoteValue(int sixteenths, String word) {
    this.sixteenths = sixteenths;
    this.word = word;
  }

  /** Its length in sixteenths, outside a tuplet. */
  public int sixteenths() {
    return sixteenths;
  }

  /** {@code "quarter"}. */
  public String word() {
    return word;
  }

  /** How many flags or beams it carries: 0 for a quarter and longer. */
  public int flags() {
    return this == EIGHTH ? 1 : this == SIXTEENTH ? 2 : 0;
  }

  /** True for all but the whole note. */
  public boolean stemmed() {
    return this != WHOLE;
  }
}
