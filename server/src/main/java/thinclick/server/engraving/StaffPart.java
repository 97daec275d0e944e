package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.material.WrittenPart;
import thinclick.server.words.ClickWords;
import thinclick.server.words.SheetWords;

/**
 * A part as it is read from one staff.
 *
 * @param meter its meter
 * @param stepsPerBeat its grid
 * @param groups how the beats of a bar stand together; null for the usual way
 * @param bars its length
 * @param clef its staff
 * @param fifths the key signature, sharps positive, flats negative; 0 on a rhythm staff
 * @param notes in order, none reaching over the next
 * @param chords in order
 * @param groupings the turns of a grouping, in order; empty where the part has none
 * @param clickSteps the steps that click, ascending, from bar 1
 * @param cut how beats are kept visible
 * @param freeBars the bars, from 0, that are played freely: a slash on each beat
 * @param language of the words on the page
 */
public record StaffPart(
    Meter meter,
    int stepsPerBeat,
    @Nullable List<Integer> groups,
    int bars,
    Clef clef,
    int fifths,
    List<StaffNote> notes,
    List<ChordMark> chords,
    List<Grouping> groupings,
    List<Integer> clickSteps,
    Cut cut,
    List<Integer> freeBars,
    Locale language) {
  public StaffPart {
    groups = groups == null ? null : List.copyOf(groups);
    notes = List.copyOf(notes);
    chords = List.copyOf(chords);
    groupings = List.copyOf(groupings);
    clickSteps = List.copyOf(clickSteps);
    freeBars = List.copyOf(freeBars);
    if (fifths < -7 || fifths > 7) {
      throw new IllegalArgumentException("expected -7 to 7 fifths, found " + fifths);
    }
  }

  /** Steps a bar. */
  public int stepsPerBar() {
    return meter.stepsPerBar(stepsPerBeat);
  }

  /**
   * The part of a take.
   *
   * @param written what is written; after its last bar it begins anew where it says
   * @param bars how many bars the take lasts
   */
  public static StaffPart of(WrittenPart written, int bars, Cut cut) {
    return TakePart.of(written, bars, cut);
  }

  /** The click of this part as a part of its own on one line. */
  public StaffPart click() {
    return ClickPart.of(this);
  }

  /** {@code "8 bars, click on two and four"}: a stage of this part's click in words. */
  public String words(Stage stage) {
    return said().say(ClickWords.heading(stage, meter, stepsPerBeat));
  }

  /** {@code "(click on two and four)"}: the same inside the stage, to remind the reader. */
  public String heldWords(Stage stage) {
    return said().say(ClickWords.held(stage, meter, stepsPerBeat));
  }

  /** The words of its page. */
  public SheetWords said() {
    return SheetWords.in(language);
  }

  /** All that is written in some bars, steps counted from their first; equal bars have equal. */
  List<Object> content(int fromBar, int toBar) {
    int from = fromBar * stepsPerBar();
    int to = toBar * stepsPerBar();
    List<Object> content = new ArrayList<>();
    content.add(to - from);
    for (StaffNote note : notes) {
      if (note.span().end() > from && note.span().start() < to) {
        int start = Math.max(note.span().start() - from, -1); // how long before does not matter
        int end = Math.min(note.span().end() - from, to - from + 1);
        content.add(List.of(start, end, note.position(), note.head(), note.articulations()));
        content.add(note.pitch() == null ? "" : note.pitch());
      }
    }
    chords.stream()
        .filter(chord -> chord.step() >= from && chord.step() < to)
        .forEach(chord -> content.add(List.of(chord.step() - from, chord.text())));
    clickSteps.stream()
        .filter(step -> step >= from && step < to)
        .forEach(step -> content.add(step - from));
    freeBars.stream()
        .filter(bar -> bar >= fromBar && bar < toBar)
        .forEach(bar -> content.add("free " + (bar - fromBar)));
    return content;
  }

  /** The bars as they are written. */
  public List<SpelledBar> spelled() {
    List<NoteSpan> spans = notes.stream().map(StaffNote::span).toList();
    BarGrid grid =
        groups == null ? BarGrid.of(meter, stepsPerBeat) : new BarGrid(meter, stepsPerBeat, groups);
    return Speller.spell(grid, bars, spans, cut);
  }
}
