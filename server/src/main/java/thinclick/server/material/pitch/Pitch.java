package thinclick.server.material.pitch;

/**
 * A spelled note in its octave.
 *
 * @param name letter and accidentals
 * @param octave scientific octave of the letter; middle C is C4, and C flat 4 sounds as B3
 */
public record Pitch(PitchName name, int octave) {
  /** The MIDI note: 60 for middle C, 69 for A4 at 440 Hz. */
  public int midi() {
    return 12 * (octave + 1) + name.semitones();
  }

  /** Letters above C0, for the place on a staff: 28 for middle C, one more for each letter. */
  public int staffStep() {
    return 7 * octave + name.letter();
  }

  /** The pitch that is {@code steps} letters and {@code semitones} semitones higher. */
  public Pitch up(int steps, int semitones) {
    int staff = staffStep() + steps;
    int letter = Math.floorMod(staff, 7);
    int octaves = Math.floorDiv(staff, 7);
    int natural = 12 * (octaves + 1) + PitchName.naturalSemitones(letter);
    return new Pitch(new PitchName(letter, midi() + semitones - natural), octaves);
  }

  /** This pitch, or where it has two accidentals the one that sounds the same with at most one. */
  public Pitch readable() {
    if (Math.abs(name.alter()) < 2) {
      return this;
    }
    int letters = Integer.signum(name.alter());
    Pitch other = up(letters, 0);
    return Math.abs(other.name().alter()) < 2 ? other : other.up(letters, 0);
  }

  /** {@code "Eb4"}. */
  @Override
  public String toString() {
    return name.toString() + octave;
  }
}
