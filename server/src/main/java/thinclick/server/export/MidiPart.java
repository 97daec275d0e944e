package thinclick.server.export;

import java.util.List;

/**
 * One chair's track in a MIDI file.
 *
 * @param name the track's name
 * @param program General MIDI program from 0 to 127; not used by percussion
 * @param percussion true where the keys are General MIDI percussion keys, on channel 10
 * @param notes in order
 */
public record MidiPart(String name, int program, boolean percussion, List<MidiNote> notes) {
  public MidiPart {
    if (program < 0 || program > 127) {
      throw new IllegalArgumentException("expected a program from 0 to 127, found " + program);
    }
    notes = List.copyOf(notes);
  }

  /** Notes for percussion. */
  public static MidiPart percussion(String name, List<MidiNote> notes) {
    return new MidiPart(name, 0, true, notes);
  }
}
