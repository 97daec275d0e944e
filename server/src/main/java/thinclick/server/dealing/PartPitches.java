package thinclick.server.dealing;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.server.material.PartWriter;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.Pitch;

/** The sounding notes of a part over the whole take: the written part, repeated as it says. */
final class PartPitches {
  private PartPitches() {}

  /** A MIDI note for each attack, or null for rhythm alone. */
  static @Nullable List<Integer> of(
      Drill drill, Drill.Chair chair, List<Integer> attacks, double tempo) {
    if (chair.line() == null) {
      return null;
    }
    WrittenPart written = PartWriter.write(drill, chair, tempo, "");
    if (written.concertKey() == null) {
      return null;
    }
    Map<Integer, Integer> notes = new HashMap<>();
    for (WrittenPart.Note note : written.notes()) {
      @Nullable Pitch concert = note.concert();
      if (concert != null) {
        notes.put(note.step(), concert.midi());
      }
    }
    int from = written.repeatFromBar() * drill.stepsPerBar();
    int period = written.bars() * drill.stepsPerBar() - from;
    return attacks.stream()
        .map(step -> notes.get(step < from ? step : from + (step - from) % period))
        .toList();
  }
}
