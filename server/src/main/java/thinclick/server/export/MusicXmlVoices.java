package thinclick.server.export;

import java.util.TreeMap;
import javax.xml.stream.XMLStreamException;
import thinclick.server.engraving.StaffNote;
import thinclick.server.engraving.StaffPart;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.DrumVoice;

/** What a part sounds on: one instrument, or the drum voices that its notes name. */
final class MusicXmlVoices {
  private static final int PERCUSSION_CHANNEL = 10;

  private static final DrumVoice CLICK_ON_ONE =
      new DrumVoice("high wood block", MidiFiles.CLICK_ON_ONE, 0, false);
  private static final DrumVoice CLICK = new DrumVoice("low wood block", MidiFiles.CLICK, 0, false);

  private final WrittenPart written;
  private final StaffPart part;
  private final boolean click;
  private final int number;
  private final String id;
  private final TreeMap<Integer, DrumVoice> voices = new TreeMap<>();

  private MusicXmlVoices(WrittenPart written, StaffPart part, boolean click, int number) {
    this.written = written;
    this.part = part;
    this.click = click;
    this.number = number;
    this.id = "P" + number;
  }

  /** The voices of a chair's part, the score's part of that number from 1. */
  static MusicXmlVoices of(WrittenPart written, StaffPart part, int number) {
    MusicXmlVoices made = new MusicXmlVoices(written, part, false, number);
    for (WrittenPart.Note note : written.notes()) {
      DrumVoice voice = note.voice();
      if (voice != null) {
        made.voices.put(voice.key(), voice);
      }
    }
    return made;
  }

  /** The two of the click. */
  static MusicXmlVoices click(WrittenPart written, StaffPart part, int number) {
    MusicXmlVoices made = new MusicXmlVoices(written, part, true, number);
    made.voices.put(CLICK_ON_ONE.key(), CLICK_ON_ONE);
    made.voices.put(CLICK.key(), CLICK);
    return made;
  }

  /** The id of the part that they sound. */
  String id() {
    return id;
  }

  /** The part's entry in the list of parts. */
  void header(XmlText xml) throws XMLStreamException {
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

  /** The id of what a note sounds on. */
  String sounding(StaffNote note) {
    if (voices.isEmpty()) {
      return id + "-I1";
    }
    if (click) {
      boolean onOne = note.span().start() % part.stepsPerBar() == 0;
      return instrument(onOne ? CLICK_ON_ONE : CLICK);
    }
    DrumVoice voice = note.voice();
    return voice == null ? instrument(voices.firstEntry().getValue()) : instrument(voice);
  }
}
