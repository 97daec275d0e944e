package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Line;

/** Lines over a progression; the two worked examples are the design's. */
class ChordLineTest {
  private static WrittenPart part(Drill.Cell cell, Line line, String instrument) {
    Drill base = Stock.find("Long threes");
    Drill.Chair chair = new Drill.Chair("1", null, cell, 0, line, null, instrument);
    return PartWriter.write(base, chair, 100, "");
  }

  private static Map<Integer, String> notes(WrittenPart part) {
    Map<Integer, String> notes = new TreeMap<>();
    for (WrittenPart.Note note : part.notes()) {
      notes.put(note.step(), name(note));
    }
    return notes;
  }

  private static String name(WrittenPart.Note note) {
    return note.concert() == null ? "" : note.concert().name().toString();
  }

  @Nested
  class WorkedExamples {
    @Test
    void minorTwoFiveOneInG() {
      Drill.Cell cell = Drill.Cell.of(32, List.of(1, 3, 5, 7, 9, 11, 13, 15, 19));

      assertThat(notes(part(cell, Line.ofProgression("G minor", "minor ii-V-i"), "piano")))
          .isEqualTo(
              Map.of(
                  1, "A", 3, "C", 5, "Eb", 7, "F#", 9, "A", 11, "C", 13, "Eb", 15, "D", 19, "Bb"));
    }

    @Test
    void twoFiveOneInEFlat() {
      Drill.Cell cell = Drill.Cell.of(32, List.of(1, 2, 5, 6, 9, 10, 13, 15, 19));

      assertThat(notes(part(cell, Line.ofProgression("Eb", "ii-V-I"), "piano")))
          .isEqualTo(
              Map.of(
                  1, "F", 2, "Ab", 5, "C", 6, "Eb", 9, "D", 10, "F", 13, "Ab", 15, "G", 19, "Bb"));
    }
  }

  @Test
  void theAttackOnTheBarLineArrivesElseTheOneBeforeElseTheOneAfter() {
    assertThat(Arrivals.steps(List.of(0, 7, 8, 9, 15, 17, 25), 8, 32))
        .containsExactly(0, 8, 15, 25);
    assertThat(Arrivals.steps(List.of(2, 5, 10), 8, 16)).isEmpty();
  }

  @Test
  void aPushTakesTheNewChordAndTheLastPushTheChordThatIsRepeatedTo() {
    Drill.Cell cell = Drill.Cell.of(8, List.of(7));
    WrittenPart part = part(cell, Line.ofProgression(null, "C | F | G | Am"), "piano");

    assertThat(notes(part).keySet()).containsExactly(7, 15, 23, 31);
    assertThat(List.of("F", "A", "C")).contains(notes(part).get(7));
    assertThat(List.of("G", "B", "D")).contains(notes(part).get(15));
    assertThat(List.of("A", "C", "E")).contains(notes(part).get(23));
    assertThat(List.of("C", "E", "G")).contains(notes(part).get(31));
  }

  @Test
  void twoChordsABarChangeAtTheHalfBarAndInThreeAtTheLastBeat() {
    Drill waltz = Stock.find("Waltz threes");
    Drill.Chair chair =
        new Drill.Chair(
            "1",
            null,
            waltz.chairs().get(0).cell(),
            0,
            Line.ofProgression(null, "C F | G"),
            null,
            "piano");

    assertThat(PartWriter.write(waltz, chair, 100, "").chords())
        .extracting(WrittenPart.ChordSign::stepInBar)
        .containsExactly(0, 4, 0);
    assertThat(
            part(Drill.Cell.of(8, List.of(0)), Line.ofProgression(null, "C F"), "piano").chords())
        .extracting(WrittenPart.ChordSign::stepInBar)
        .containsExactly(0, 4);
  }

  @Test
  void chordSignsAreReadInTheKeyOfTheInstrument() {
    WrittenPart part =
        part(
            Stock.find("Long threes").chairs().get(0).cell(),
            Line.ofProgression("Bb", "ii-V-I"),
            "tenor saxophone");

    assertThat(part.chords())
        .extracting(WrittenPart.ChordSign::written)
        .containsExactly("Dm7", "G7", "Cmaj7", "Cmaj7");
    assertThat(part.chords())
        .extracting(WrittenPart.ChordSign::concert)
        .containsExactly("Cm7", "F7", "Bbmaj7", "Bbmaj7");
    assertThat(part.writtenKey()).hasToString("C");
    assertThat(part.concertKey()).hasToString("Bb");
    assertThat(part.heading().line()).isEqualTo("ii-V-I in C major");
  }

  @Test
  void approachNotesLeadIntoArrivalsByAHalfStep() {
    Drill.Cell eighths = Drill.Cell.of(8, List.of(0, 1, 2, 3, 4, 5, 6, 7));
    Line line = new Line("F", null, null, null, "ii-V-I", Line.Between.APPROACH);
    WrittenPart part = part(eighths, line, "alto saxophone");

    for (int bar = 1; bar < 3; bar++) {
      int arrival = midi(part, 8 * bar);
      assertThat(Math.abs(arrival - midi(part, 8 * bar - 1))).as("bar %d", bar).isEqualTo(1);
    }
  }

  @Test
  void passingNotesStandOnTheLighterPlacesAndBelongToTheScale() {
    Drill.Cell eighths = Drill.Cell.of(8, List.of(0, 1, 2, 3, 4, 5, 6, 7));
    Line line = new Line("C", null, null, null, "ii-V-I", Line.Between.PASSING);
    WrittenPart part = part(eighths, line, "piano");

    for (WrittenPart.Note note : part.notes()) {
      assertThat("CDEFGAB").as("step %d", note.step()).contains(name(note));
    }
    assertThat(List.of("D", "F", "A", "C")).contains(notes(part).get(2), notes(part).get(4));
    assertThat(List.of("D", "F", "A", "C")).doesNotContain(notes(part).get(1));
  }

  private static int midi(WrittenPart part, int step) {
    for (WrittenPart.Note note : part.notes()) {
      WrittenPart.@Nullable Note found = note.step() == step ? note : null;
      if (found != null && found.concert() != null) {
        return found.concert().midi();
      }
    }
    throw new AssertionError("no note at step " + step);
  }
}
