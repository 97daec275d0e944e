package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Line;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.material.pitch.Chord;
import thinclick.server.material.pitch.Instrument;
import thinclick.server.material.pitch.Key;
import thinclick.server.material.pitch.Pitch;
import thinclick.server.material.pitch.Progressions;
import thinclick.server.material.pitch.Range;
import thinclick.server.material.pitch.Scale;

/** What holds of every part, on two thousand random drills; the seed names the case. */
class PartInvariantsTest {
  private static final int DRILLS = 2_000;
  private static final List<String> METERS =
      List.of("2/4", "3/4", "4/4", "5/4", "6/4", "7/4", "6/8", "9/8", "12/8");

  private static Drill drill(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Meter meter = Meter.parse(METERS.get(random.nextInt(METERS.size())));
    int stepsPerBeat =
        meter.compound() ? 3 * (1 + random.nextInt(2)) : List.of(2, 3, 4, 6).get(random.nextInt(4));
    int perBar = meter.stepsPerBar(stepsPerBeat);
    int steps = perBar * List.of(1, 2, 4).get(random.nextInt(3));
    Drill.Cell cell;
    if (random.nextBoolean()) {
      int grouping = Math.min(steps, random.nextInt(2, 13));
      cell =
          GroupedCell.of(
              grouping,
              List.of(0),
              steps,
              stepsPerBeat,
              random.nextBoolean() ? GroupedCell.Aim.UPBEAT : GroupedCell.Aim.DOWNBEAT);
    } else {
      TreeSet<Integer> attacks = new TreeSet<>(List.of(random.nextInt(steps)));
      while (random.nextInt(12) > 0) {
        attacks.add(random.nextInt(steps));
      }
      cell = Drill.Cell.of(steps, new ArrayList<>(attacks));
    }
    List<Instrument> instruments = Instrument.all();
    Drill.Chair chair =
        new Drill.Chair(
            "1",
            null,
            cell,
            random.nextInt(2 * perBar),
            line(random),
            null,
            instruments.get(random.nextInt(instruments.size())).name());
    return new Drill(
        Drill.FORMAT,
        1,
        "Random " + seed,
        random.nextInt(1, 11),
        meter,
        stepsPerBeat,
        Swing.STRAIGHT,
        new Drill.TempoRange(60, 120, 80),
        null,
        steps / perBar,
        new Drill.Deal(DealKind.AS_WRITTEN, seed),
        List.of(chair),
        List.of(Stage.ofBeats(8, 1, 1)),
        null);
  }

  private static Line line(SplittableRandom random) {
    Key key = Key.ofFifths(random.nextInt(-6, 7), false);
    if (random.nextBoolean()) {
      List<String> scales = Scale.names();
      List<List<Integer>> patterns = List.of(List.of(0), List.of(0, 2), List.of(0, 1, 2));
      return new Line(
          key.toString(),
          scales.get(random.nextInt(scales.size())),
          patterns.get(random.nextInt(patterns.size())),
          Line.Direction.values()[random.nextInt(3)],
          null,
          null);
    }
    List<String> names = Progressions.names();
    return new Line(
        key.toString(),
        null,
        null,
        Line.Direction.values()[random.nextInt(3)],
        names.get(random.nextInt(names.size())),
        Line.Between.values()[random.nextInt(3)]);
  }

  private interface Check {
    void of(WrittenPart part, Drill drill, String where);
  }

  private static void each(Check check) {
    for (long seed = 0; seed < DRILLS; seed++) {
      Drill drill = drill(seed);
      WrittenPart part = PartWriter.write(drill, drill.chairs().get(0), 80, "");
      check.of(part, drill, "seed " + seed + ": " + drill.meter() + ", " + drill.chairs().get(0));
    }
  }

  @Test
  void barsAddUpAndEveryAttackHasItsBearing() {
    each((part, drill, where) -> addsUp(part, where));
  }

  @Test
  void rangeIsKeptAndNoLeapIsWiderThanAnOctave() {
    each(PartInvariantsTest::keepsItsRange);
  }

  @Test
  void writtenPartAndTranspositionSoundTheConcertPitch() {
    each((part, drill, where) -> soundsAsWritten(part, where));
  }

  @Test
  void whatArrivesAtABarLineIsANoteOfItsChord() {
    each(PartInvariantsTest::chordNotesArrive);
  }

  @Test
  void endsAreWhereTheyWereAsked() {
    for (long seed = 0; seed < DRILLS; seed++) {
      Drill drill = drill(seed);
      int beat = drill.stepsPerBeat();
      Drill.Cell cell = drill.chairs().get(0).cell();
      int spare = cell.gapAfter(cell.attackSteps().size() - 1);
      boolean onBeats = cell.attackSteps().stream().allMatch(step -> step % beat == 0);
      if (onBeats && spare <= beat) {
        continue; // nothing off the beat, and no room behind the last attack
      }
      Drill.Cell off = Cells.endOffBeat(cell, drill.meter(), beat, 1);
      List<Integer> attacks = off.attackSteps();
      assertThat(attacks.get(attacks.size() - 1) % beat).as("seed %d: %s", seed, off).isNotZero();
      assertThat(off.lengthSteps()).as("seed %d", seed).endsWith(1).hasSameSizeAs(attacks);
      Drill.Cell begun = Cells.beginOffBeat(off, beat);
      assertThat(begun.attackSteps().get(0) % beat).as("seed %d: %s", seed, begun).isNotZero();
    }
  }

  private static void addsUp(WrittenPart part, String where) {
    int perBar = part.meter().stepsPerBar(part.stepsPerBeat());
    int end = 0;
    for (WrittenPart.Note note : part.notes()) {
      assertThat(note.step()).as(where).isGreaterThanOrEqualTo(end);
      assertThat(note.lengthSteps()).as(where).isPositive();
      end = note.step() + note.lengthSteps();
    }
    assertThat(end).as(where).isLessThanOrEqualTo(part.bars() * perBar);
    assertThat(part.bearings()).as(where).hasSameSizeAs(part.notes());
    for (int i = 0; i < part.notes().size(); i++) {
      Bearing bearing = part.bearings().get(i);
      assertThat(bearing.step()).as(where).isEqualTo(part.notes().get(i).step());
      assertThat(bearing.bar()).as(where).isEqualTo(bearing.step() / perBar);
    }
    int at = part.groupings().isEmpty() ? 0 : part.groupings().get(0).fromStep();
    for (Group group : part.groupings()) {
      assertThat(group.fromStep()).as(where).isEqualTo(at);
      at = group.toStep();
    }
    if (!part.groupings().isEmpty()) {
      assertThat(at).as(where).isEqualTo(part.bars() * perBar);
    }
    assertThat(part.repeatFromBar()).as(where).isLessThan(part.bars());
  }

  private static void keepsItsRange(WrittenPart part, Drill drill, String where) {
    Range range =
        drill.level() <= PartWriter.LEVEL_OF_BEGINNERS
            ? part.instrument().beginners()
            : part.instrument().range();
    int last = -1;
    for (WrittenPart.Note note : part.notes()) {
      Pitch concert = note.concert();
      if (range == null || concert == null) {
        assertThat(note.voice()).as(where).isEqualTo(part.instrument().voice()).isNotNull();
        continue;
      }
      assertThat(range.contains(concert.midi())).as("%s %s in %s", where, concert, range).isTrue();
      if (last >= 0) {
        assertThat(Math.abs(concert.midi() - last)).as(where).isLessThanOrEqualTo(12);
      }
      last = concert.midi();
    }
  }

  private static void soundsAsWritten(WrittenPart part, String where) {
    for (WrittenPart.Note note : part.notes()) {
      Pitch written = note.written();
      Pitch concert = note.concert();
      if (written == null || concert == null) {
        assertThat(written).as(where).isEqualTo(concert);
        continue;
      }
      assertThat(part.transposition().sounding(written)).as(where).isEqualTo(concert);
      assertThat(written.midi() + part.instrument().transposition().semitones())
          .as(where)
          .isEqualTo(concert.midi());
    }
  }

  /** The target rule: what arrives at a bar line is a note of the chord that begins there. */
  private static void chordNotesArrive(WrittenPart part, Drill drill, String where) {
    if (part.chords().isEmpty()) {
      return;
    }
    int perBar = drill.stepsPerBar();
    List<Integer> steps = part.notes().stream().map(WrittenPart.Note::step).toList();
    for (int step : Arrivals.steps(steps, perBar, part.bars() * perBar)) {
      int line = step % perBar == perBar - 1 ? step + 1 : step;
      Pitch arrived = part.notes().get(steps.indexOf(step)).concert();
      Chord chord =
          chordAt(part, line == part.bars() * perBar ? part.repeatFromBar() * perBar : line);
      assertThat(arrived).as(where).isNotNull();
      assertThat(chord.notes()).as("%s at %d", where, step).contains(arrived.name());
    }
  }

  private static Chord chordAt(WrittenPart part, int step) {
    int perBar = part.meter().stepsPerBar(part.stepsPerBeat());
    String sounding = part.chords().get(0).concert();
    for (WrittenPart.ChordSign sign : part.chords()) {
      if (sign.bar() * perBar + sign.stepInBar() <= step) {
        sounding = sign.concert();
      }
    }
    return Chord.parse("chord", sounding);
  }

  @Test
  void displacementByAWholeCycleIsIdentity() {
    for (long seed = 0; seed < DRILLS; seed++) {
      Drill.Cell cell = drill(seed).chairs().get(0).cell();
      assertThat(Cells.displace(cell, cell.steps())).as("seed %d", seed).isEqualTo(cell);
    }
  }
}
