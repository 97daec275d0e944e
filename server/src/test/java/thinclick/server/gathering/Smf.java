package thinclick.server.gathering;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/** Standard MIDI Files for tests: from hexadecimal text, or from notes with ticks of 1 ms. */
public final class Smf {
  private Smf() {}

  /** Bytes as the specification prints them. */
  public static byte[] hex(String... lines) {
    return HexFormat.of().parseHex(String.join("", lines).replace(" ", ""));
  }

  /** One note; times in ms from the file's start. */
  public record Note(long onMillis, long offMillis, int channel, int pitch, int velocity) {}

  /** A format 0 file whose tick is 1 ms: 500 ticks a quarter at 120 quarters a minute. */
  public static byte[] of(List<Note> notes) {
    try {
      Sequence sequence = new Sequence(Sequence.PPQ, 500);
      Track track = sequence.createTrack();
      track.add(new MidiEvent(new MetaMessage(0x51, new byte[] {7, (byte) 0xa1, 0x20}, 3), 0));
      for (Note note : notes.stream().sorted(Comparator.comparingLong(Note::onMillis)).toList()) {
        track.add(event(ShortMessage.NOTE_ON, note, note.velocity(), note.onMillis()));
        track.add(event(ShortMessage.NOTE_ON, note, 0, note.offMillis()));
      }
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      MidiSystem.write(sequence, 0, out);
      return out.toByteArray();
    } catch (InvalidMidiDataException e) {
      throw new IllegalArgumentException(e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static MidiEvent event(int command, Note note, int velocity, long tick)
      throws InvalidMidiDataException {
    return new MidiEvent(
        new ShortMessage(command, note.channel() - 1, note.pitch(), velocity), tick);
  }
}
