package thinclick.server.export;

import javax.xml.stream.XMLStreamException;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Swing;
import thinclick.server.engraving.Clef;
import thinclick.server.engraving.StaffPart;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Transposition;

/** What stands at the start of a part: key, time, clef, transposition, tempo and swing. */
final class MusicXmlStart {
  private final XmlText xml;
  private final WrittenPart written;
  private final StaffPart part;
  private final boolean click;

  MusicXmlStart(XmlText xml, WrittenPart written, StaffPart part, boolean click) {
    this.xml = xml;
    this.written = written;
    this.part = part;
    this.click = click;
  }

  /** Writes it into the first bar. */
  void write() throws XMLStreamException {
    attributes();
    tempo();
  }

  /** Steps a quarter: what durations are counted in. */
  private int divisions() {
    return part.meter().compound() ? part.stepsPerBeat() * 2 / 3 : part.stepsPerBeat();
  }

  private void attributes() throws XMLStreamException {
    xml.open("attributes");
    xml.text("divisions", divisions());
    Key key = written.writtenKey();
    if (part.clef() == Clef.TREBLE || part.clef() == Clef.BASS) {
      xml.open("key");
      xml.text("fifths", part.fifths());
      if (key != null) {
        xml.text("mode", key.minor() ? "minor" : "major");
      }
      xml.close();
    }
    xml.open("time");
    xml.text("beats", part.meter().count());
    xml.text("beat-type", part.meter().unit());
    xml.close();
    xml.open("clef");
    switch (part.clef()) {
      case TREBLE -> clef("G", 2);
      case BASS -> clef("F", 4);
      case PERCUSSION, ONE_LINE -> xml.text("sign", "percussion");
    }
    xml.close();
    if (part.clef() == Clef.ONE_LINE) {
      xml.open("staff-details");
      xml.text("staff-lines", 1);
      xml.close();
    }
    if (!click) {
      transposition();
    }
    xml.close();
  }

  private void clef(String sign, int line) throws XMLStreamException {
    xml.text("sign", sign);
    xml.text("line", line);
  }

  private void transposition() throws XMLStreamException {
    Transposition transposition = written.transposition();
    if (transposition.letters() == 0 && transposition.semitones() == 0) {
      return;
    }
    int octaves = transposition.letters() / 7;
    xml.open("transpose");
    xml.text("diatonic", transposition.letters() - 7L * octaves);
    xml.text("chromatic", transposition.semitones() - 12L * octaves);
    if (octaves != 0) {
      xml.text("octave-change", octaves);
    }
    xml.close();
  }

  private void tempo() throws XMLStreamException {
    Meter meter = part.meter();
    double tempo = written.heading().tempo();
    xml.open("direction", "placement", "above");
    xml.open("direction-type");
    xml.open("metronome");
    xml.text("beat-unit", "quarter");
    if (meter.compound()) {
      xml.empty("beat-unit-dot");
    }
    xml.text("per-minute", Check.number(tempo));
    xml.close();
    xml.close();
    double quarters = meter.compound() ? tempo * 1.5 : tempo;
    xml.open("sound", "tempo", Check.number(Math.round(quarters * 1e6) / 1e6));
    swing();
    xml.close();
    xml.close();
  }

  private void swing() throws XMLStreamException {
    Swing swing = written.swing();
    xml.open("swing");
    if (swing.ratio() == 1) {
      xml.empty("straight");
    } else {
      int second = 1;
      while (second < 100 && Math.abs(swing.ratio() * second % 1) > 1e-9) {
        second++;
      }
      xml.text("first", Math.round(swing.ratio() * second));
      xml.text("second", second);
      xml.text("swing-type", part.stepsPerBeat() == 4 ? "16th" : "eighth");
    }
    xml.close();
  }
}
