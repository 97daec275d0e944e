package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import thinclick.protocol.music.Meter;
import thinclick.server.material.WrittenPart;
import thinclick.server.words.Quantity;
import thinclick.server.words.SheetWords;

/**
 * What stands above a part: title and chair, the reader's instrument and key, tempo and swing, and
 * how the part enters.
 */
final class PartHeading {
  private static final double TITLE_SIZE = 4.4;
  private static final double CHAIR_SIZE = 2.8;
  private static final double TEXT_SIZE = 2.1;
  private static final double LINE = 3.1;
  private static final double BELOW = 2.6;

  private final WrittenPart part;
  private final boolean allKeys;
  private final SheetWords said;

  /**
   * A heading.
   *
   * @param allKeys true where the part follows in many keys, each named where it stands
   */
  PartHeading(WrittenPart part, boolean allKeys) {
    this.part = part;
    this.allKeys = allKeys;
    this.said = SheetWords.in(part.heading().language());
  }

  /**
   * Draws the heading.
   *
   * @param left the left margin
   * @param right the right margin
   * @param top the upper margin
   * @return where the music may begin
   */
  double draw(List<Mark> marks, double left, double right, double top) {
    WrittenPart.Heading heading = part.heading();
    double y = top + TITLE_SIZE * 0.75;
    double size = TITLE_SIZE;
    String chair = chair(heading, said);
    double chairWidth = Face.SEMIBOLD.width(chair, CHAIR_SIZE);
    while (Face.SEMIBOLD.width(heading.title(), size) > right - left - chairWidth - 3 && size > 2) {
      size -= 0.2;
    }
    text(marks, heading.title(), Face.SEMIBOLD, size, left, y);
    text(marks, chair, Face.SEMIBOLD, CHAIR_SIZE, right - chairWidth, y);
    y += LINE + 0.4;
    text(marks, ReaderWords.of(part, allKeys), Face.REGULAR, TEXT_SIZE, left, y);
    String level = said.say("sheet.level", heading.level());
    double levelWidth = Face.REGULAR.width(level, TEXT_SIZE);
    text(marks, level, Face.REGULAR, TEXT_SIZE, right - levelWidth, y);
    y += LINE;
    tempo(marks, left, y);
    for (String line : wrapped(heading.says(), right - left)) {
      y += LINE * 0.9;
      text(marks, line, Face.ITALIC, TEXT_SIZE, left, y);
    }
    return y + BELOW;
  }

  private static void text(
      List<Mark> marks, String text, Face face, double size, double x, double y) {
    if (!text.isEmpty()) {
      marks.addAll(new TextRun(Place.saying(text), Ink.FULL, text, face, size).at(x, y));
    }
  }

  private static String chair(WrittenPart.Heading heading, SheetWords said) {
    String role = heading.role();
    return role == null || named(heading.chair()).startsWith(named(role))
        ? heading.chair()
        : heading.chair() + ", " + said.role(role);
  }

  /**
   * A chair that is called after its role, or after several of it, needs no role beside its name.
   */
  private static String named(String written) {
    return written.toLowerCase(Locale.ROOT);
  }

  private void tempo(List<Mark> marks, double left, double y) {
    Meter meter = part.meter();
    Quantity beats = Quantity.exact(part.heading().tempo());
    List<String> words = new ArrayList<>();
    String feel = ReaderWords.feel(part, said);
    if (!feel.isEmpty()) {
      words.add(feel);
    }
    String spoken = said.say(meter.compound() ? "sheet.tempoDotted" : "sheet.tempo", beats);
    double scale = 0.72;
    double x = left;
    marks.add(
        new Mark.Sign(Place.saying(spoken), Ink.FULL, Glyph.MET_NOTE_QUARTER_UP, x, y, scale));
    x += Glyph.MET_NOTE_QUARTER_UP.advance() * scale;
    if (meter.compound()) {
      x += 0.25;
      marks.add(new Mark.Sign(Place.NOWHERE, Ink.FULL, Glyph.MET_AUGMENTATION_DOT, x, y, scale));
      x += Glyph.MET_AUGMENTATION_DOT.advance() * scale;
    }
    x += 0.9;
    String rest =
        "= " + said.shown(beats) + (words.isEmpty() ? "" : " \u00b7 " + String.join(", ", words));
    marks.add(new Mark.Text(Place.NOWHERE, Ink.FULL, rest, Face.REGULAR, TEXT_SIZE, x, y));
  }

  private static List<String> wrapped(String text, double width) {
    List<String> words = text.isBlank() ? List.of() : List.of(text.strip().split("\\s+"));
    return Face.ITALIC.lines(words, TEXT_SIZE, width);
  }
}
