package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FreeBars;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.ClickPlan;
import thinclick.server.material.pitch.Instrument;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Pitch;
import thinclick.server.material.pitch.Range;
import thinclick.server.material.pitch.Transposition;

/** From a chair of a drill to the part that stands on its stand. */
public final class PartWriter {
  /** Parts of more bars than this are refused, since nobody reads them from a stand. */
  public static final int MOST_BARS = 256;

  /** Up to this level the notes stay in a beginner's range. */
  public static final int LEVEL_OF_BEGINNERS = 3;

  private PartWriter() {}

  /**
   * Writes a chair's part: the bars before the figure is in its stride once, then one whole period
   * of figure, grouping, bar and progression, which is repeated.
   *
   * @param drill the drill that the chair stands in
   * @param chair the chair; its entry and its line are written
   * @param tempo beats a minute
   * @param says who comes in where, or empty
   */
  public static WrittenPart write(Drill drill, Drill.Chair chair, double tempo, String says) {
    Instrument instrument = instrumentOf(chair);
    Drill.Cell cell = chair.cell();
    int perBar = drill.stepsPerBar();
    int before = (chair.entryStep() + perBar - 1) / perBar;
    int period = periodBars(cell, perBar, LineWriter.barsOf(chair.line()));
    for (FreeBars free : chair.free()) {
      int again = free.everyBars() == null ? 1 : free.everyBars();
      period = Groupings.realignsAfter(period, again);
    }
    int bars = before + period;
    if (chair.free().stream().anyMatch(free -> free.everyBars() == null)) {
      bars =
          Math.max(bars, new ClickPlan(drill.stages()).bars()); // it comes once, so nothing repeats
    }
    if (bars > MOST_BARS) {
      throw new BadInput(
          "chair " + chair.chair(),
          "expected a part of at most " + MOST_BARS + " bars before it repeats, found " + bars);
    }
    int total = bars * perBar;
    WrittenLengths lengthOf =
        new WrittenLengths(cell, drill.meter(), drill.stepsPerBeat(), instrument.voice() != null);
    List<Integer> attacks = new ArrayList<>();
    List<Integer> lengths = new ArrayList<>();
    List<Integer> inCell = new ArrayList<>();
    for (int at = chair.entryStep(); at < total; at += cell.steps()) {
      for (int i = 0; i < cell.attackSteps().size(); i++) {
        int step = at + cell.attackSteps().get(i);
        if (step < total && !chair.freeAt(step / perBar)) {
          attacks.add(step);
          int end = Math.min(step + lengthOf.at(i, step), total);
          lengths.add(chair.writtenUntil(step, end, perBar) - step);
          inCell.add(cell.attackSteps().get(i));
        }
      }
    }
    @Nullable LineWriter line = lineOf(drill, chair, instrument, attacks, bars, before);
    Transposition transposition =
        line == null ? instrument.transposition() : instrument.transpositionFor(line.key());
    List<WrittenPart.Note> notes = new ArrayList<>();
    for (int i = 0; i < attacks.size(); i++) {
      @Nullable Pitch concert = line == null ? null : line.notes().get(i);
      notes.add(
          new WrittenPart.Note(
              attacks.get(i),
              lengths.get(i),
              Cells.has(cell.accentSteps(), inCell.get(i)),
              Cells.has(cell.staccatoSteps(), inCell.get(i)),
              Cells.has(cell.tenutoSteps(), inCell.get(i)),
              concert == null ? null : transposition.written(concert),
              concert,
              concert == null ? instrument.voice() : null));
    }
    List<Group> groups =
        Groupings.lay(cell, chair.entryStep(), drill.stepsPerBeat(), perBar, total);
    return new WrittenPart(
        new WrittenPart.Heading(
            drill.title(),
            chair.chair(),
            chair.role(),
            drill.level(),
            tempo,
            says,
            line == null ? null : line.words(transposition),
            line == null ? null : line.words(Transposition.CONCERT),
            Locale.ENGLISH),
        instrument,
        transposition,
        drill.meter(),
        drill.stepsPerBeat(),
        drill.groups(),
        drill.swing(),
        bars,
        before,
        line == null ? null : writtenKey(line.key(), transposition),
        line == null ? null : line.key(),
        notes,
        line == null ? List.of() : signs(line, transposition, perBar),
        Bearings.of(attacks, groups, drill.meter(), drill.stepsPerBeat()),
        groups.stream().filter(group -> !free(chair, group, perBar)).toList(),
        Groupings.comesRound(cell, chair.entryStep(), drill.stepsPerBeat(), perBar, bars + 1)
            .orElse(null),
        drill.stages(),
        IntStream.range(0, bars).filter(chair::freeAt).boxed().toList());
  }

  /** True where some of a group falls into free bars, so that no bracket is drawn over them. */
  private static boolean free(Drill.Chair chair, Group group, int perBar) {
    return IntStream.rangeClosed(group.fromStep() / perBar, (group.toStep() - 1) / perBar)
        .anyMatch(chair::freeAt);
  }

  private static Key writtenKey(Key concert, Transposition transposition) {
    return new Key(transposition.written(concert.tonic()), concert.minor());
  }

  private static Instrument instrumentOf(Drill.Chair chair) {
    if (chair.instrument() != null) {
      return Instrument.find("instrument", chair.instrument());
    }
    return chair.line() == null ? Instrument.CLAPPING : Instrument.find("instrument", "piano");
  }

  private static int periodBars(Drill.Cell cell, int perBar, int lineBars) {
    int ofFigure = Groupings.realignsAfter(cell.steps(), perBar) / perBar;
    return Groupings.realignsAfter(ofFigure, lineBars);
  }

  private static @Nullable LineWriter lineOf(
      Drill drill,
      Drill.Chair chair,
      Instrument instrument,
      List<Integer> attacks,
      int bars,
      int repeatFromBar) {
    @Nullable Range range =
        drill.level() <= LEVEL_OF_BEGINNERS ? instrument.beginners() : instrument.range();
    if (chair.line() == null || range == null) {
      return null;
    }
    return LineWriter.write(
        chair.line(),
        new LineWriter.Rhythm(
            attacks, drill.meter(), drill.stepsPerBeat(), drill.groups(), bars, repeatFromBar),
        range);
  }

  private static List<WrittenPart.ChordSign> signs(
      LineWriter line, Transposition transposition, int perBar) {
    return line.chords().stream()
        .map(
            chord ->
                new WrittenPart.ChordSign(
                    chord.step() / perBar,
                    chord.step() % perBar,
                    chord
                        .chord()
                        .up(-transposition.letters(), -transposition.semitones())
                        .toString(),
                    chord.chord().toString()))
        .toList();
  }
}
