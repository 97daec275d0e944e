package thinclick.server.engraving;

import java.util.Locale;
import thinclick.protocol.music.Swing;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.Key;
import thinclick.server.words.Quantity;
import thinclick.server.words.SheetWords;

/** What a part is read on and in which key, in words. */
public final class ReaderWords {
  private ReaderWords() {}

  /**
   * {@code "Tenor saxophone in B flat, ii-V-I in C major (concert B flat major)"}, flats as signs.
   */
  public static String of(WrittenPart part) {
    return of(part, false);
  }

  /**
   * The same for a heading above one or many keys.
   *
   * @param allKeys true where the part follows in many keys, each named where it stands
   */
  static String of(WrittenPart part, boolean allKeys) {
    SheetWords said = SheetWords.in(part.heading().language());
    String name = said.instrument(part.instrument().name());
    String reader = name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    int up = Math.floorMod(part.instrument().transposition().semitones(), 12);
    String tuned = up == 10 ? "B flat" : up == 3 ? "E flat" : up == 5 ? "F" : "";
    if (!tuned.isEmpty()) {
      reader = said.say("sheet.tuned", reader, said.printed(tuned));
    }
    String line = part.heading().line();
    String concert = part.heading().concertLine();
    if (allKeys) {
      return reader + " \u00b7 " + said.say("sheet.allKeys");
    }
    if (line == null) {
      return reader;
    }
    String played = reader + " \u00b7 " + said.line(line);
    return concert == null || concert.equals(line)
        ? played
        : played + " (" + said.say("sheet.concert", said.key(concert)) + ")";
  }

  /**
   * What several parts have in common, {@code "12-bar blues in B flat major, straight"} in concert
   * pitch, flats as signs; empty where the part has no such line.
   */
  public static String form(WrittenPart part) {
    String concert = part.heading().concertLine();
    String line = concert == null ? part.heading().line() : concert;
    return line == null ? "" : withFeel(SheetWords.in(part.heading().language()).line(line), part);
  }

  /**
   * The part in words as above its music, and after them how its pairs are played.
   *
   * @param words what is said of it so far
   */
  public static String withFeel(String words, WrittenPart part) {
    String feel = feel(part, SheetWords.in(part.heading().language()));
    return feel.isEmpty() ? words : words + ", " + feel;
  }

  /** Straight or swung; empty where a beat has no pairs. */
  static String feel(WrittenPart part, SheetWords said) {
    Swing swing = part.swing();
    if (swing.asTheBandPlays()) {
      return said.say("sheet.swingBand");
    }
    if (swing.swings()) {
      return said.say("sheet.swing", Quantity.exact(swing.ratio()));
    }
    return part.stepsPerBeat() == 2 ? said.say("sheet.straight") : "";
  }

  /** {@code "E flat major"} with the sign of the flat. */
  static String signs(Key key, SheetWords said) {
    return said.line(key.words());
  }
}
