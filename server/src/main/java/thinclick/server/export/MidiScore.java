package thinclick.server.export;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.StepGrid;
import thinclick.server.engraving.Articulation;
import thinclick.server.engraving.Cut;
import thinclick.server.engraving.StaffNote;
import thinclick.server.engraving.StaffPart;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.DrumVoice;
import thinclick.server.material.pitch.Pitch;

/**
 * What a MIDI file holds: a grid in time, the click that is left, and the parts.
 *
 * @param title the sequence's name
 * @param grid meter, tempo and swing; its start is not used
 * @param bars how many bars the parts last, without the count-in
 * @param countInBars clicked bars before bar 1, 0 to 4
 * @param clicks the clicks from bar 1 on; empty for none
 * @param parts the chairs
 */
public record MidiScore(
    String title,
    StepGrid grid,
    int bars,
    int countInBars,
    List<Click> clicks,
    List<MidiPart> parts) {
  public MidiScore {
    clicks = List.copyOf(clicks);
    parts = List.copyOf(parts);
  }

  /** General MIDI percussion key for a rhythm that names no voice, Claves. */
  private static final int RHYTHM = 75;

  /**
   * A whole take: each part through all stages of the click plan of the first.
   *
   * @param countInBars clicked bars before bar 1, 0 to 4
   */
  public static MidiScore of(List<WrittenPart> parts, int countInBars) {
    WrittenPart first = parts.get(0);
    double tempo = first.heading().tempo();
    StepGrid grid = new StepGrid(first.meter(), first.stepsPerBeat(), tempo, first.swing(), 0);
    ClickPlan plan = new ClickPlan(first.stages());
    return new MidiScore(
        first.heading().title(),
        grid,
        plan.bars(),
        countInBars,
        plan.clicks(grid),
        parts.stream().map(part -> midiPart(part, plan.bars())).toList());
  }

  private static MidiPart midiPart(WrittenPart part, int bars) {
    List<MidiNote> notes = new ArrayList<>();
    boolean pitched = false;
    StaffPart staff = StaffPart.of(part, bars, Cut.BEATS);
    for (StaffNote note : staff.notes()) {
      boolean accent = note.articulations().contains(Articulation.ACCENT);
      Pitch written = note.pitch();
      DrumVoice voice = note.voice();
      pitched |= written != null;
      int key =
          written != null
              ? part.transposition().sounding(written).midi()
              : voice != null ? voice.key() : RHYTHM;
      int velocity = accent ? MidiNote.ACCENTED : MidiNote.PLAIN;
      boolean staccato = note.articulations().contains(Articulation.STACCATO);
      notes.add(new MidiNote(note.span().start(), note.span().length(), staccato, key, velocity));
    }
    String name = part.heading().chair() + ", " + part.instrument().name();
    return new MidiPart(
        name, part.instrument().program(), !pitched, notes, freely(staff, name, bars));
  }

  /** Where each stretch begins in which the player is free, with its bars as the page counts. */
  private static List<MidiPart.Marker> freely(StaffPart staff, String name, int bars) {
    List<MidiPart.Marker> markers = new ArrayList<>();
    for (int from = 0; from < bars; from++) {
      int to = from;
      while (to < bars && staff.freeBars().contains(to)) {
        to++;
      }
      if (to > from) {
        String stretch = to == from + 1 ? String.valueOf(to) : (from + 1) + "-" + to;
        String says = staff.said().say("sheet.freely");
        markers.add(
            new MidiPart.Marker(from * staff.stepsPerBar(), name + ": " + says + ", " + stretch));
        from = to;
      }
    }
    return markers;
  }
}
