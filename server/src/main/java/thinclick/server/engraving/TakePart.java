package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Group;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.DrumVoice;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Pitch;
import thinclick.server.words.SheetWords;

/** Plays a written part for a number of bars: its beginning once, its period again and again. */
final class TakePart {
  private final WrittenPart written;
  private final int bars;
  private final int stepsPerBar;
  private final int endStep;
  private final Clef clef;
  private final List<StaffNote> notes = new ArrayList<>();
  private final List<ChordMark> chords = new ArrayList<>();
  private final List<Grouping> groupings = new ArrayList<>();
  private final List<Integer> freeBars = new ArrayList<>();

  private TakePart(WrittenPart written, int bars) {
    this.written = written;
    this.bars = bars;
    this.stepsPerBar = written.meter().stepsPerBar(written.stepsPerBeat());
    this.endStep = bars * stepsPerBar;
    this.clef = clef(written);
  }

  /** The part of a take of {@code bars} bars. */
  static StaffPart of(WrittenPart written, int bars, Cut cut) {
    TakePart take = new TakePart(written, bars);
    int from = 0;
    while (from < bars) {
      int firstWritten = from == 0 ? 0 : written.repeatFromBar();
      take.turn(from - firstWritten, firstWritten);
      from += Math.max(1, written.bars() - firstWritten);
    }
    Key key = written.writtenKey();
    return new StaffPart(
        written.meter(),
        written.stepsPerBeat(),
        written.groups(),
        bars,
        take.clef,
        key == null || !take.clef.pitched() ? 0 : key.fifths(),
        take.notes,
        take.chords,
        take.groupings,
        take.clicks(),
        cut,
        take.freeBars,
        written.heading().language());
  }

  /** Adds what is written from a bar on, so many bars later. */
  private void turn(int shiftBars, int firstWritten) {
    int shift = shiftBars * stepsPerBar;
    int from = firstWritten * stepsPerBar;
    for (WrittenPart.Note note : written.notes()) {
      if (note.step() >= from && note.step() + shift < endStep) {
        cutLastAt(note.step() + shift);
        notes.add(staffNote(note, note.step() + shift));
      }
    }
    for (int bar : written.freeBars()) {
      if (bar >= firstWritten && bar + shiftBars < bars) {
        freeBars.add(bar + shiftBars);
      }
    }
    for (WrittenPart.ChordSign chord : written.chords()) {
      int at = (chord.bar() + shiftBars) * stepsPerBar + chord.stepInBar();
      if (chord.bar() >= firstWritten && at < endStep) {
        chords.add(ChordMark.parse(at, chord.written()));
      }
    }
    for (Group group : written.groupings()) {
      int at = group.fromStep() + shift;
      if (group.fromStep() >= from && at < endStep) {
        groupings.add(new Grouping(at, group.toStep() - group.fromStep(), remark(group, at)));
      }
    }
  }

  /** A note that would sound into the next turn's first attack ends there. */
  private void cutLastAt(int step) {
    int index = notes.size() - 1;
    if (index >= 0 && notes.get(index).span().end() > step) {
      notes.set(index, notes.get(index).until(step));
    }
  }

  private StaffNote staffNote(WrittenPart.Note note, int at) {
    Set<Articulation> signs = signs(note);
    Pitch pitch = note.written();
    DrumVoice voice = note.voice();
    if (pitch != null) {
      return StaffNote.pitched(at, note.lengthSteps(), clef, pitch, signs);
    }
    if (voice != null) {
      int place = clef == Clef.ONE_LINE ? 0 : voice.staffStep();
      return StaffNote.struck(at, note.lengthSteps(), voice, place, signs);
    }
    Head head = clef == Clef.ONE_LINE ? Head.NORMAL : Head.SLASH;
    return StaffNote.unpitched(at, note.lengthSteps(), 0, head, signs);
  }

  private static Set<Articulation> signs(WrittenPart.Note note) {
    EnumSet<Articulation> signs = EnumSet.noneOf(Articulation.class);
    if (note.accent()) {
      signs.add(Articulation.ACCENT);
    }
    if (note.staccato()) {
      signs.add(Articulation.STACCATO);
    }
    if (note.tenuto()) {
      signs.add(Articulation.TENUTO);
    }
    return signs;
  }

  /** Where a group meets the one; above the first one before, where that is on a later line. */
  private String remark(Group group, int at) {
    Integer round = written.comesRoundBar();
    if (round == null) {
      return "";
    }
    if (group.onBarLine() && offTheOne(at)) {
      return meetsTheOne(at / stepsPerBar);
    }
    boolean first = group.equals(written.groupings().get(0));
    boolean nextLine = round >= Reading.MOST_BARS;
    return first && nextLine ? meetsTheOne(round + (at - group.fromStep()) / stepsPerBar) : "";
  }

  /** Whether the bar before began within a group or before the first of them. */
  private boolean offTheOne(int at) {
    int one = at - stepsPerBar;
    return !groupings.isEmpty()
        && (one < groupings.get(0).start()
            || groupings.stream().anyMatch(group -> group.start() < one && group.end() > one));
  }

  private String meetsTheOne(int bar) {
    return SheetWords.in(written.heading().language()).say("sheet.meetsTheOne", bar + 1);
  }

  private List<Integer> clicks() {
    List<Integer> clicks = new ArrayList<>();
    int stageFrom = 0;
    for (Stage stage : written.stages()) {
      if (stageFrom < bars) {
        for (long step : stage.clickedSteps(written.meter(), written.stepsPerBeat())) {
          long at = (long) stageFrom * stepsPerBar + step;
          if (at < endStep) {
            clicks.add((int) at);
          }
        }
      }
      stageFrom += stage.bars();
    }
    return clicks;
  }

  /** Pitches and slashes need five lines; strokes that all stand on the middle line only that. */
  private static Clef clef(WrittenPart written) {
    boolean pitched = written.notes().stream().anyMatch(note -> note.written() != null);
    if (pitched || !written.chords().isEmpty()) {
      return switch (written.instrument().clef()) {
        case TREBLE -> Clef.TREBLE;
        case BASS -> Clef.BASS;
        case PERCUSSION -> Clef.PERCUSSION;
      };
    }
    boolean oneLine = written.notes().stream().allMatch(note -> onMiddleLine(note.voice()));
    return oneLine ? Clef.ONE_LINE : Clef.PERCUSSION;
  }

  private static boolean onMiddleLine(@Nullable DrumVoice voice) {
    return voice == null || voice.staffStep() == 0;
  }
}
