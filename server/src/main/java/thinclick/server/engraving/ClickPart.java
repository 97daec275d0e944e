package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** The click as a part of its own, on one line: a note where it sounds, a rest where it is gone. */
final class ClickPart {
  private ClickPart() {}

  /** The click of a part; each is written to the end of its beat. */
  static StaffPart of(StaffPart part) {
    List<StaffNote> notes = new ArrayList<>();
    List<Integer> clicks = part.clickSteps();
    for (int i = 0; i < clicks.size(); i++) {
      int at = clicks.get(i);
      int end = (at / part.stepsPerBeat() + 1) * part.stepsPerBeat();
      if (i + 1 < clicks.size()) {
        end = Math.min(end, clicks.get(i + 1));
      }
      notes.add(StaffNote.unpitched(at, end - at, 0, Head.NORMAL, Set.of()));
    }
    return new StaffPart(
        part.meter(),
        part.stepsPerBeat(),
        part.groups(),
        part.bars(),
        Clef.ONE_LINE,
        0,
        notes,
        List.of(),
        List.of(),
        List.of(),
        part.cut(),
        List.of(),
        part.language());
  }
}
