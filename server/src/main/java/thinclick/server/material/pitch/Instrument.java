package thinclick.server.material.pitch;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a part is read on.
 *
 * @param name in words, lower case: {@code "tenor saxophone"}
 * @param clef the clef it reads
 * @param transposition from written to sounding
 * @param program its General MIDI program from 0 to 127; 0 for percussion
 * @param range the sounding notes that a good player has and that are read in the clef with three
 *     ledger lines at most where there is a choice, or null without pitch
 * @param beginners the sounding notes of a first year, or null without pitch
 * @param voice what it strikes where it has no pitch, else null
 */
public record Instrument(
    String name,
    Clef clef,
    Transposition transposition,
    int program,
    @Nullable Range range,
    @Nullable Range beginners,
    @Nullable DrumVoice voice) {
  /** Hands: rhythm alone on one line. */
  public static final Instrument CLAPPING =
      new Instrument(
          "clapping",
          Clef.PERCUSSION,
          Transposition.CONCERT,
          0,
          null,
          null,
          new DrumVoice("hand clap", 39, 0, false));

  /** True where the part has pitches. */
  public boolean pitched() {
    return range != null;
  }

  /** The instrument of a name in any case, common short names too; a miss names the nearest. */
  public static Instrument find(String where, String name) {
    return Instruments.find(where, name);
  }

  /** This transposition, respelled where that gives the read key fewer accidentals. */
  public Transposition transpositionFor(Key concert) {
    Transposition best = transposition;
    int fewest = accidentals(transposition, concert);
    for (int letters : new int[] {-1, 1}) {
      Transposition other = transposition.respelled(letters);
      int count = accidentals(other, concert);
      if (count < fewest) {
        fewest = count;
        best = other;
      }
    }
    return best;
  }

  private static int accidentals(Transposition transposition, Key concert) {
    return Math.abs(Key.fifths(transposition.written(concert.tonic()), concert.minor()));
  }

  /** The instruments known, in score order. */
  public static List<Instrument> all() {
    return Instruments.ALL;
  }
}
