package thinclick.server.export;

import java.util.ArrayList;
import java.util.List;
import javax.xml.stream.XMLStreamException;
import org.jspecify.annotations.Nullable;
import thinclick.server.engraving.Accidental;
import thinclick.server.engraving.Articulation;
import thinclick.server.engraving.Clef;
import thinclick.server.engraving.Head;
import thinclick.server.engraving.NoteValue;
import thinclick.server.engraving.SpelledBar;
import thinclick.server.engraving.StaffNote;
import thinclick.server.engraving.StaffPart;
import thinclick.server.engraving.Symbol;
import thinclick.server.engraving.Tuplet;
import thinclick.server.material.pitch.Pitch;

/** The notes and rests of a part's bars. Elements stand in the order that the schema asks for. */
final class MusicXmlNotes {
  private static final int MIDDLE_LINE = 34; // B4 on a staff without pitch, letters above C0

  private final XmlText xml;
  private final StaffPart part;
  private final MusicXmlVoices voices;
  private final List<@Nullable Accidental> accidentals;

  MusicXmlNotes(XmlText xml, StaffPart part, MusicXmlVoices voices) {
    this.xml = xml;
    this.part = part;
    this.voices = voices;
    this.accidentals = Accidental.of(part);
  }

  /** The symbol of a bar that stands at an index. */
  void note(SpelledBar bar, int index) throws XMLStreamException {
    Symbol symbol = bar.symbols().get(index);
    xml.open("note");
    if (symbol.rest()) {
      if (symbol.wholeBar()) {
        xml.empty("rest", "measure", "yes");
      } else {
        xml.empty("rest");
      }
    } else {
      pitch(part.notes().get(symbol.note()));
    }
    xml.text("duration", symbol.length());
    if (symbol.tiedBack()) {
      xml.empty("tie", "type", "stop");
    }
    if (symbol.tiedOn()) {
      xml.empty("tie", "type", "start");
    }
    if (!symbol.rest()) {
      xml.empty("instrument", "id", voices.sounding(part.notes().get(symbol.note())));
    }
    xml.text("voice", 1);
    if (!symbol.wholeBar()) {
      xml.text("type", type(symbol.value()));
      if (symbol.dots() > 0) {
        xml.empty("dot");
      }
    }
    Accidental accidental = symbol.attack() ? accidentals.get(symbol.note()) : null;
    if (accidental != null) {
      xml.text("accidental", accidental(accidental));
    }
    Tuplet tuplet = symbol.tuplet();
    if (tuplet != null) {
      xml.open("time-modification");
      xml.text("actual-notes", tuplet.actual());
      xml.text("normal-notes", tuplet.normal());
      xml.text("normal-type", type(tuplet.unit()));
      xml.close();
    }
    if (!symbol.rest()) {
      Head head = part.notes().get(symbol.note()).head();
      if (head != Head.NORMAL) {
        xml.text("notehead", head == Head.CROSS ? "x" : "slash");
      }
      beams(bar, index);
    }
    notations(symbol);
    xml.close();
  }

  private void pitch(StaffNote note) throws XMLStreamException {
    Pitch pitch = note.pitch();
    if (pitch != null) {
      xml.open("pitch");
      xml.text("step", PitchLetters.of(pitch.name().letter()));
      if (pitch.name().alter() != 0) {
        xml.text("alter", pitch.name().alter());
      }
      xml.text("octave", pitch.octave());
      xml.close();
    } else if (part.clef() == Clef.ONE_LINE) {
      xml.empty("unpitched"); // the schema's own place for it is the middle line
    } else {
      int place = MIDDLE_LINE + note.position() - (part.clef() == Clef.BASS ? 12 : 0);
      xml.open("unpitched");
      xml.text("display-step", PitchLetters.of(place % 7));
      xml.text("display-octave", place / 7);
      xml.close();
    }
  }

  private static String type(NoteValue value) {
    return value == NoteValue.SIXTEENTH ? "16th" : value.word();
  }

  private static String accidental(Accidental accidental) {
    return switch (accidental) {
      case DOUBLE_FLAT -> "flat-flat";
      case FLAT -> "flat";
      case NATURAL -> "natural";
      case SHARP -> "sharp";
      case DOUBLE_SHARP -> "double-sharp";
    };
  }

  private void beams(SpelledBar bar, int index) throws XMLStreamException {
    for (List<Integer> beam : bar.beams()) {
      int at = beam.indexOf(index);
      if (at < 0) {
        continue;
      }
      int flags = bar.symbols().get(index).value().flags();
      int before = at == 0 ? 0 : bar.symbols().get(beam.get(at - 1)).value().flags();
      int after = at == beam.size() - 1 ? 0 : bar.symbols().get(beam.get(at + 1)).value().flags();
      for (int level = 1; level <= flags; level++) {
        boolean back = before >= level;
        boolean on = after >= level;
        String state =
            back && on
                ? "continue"
                : on ? "begin" : back ? "end" : at == 0 ? "forward hook" : "backward hook";
        xml.text("beam", state, "number", Integer.toString(level));
      }
    }
  }

  private void notations(Symbol symbol) throws XMLStreamException {
    Tuplet tuplet = symbol.tuplet();
    boolean tupletFrom = tuplet != null && tuplet.start() == symbol.start();
    boolean tupletTo = tuplet != null && tuplet.start() + tuplet.length() == symbol.end();
    List<String> signs = new ArrayList<>();
    if (symbol.attack()) {
      for (Articulation articulation : part.notes().get(symbol.note()).articulations()) {
        signs.add(
            switch (articulation) {
              case ACCENT -> "accent";
              case STACCATO -> "staccato";
              case TENUTO -> "tenuto";
            });
      }
    }
    if (!symbol.tiedBack() && !symbol.tiedOn() && !tupletFrom && !tupletTo && signs.isEmpty()) {
      return;
    }
    xml.open("notations");
    if (symbol.tiedBack()) {
      xml.empty("tied", "type", "stop");
    }
    if (symbol.tiedOn()) {
      xml.empty("tied", "type", "start");
    }
    if (tupletFrom) {
      xml.empty("tuplet", "type", "start", "number", "1");
    }
    if (tupletTo) {
      xml.empty("tuplet", "type", "stop", "number", "1");
    }
    if (!signs.isEmpty()) {
      xml.open("articulations");
      for (String sign : signs.stream().sorted().toList()) {
        xml.empty(sign);
      }
      xml.close();
    }
    xml.close();
  }
}
