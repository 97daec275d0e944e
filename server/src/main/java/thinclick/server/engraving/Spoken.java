package thinclick.server.engraving;

import thinclick.server.material.pitch.Pitch;

/** How marks are said aloud. */
final class Spoken {
  private Spoken() {}

  /** {@code "eighth E flat 4 on the and of 2, tied"}. */
  static String symbol(Symbol symbol, StaffPart part) {
    if (symbol.wholeBar()) {
      int bar = symbol.start() / part.stepsPerBar();
      return part.freeBars().contains(bar) ? "a free bar" : "a silent bar";
    }
    StringBuilder words = new StringBuilder();
    words.append(symbol.dots() > 0 ? "dotted " : "").append(symbol.value().word());
    int inBar = symbol.start() % part.stepsPerBar();
    String on = Counting.words(part.meter(), part.stepsPerBeat(), inBar);
    if (symbol.rest()) {
      return words.append(" rest on ").append(on).toString();
    }
    StaffNote note = part.notes().get(symbol.note());
    Pitch pitch = note.pitch();
    if (pitch != null) {
      words.append(' ').append(words(pitch));
    }
    words.append(" on ").append(on);
    if (symbol.attack()) {
      for (Articulation articulation : Articulation.values()) {
        if (note.articulations().contains(articulation)) {
          words.append(", ").append(articulation.words());
        }
      }
    } else {
      words.append(", held over");
    }
    return words.toString();
  }

  /** {@code "E flat 4"}. */
  private static String words(Pitch pitch) {
    String letter = pitch.name().toString().substring(0, 1);
    String altered =
        switch (pitch.name().alter()) {
          case -2 -> " double flat";
          case -1 -> " flat";
          case 1 -> " sharp";
          case 2 -> " double sharp";
          default -> "";
        };
    return letter + altered + " " + pitch.octave();
  }
}
