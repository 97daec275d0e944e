package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A line of text in which flats and sharps are music signs: the text face has none.
 *
 * @param place what it stands for; the first mark speaks
 * @param ink its ink
 * @param text its words; U+266D and U+266F become signs
 * @param face its face
 * @param size its font size
 */
record TextRun(Place place, Ink ink, String text, Face face, double size) {
  private static final char FLAT = '\u266d';
  private static final char SHARP = '\u266f';
  private static final double SIGN_AIR = 0.06;

  /** "Bb" as a reader sees it, with the signs in place of b and #, after a letter A to G. */
  static String pretty(String note) {
    return note.replaceAll("(?<=[A-G])b", String.valueOf(FLAT))
        .replaceAll("(?<=[A-G])#", String.valueOf(SHARP));
  }

  double width() {
    double width = 0;
    for (String piece : pieces()) {
      Glyph sign = sign(piece);
      width += sign == null ? face.width(piece, size) : sign.width() * signScale() + 2 * air();
    }
    return width;
  }

  /** The marks of the line, beginning at a place on its baseline. */
  List<Mark> at(double x, double y) {
    List<Mark> marks = new ArrayList<>();
    Place speaking = place;
    double left = x;
    for (String piece : pieces()) {
      Glyph sign = sign(piece);
      if (sign == null) {
        marks.add(new Mark.Text(speaking, ink, piece, face, size, left, y));
        left += face.width(piece, size);
      } else {
        double scale = signScale();
        marks.add(new Mark.Sign(speaking, ink, sign, left + air(), y, scale));
        left += sign.width() * scale + 2 * air();
      }
      speaking = place.silent();
    }
    return marks;
  }

  private double air() {
    return SIGN_AIR * size;
  }

  /** A chord sign is three spaces high; beside text it is a little higher than a capital. */
  private double signScale() {
    return size * 0.27;
  }

  private static @Nullable Glyph sign(String piece) {
    return switch (piece) {
      case "\u266d" -> Glyph.CSYM_ACCIDENTAL_FLAT;
      case "\u266f" -> Glyph.CSYM_ACCIDENTAL_SHARP;
      default -> null;
    };
  }

  private List<String> pieces() {
    List<String> pieces = new ArrayList<>();
    StringBuilder words = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == FLAT || c == SHARP) {
        if (!words.isEmpty()) {
          pieces.add(words.toString());
          words.setLength(0);
        }
        pieces.add(String.valueOf(c));
      } else {
        words.append(c);
      }
    }
    if (!words.isEmpty()) {
      pieces.add(words.toString());
    }
    return pieces;
  }
}
