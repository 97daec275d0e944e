package thinclick.server.export;

import java.util.List;

/**
 * One chair's track in a MIDI file.
 *
 * @param name the track's name
 * @param program General MIDI program from 0 to 127; not used by percussion
 * @param percussion true where the keys are General MIDI percussion keys, on channel 10
 * @param notes in order
 * @param markers what is said of stretches of the part, such as that they are played freely; they
 *     stand on the file's first track, as the specification wants markers
 */
public record MidiPart(
    String name, int program, boolean percussion, List<MidiNote> notes, List<Marker> markers) {
  public MidiPart {
    if (program < 0 || program > 127) {
      throw new IllegalArgumentException("expected a program from 0 to 127, found " + program);
    }
    notes = List.copyOf(notes);
    markers = List.copyOf(markers);
  }

  /** A part without markers. */
  public MidiPart(String name, int program, boolean percussion, List<MidiNote> notes) {
    this(name, program, percussion, notes, List.of());
  }

  /** A text that stands at a step. */
  public record Marker(int step, String text) {}

  /** Notes for percussion. */
  public static MidiPart percussion(String name, List<MidiNote> notes) {
    return new MidiPart(name, 0, true, notes);
  }
}
