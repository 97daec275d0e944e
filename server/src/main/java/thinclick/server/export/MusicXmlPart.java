package thinclick.server.export;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import javax.xml.stream.XMLStreamException;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Swing;
import thinclick.server.engraving.Accidental;
import thinclick.server.engraving.Articulation;
import thinclick.server.engraving.ChordMark;
import thinclick.server.engraving.Clef;
import thinclick.server.engraving.Cut;
import thinclick.server.engraving.Head;
import thinclick.server.engraving.NoteValue;
import thinclick.server.engraving.SpelledBar;
import thinclick.server.engraving.StaffNote;
import thinclick.server.engraving.StaffPart;
import thinclick.server.engraving.Symbol;
import thinclick.server.engraving.Tuplet;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.DrumVoice;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Pitch;
import thinclick.server.material.pitch.PitchName;
import thinclick.server.material.pitch.Transposition;

/** One part of a MusicXML score. Elements stand in the order that the schema asks for. */
final class MusicXmlPart {
  private static final String LETTERS = "CDEFGAB";
  private static final int MIDDLE_LINE = 34; // B4 on a staff without pitch, letters above C0
  private static final int PERCUSSION_CHANNEL = 10;

  private static final DrumVoice CLICK_ON_ONE =
      new DrumVoice("high wood block", MidiFiles.CLICK_ON_ONE, 0, false);
  private static final DrumVoice CLICK = new DrumVoice("low wood block", MidiFiles.CLICK, 0, false);

  private final XmlText xml;
  private final WrittenPart written;
  private final StaffPart part;
  private final boolean click;
  private final String id;
  private final int number;
  private final List<@Nullable Accidental> accidentals;
  private final TreeMap<Integer, DrumVoice> voices = new TreeMap<>();

  private MusicXmlPart(
      XmlText xml, WrittenPart written, StaffPart part, boolean click, int number) {
    this.xml = xml;
    this.written = written;
    this.part = part;
    this.click = click;
    this.id = "P" + number;
    this.number = number;
    this.accidentals = Accidental.of(part);
  }

  /** A chair's part through a take of so many bars. */
  static MusicXmlPart of(XmlText xml, WrittenPart written, int number, int bars) {
    StaffPart part = StaffPart.of(written, bars, Cut.BEATS);
    MusicXmlPart made = new MusicXmlPart(xml, written, part, false, number);
    for (WrittenPart.Note note : written.notes()) {
      DrumVoice voice = note.voice();
      if (voice != null) {
        made.voices.put(voice.key(), voice);
      }
    }
    return made;
  }

  /** The click of the take that a part stands in. */
  static MusicXmlPart click(XmlText xml, WrittenPart written, int number, int bars) {
    StaffPart part = StaffPart.of(written, bars, Cut.BEATS).click();
    MusicXmlPart made = new MusicXmlPart(xml, written, part, true, number);
    made.voices.put(CLICK_ON_ONE.key(), CLICK_ON_ONE);
    made.voices.put(CLICK.key(), CLICK);
    return made;
  }

  /** The part's entry in the list of parts. */
  void header() throws XMLStreamException {
    xml.open("score-part", "id", id);
    xml.text("part-name", click ? "click" : written.heading().chair());
    if (voices.isEmpty()) {
      xml.open("score-instrument", "id", id + "-I1");
      xml.text("instrument-name", written.instrument().name());
      xml.close();
      xml.open("midi-instrument", "id", id + "-I1");
      xml.text("midi-channel", channel());
      xml.text("midi-program", written.instrument().program() + 1L);
      xml.close();
    } else {
      for (DrumVoice voice : voices.values()) {
        xml.open("score-instrument", "id", instrument(voice));
        xml.text("instrument-name", voice.name());
        xml.close();
      }
      for (DrumVoice voice : voices.values()) {
        xml.open("midi-instrument", "id", instrument(voice));
        xml.text("midi-channel", PERCUSSION_CHANNEL);
        xml.text("midi-unpitched", voice.key() + 1L);
        xml.close();
      }
    }
    xml.close();
  }

  /** The channel from 1 to 16 without percussion's, in turn. */
  private int channel() {
    int inTurn = (number - 1) % 15 + 1;
    return inTurn < PERCUSSION_CHANNEL ? inTurn : inTurn + 1;
  }

  private String instrument(DrumVoice voice) {
    return id + "-I" + voice.key();
  }

  /** The part's bars. */
  void body() throws XMLStreamException {
    xml.open("part", "id", id);
    for (SpelledBar bar : part.spelled()) {
      xml.open("measure", "number", Integer.toString(bar.index() + 1));
      if (bar.index() == 0) {
        attributes();
        tempo();
      }
      if (click) {
        stage(bar.index());
      }
      for (int i = 0; i < bar.symbols().size(); i++) {
        harmonies(bar.symbols().get(i));
        note(bar, i);
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
      xml.open("direction", "placement", "above");
      xml.open("direction-type");
      xml.text("words", part.words(plan.stages().get(stage)));
      xml.close();
      xml.close();
    }
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
    xml.text(element + "-step", letter(pitch.letter()));
    if (pitch.alter() != 0) {
      xml.text(element + "-alter", pitch.alter());
    }
    xml.close();
  }

  private static String letter(int letter) {
    return LETTERS.substring(letter, letter + 1);
  }

  private void note(SpelledBar bar, int index) throws XMLStreamException {
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
      xml.empty("instrument", "id", sounding(symbol));
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
      xml.text("step", letter(pitch.name().letter()));
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
      xml.text("display-step", letter(place % 7));
      xml.text("display-octave", place / 7);
      xml.close();
    }
  }

  private String sounding(Symbol symbol) {
    if (voices.isEmpty()) {
      return id + "-I1";
    }
    StaffNote note = part.notes().get(symbol.note());
    if (click) {
      boolean onOne = note.span().start() % part.stepsPerBar() == 0;
      return instrument(onOne ? CLICK_ON_ONE : CLICK);
    }
    DrumVoice voice = note.voice();
    return voice == null ? instrument(voices.firstEntry().getValue()) : instrument(voice);
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
