package thinclick.server.material.pitch;

/**
 * From what is written to what sounds, as letters and semitones; both negative where the instrument
 * sounds lower than written.
 *
 * @param letters letters up, -1 for a B flat trumpet
 * @param semitones semitones up, -2 for a B flat trumpet
 */
public record Transposition(int letters, int semitones) {
  /** Sounds as written. */
  public static final Transposition CONCERT = new Transposition(0, 0);

  /** What sounds where {@code written} is read. */
  public Pitch sounding(Pitch written) {
    return written.up(letters, semitones);
  }

  /** What is read where {@code sounding} is to be heard. */
  public Pitch written(Pitch sounding) {
    return sounding.up(-letters, -semitones);
  }

  /** What is read where {@code sounding} is to be heard. */
  public PitchName written(PitchName sounding) {
    return sounding.up(-letters, -semitones);
  }

  /**
   * The same transposition with the written notes spelled a letter lower (C sharp becomes B double
   * sharp) or higher (C sharp becomes D flat), so that a key of seven sharps can be read in five
   * flats.
   */
  public Transposition respelled(int lettersHigher) {
    return new Transposition(letters - lettersHigher, semitones);
  }
}
