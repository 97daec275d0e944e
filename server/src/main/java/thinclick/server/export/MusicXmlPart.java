package thinclick.server.export;

import javax.xml.stream.XMLStreamException;
import thinclick.protocol.music.ClickPlan;
import thinclick.server.engraving.ChordMark;
import thinclick.server.engraving.Cut;
import thinclick.server.engraving.SpelledBar;
import thinclick.server.engraving.StaffPart;
import thinclick.server.engraving.Symbol;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.PitchName;

/** One part of a MusicXML score. Elements stand in the order that the schema asks for. */
final class MusicXmlPart {
  private final XmlText xml;
  private final WrittenPart written;
  private final StaffPart part;
  private final boolean click;
  private final MusicXmlVoices voices;
  private final MusicXmlNotes notes;

  private MusicXmlPart(
      XmlText xml, WrittenPart written, StaffPart part, boolean click, MusicXmlVoices voices) {
    this.xml = xml;
    this.written = written;
    this.part = part;
    this.click = click;
    this.voices = voices;
    this.notes = new MusicXmlNotes(xml, part, voices);
  }

  /** A chair's part through a take of so many bars. */
  static MusicXmlPart of(XmlText xml, WrittenPart written, int number, int bars) {
    StaffPart part = StaffPart.of(written, bars, Cut.BEATS);
    return new MusicXmlPart(xml, written, part, false, MusicXmlVoices.of(written, part, number));
  }

  /** The click of the take that a part stands in. */
  static MusicXmlPart click(XmlText xml, WrittenPart written, int number, int bars) {
    StaffPart part = StaffPart.of(written, bars, Cut.BEATS).click();
    return new MusicXmlPart(xml, written, part, true, MusicXmlVoices.click(written, part, number));
  }

  /** The part's entry in the list of parts. */
  void header() throws XMLStreamException {
    voices.header(xml);
  }

  /** The part's bars. */
  void body() throws XMLStreamException {
    xml.open("part", "id", voices.id());
    for (SpelledBar bar : part.spelled()) {
      xml.open("measure", "number", Integer.toString(bar.index() + 1));
      if (bar.index() == 0) {
        new MusicXmlStart(xml, written, part, click).write();
      }
      if (click) {
        stage(bar.index());
      } else {
        freely(bar.index());
      }
      for (int i = 0; i < bar.symbols().size(); i++) {
        harmonies(bar.symbols().get(i));
        notes.note(bar, i);
      }
      if (bar.index() == part.bars() - 1) {
        xml.open("barline", "location", "right");
        xml.text("bar-style", "light-heavy");
        xml.close();
      }
      xml.close();
    }
    xml.close();
  }

  /** The words of the stage that begins in a bar. */
  private void stage(int bar) throws XMLStreamException {
    ClickPlan plan = new ClickPlan(written.stages());
    int stage = plan.stageAt(bar);
    if (stage >= 0 && plan.fromBar(stage) == bar) {
      words(part.words(plan.stages().get(stage)));
    }
  }

  /**
   * Slashes begin where the player is left free and end in the bar that is written again; what is
   * counted there stays a rest, so that the bars add up.
   */
  private void freely(int bar) throws XMLStreamException {
    boolean free = part.freeBars().contains(bar);
    if (free == part.freeBars().contains(bar - 1)) {
      return;
    }
    xml.open("attributes");
    xml.open("measure-style");
    if (free) {
      xml.open("slash", "type", "start", "use-stems", "no");
      xml.text("slash-type", "quarter");
      if (part.meter().compound()) {
        xml.empty("slash-dot");
      }
      xml.close();
    } else {
      xml.empty("slash", "type", "stop", "use-stems", "no");
    }
    xml.close();
    xml.close();
    if (free) {
      words(part.said().say("sheet.freely"));
    }
  }

  private void words(String text) throws XMLStreamException {
    xml.open("direction", "placement", "above");
    xml.open("direction-type");
    xml.text("words", text);
    xml.close();
    xml.close();
  }

  private void harmonies(Symbol symbol) throws XMLStreamException {
    for (ChordMark chord : part.chords()) {
      if (chord.step() >= symbol.start() && chord.step() < symbol.end()) {
        xml.open("harmony");
        root("root", chord.root());
        HarmonyKind kind = HarmonyKind.of(chord.quality());
        xml.text("kind", kind.kind(), "text", chord.quality());
        if (!chord.bass().isEmpty()) {
          root("bass", chord.bass());
        }
        for (HarmonyKind.Degree degree : kind.degrees()) {
          xml.open("degree", "print-object", "no");
          xml.text("degree-value", degree.value());
          xml.text("degree-alter", degree.alter());
          xml.text("degree-type", degree.type());
          xml.close();
        }
        if (chord.step() > symbol.start()) {
          xml.text("offset", chord.step() - (long) symbol.start());
        }
        xml.close();
      }
    }
  }

  private void root(String element, String name) throws XMLStreamException {
    PitchName pitch = PitchName.parse("chord", name);
    xml.open(element);
    xml.text(element + "-step", PitchLetters.of(pitch.letter()));
    if (pitch.alter() != 0) {
      xml.text(element + "-alter", pitch.alter());
    }
    xml.close();
  }
}
