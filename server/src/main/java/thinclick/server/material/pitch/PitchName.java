package thinclick.server.material.pitch;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import thinclick.protocol.json.BadInput;

/**
 * A spelled note without its octave, such as E flat.
 *
 * @param letter 0 for C to 6 for B
 * @param alter semitones by which accidentals move the letter: -1 flat, 1 sharp, up to two either
 *     way
 */
public record PitchName(int letter, int alter) {
  private static final String LETTERS = "CDEFGAB";
  private static final int[] SEMITONES = {0, 2, 4, 5, 7, 9, 11};
  private static final Pattern WRITTEN =
      Pattern.compile("([A-Ga-g])(bb|##|b|#|x|\u266d|\u266f| flat| sharp|-flat|-sharp)?");

  /** The note C. */
  public static final PitchName C = new PitchName(0, 0);

  public PitchName {
    if (letter < 0 || letter > 6 || alter < -3 || alter > 3) {
      throw new IllegalArgumentException("no note with letter " + letter + ", alter " + alter);
    }
  }

  /**
   * Reads {@code "Eb"}, {@code "F#"} or {@code "E flat"}.
   *
   * @param where what is named in the complaint
   */
  public static PitchName parse(String where, String written) {
    Matcher matcher = WRITTEN.matcher(written.strip());
    if (!matcher.matches()) {
      throw new BadInput(where, "expected a note such as C, Eb or F#, found \"" + written + "\"");
    }
    String mark = matcher.group(2) == null ? "" : matcher.group(2);
    int alter =
        switch (mark) {
          case "" -> 0;
          case "b", "\u266d", " flat", "-flat" -> -1;
          case "bb" -> -2;
          case "##", "x" -> 2;
          default -> 1;
        };
    return new PitchName(LETTERS.indexOf(Character.toUpperCase(written.strip().charAt(0))), alter);
  }

  /** Semitones above C with the accidentals counted, folded into 0 to 11. */
  public int pitchClass() {
    return Math.floorMod(semitones(), 12);
  }

  /** Semitones above the C below the letter; -1 for C flat, 12 for B sharp. */
  int semitones() {
    return SEMITONES[letter] + alter;
  }

  /** Semitones above C of a letter without accidentals. */
  static int naturalSemitones(int letter) {
    return SEMITONES[letter];
  }

  /** The note that is {@code steps} letters and {@code semitones} semitones higher. */
  public PitchName up(int steps, int semitones) {
    int target = Math.floorMod(letter + steps, 7);
    int away = Math.floorMod(semitones() + semitones - SEMITONES[target] + 6, 12) - 6;
    return new PitchName(target, away);
  }

  /** This note, or where it has two accidentals the one that sounds the same with at most one. */
  PitchName readable() {
    return new Pitch(this, 4).readable().name();
  }

  /** This note in the octave that lies nearest to a MIDI note; of two as near, the lower. */
  public Pitch nearest(int midi) {
    int octave = Math.floorDiv(midi - semitones() + 5, 12) - 1;
    return new Pitch(this, octave);
  }

  /** {@code "E flat"}, {@code "F double sharp"}. */
  public String words() {
    String mark = alter < 0 ? "flat" : "sharp";
    String times = Math.abs(alter) == 2 ? "double " : Math.abs(alter) == 3 ? "triple " : "";
    return LETTERS.charAt(letter) + (alter == 0 ? "" : " " + times + mark);
  }

  /** {@code "Eb"}. */
  @Override
  public String toString() {
    String marks = alter < 0 ? "b".repeat(-alter) : "#".repeat(alter);
    return LETTERS.charAt(letter) + marks;
  }
}
