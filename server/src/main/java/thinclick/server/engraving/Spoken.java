package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import thinclick.server.material.pitch.Pitch;
import thinclick.server.material.pitch.PitchName;
import thinclick.server.words.SheetWords;

/** How marks are said aloud. */
final class Spoken {
  private static final Pattern NOTE = Pattern.compile("[A-G](bb|##|b|#)?");

  private Spoken() {}

  /** {@code "eighth E flat 4 on the and of 2, short"}. */
  static String symbol(Symbol symbol, StaffPart part) {
    SheetWords said = part.said();
    if (symbol.wholeBar()) {
      int bar = symbol.start() / part.stepsPerBar();
      return said.say(part.freeBars().contains(bar) ? "sheet.freeBar" : "sheet.silentBar");
    }
    String value = said.say("value." + symbol.value().name().toLowerCase(Locale.ROOT));
    if (symbol.dots() > 0) {
      value = said.say("sheet.dotted", value);
    }
    int inBar = symbol.start() % part.stepsPerBar();
    String on = said.place(inBar, part.meter(), part.stepsPerBeat());
    if (symbol.rest()) {
      return said.say("sheet.rest", value, on);
    }
    StaffNote note = part.notes().get(symbol.note());
    Pitch pitch = note.pitch();
    List<String> words = new ArrayList<>();
    words.add(
        pitch == null
            ? said.say("sheet.struck", value, on)
            : said.say("sheet.note", value, words(pitch, said), on));
    if (symbol.attack()) {
      for (Articulation articulation : Articulation.values()) {
        if (note.articulations().contains(articulation)) {
          words.add(said.say("articulation." + articulation.name().toLowerCase(Locale.ROOT)));
        }
      }
    } else {
      words.add(said.say("sheet.heldOver"));
    }
    return String.join(", ", words);
  }

  /** {@code "chord B flat 7"}. */
  static String chord(ChordMark chord, SheetWords said) {
    String symbol = (root(chord.root(), said) + " " + chord.quality()).strip();
    return said.say(
        "sheet.chord",
        chord.bass().isEmpty()
            ? symbol
            : said.say("sheet.overBass", symbol, root(chord.bass(), said)));
  }

  /** {@code "B flat"} for "Bb"; what is no note as it is written. */
  private static String root(String written, SheetWords said) {
    return NOTE.matcher(written).matches()
        ? words(PitchName.parse("chord", written), said)
        : written;
  }

  /** {@code "E flat 4"}. */
  private static String words(Pitch pitch, SheetWords said) {
    return words(pitch.name(), said) + " " + pitch.octave();
  }

  private static String words(PitchName name, SheetWords said) {
    String letter = name.toString().substring(0, 1);
    return said.note(
        switch (name.alter()) {
          case -2 -> letter + " double flat";
          case -1 -> letter + " flat";
          case 1 -> letter + " sharp";
          case 2 -> letter + " double sharp";
          default -> letter;
        });
  }
}
