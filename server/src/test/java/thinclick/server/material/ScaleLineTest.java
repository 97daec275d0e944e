package thinclick.server.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Line;
import thinclick.server.material.pitch.Pitch;
import thinclick.server.material.pitch.PitchName;
import thinclick.server.material.pitch.Range;
import thinclick.server.material.pitch.Scale;

class ScaleLineTest {
  private static final Range TWO_OCTAVES = new Range(60, 84);

  private static List<Pitch> line(
      String scale, List<Integer> pattern, Line.Direction direction, Range range, int count) {
    return new ScaleLine(Scale.find("scale", scale), PitchName.C, pattern, direction, range)
        .write(count);
  }

  private static String names(List<Pitch> notes) {
    return notes.stream().map(Pitch::toString).collect(Collectors.joining(" "));
  }

  @Test
  void oneDegreeAfterTheOtherTurnsAtTheEndsOfTheRange() {
    assertThat(names(line("major", List.of(0), Line.Direction.TURNING, new Range(60, 67), 12)))
        .isEqualTo("C4 D4 E4 F4 G4 F4 E4 D4 C4 D4 E4 F4");
  }

  @Test
  void brokenThirdsAreMirroredOnTheWayDown() {
    assertThat(names(line("major", List.of(0, 2), Line.Direction.TURNING, new Range(60, 67), 12)))
        .isEqualTo("C4 E4 D4 F4 E4 G4 F4 D4 E4 C4 D4 F4");
    assertThat(names(line("major", List.of(0, 2), Line.Direction.DOWN, TWO_OCTAVES, 6)))
        .isEqualTo("C6 A5 B5 G5 A5 F5");
  }

  @Test
  void upBeginsAgainFromBelowWithoutALeapOverAnOctave() {
    assertThat(names(line("major", List.of(0), Line.Direction.UP, new Range(60, 74), 11)))
        .isEqualTo("C4 D4 E4 F4 G4 A4 B4 C5 D5 D4 E4");
  }

  @Test
  void everyScaleAndPatternKeepsTheRangeAndNeverLeapsOverAnOctave() {
    List<List<Integer>> patterns =
        List.of(
            List.of(0),
            List.of(0, 2),
            List.of(0, 1, 2),
            List.of(0, 2, 1),
            List.of(0, 1, 2, 4),
            List.of(0, -1),
            List.of(2, 0),
            List.of(0, 3));
    for (String scale : Scale.names()) {
      for (List<Integer> pattern : patterns) {
        for (Line.Direction direction : Line.Direction.values()) {
          List<Pitch> notes = line(scale, pattern, direction, TWO_OCTAVES, 200);
          String where = scale + " " + pattern + " " + direction;
          assertThat(notes).as(where).allMatch(note -> TWO_OCTAVES.contains(note.midi()));
          for (int i = 1; i < notes.size(); i++) {
            assertThat(Math.abs(notes.get(i).midi() - notes.get(i - 1).midi()))
                .as("%s at %d", where, i)
                .isLessThanOrEqualTo(12);
          }
        }
      }
    }
  }

  @Test
  void aPatternThatLeapsOrDoesNotFitIsRefused() {
    assertThatThrownBy(
            () -> line("major pentatonic", List.of(0, 7), Line.Direction.UP, TWO_OCTAVES, 8))
        .hasMessageContaining("pattern[0]: expected at most an octave, 5 degrees");
    assertThatThrownBy(() -> line("major", List.of(0, 6), Line.Direction.UP, new Range(60, 65), 8))
        .hasMessageContaining("fits the range of 5 semitones");
  }

  @Test
  void aScaleIsFoundByItsOtherNamesAndAMissNamesTheNearest() {
    assertThat(Scale.find("scale", "Aeolian").name()).isEqualTo("natural minor");
    assertThatThrownBy(() -> Scale.find("scale", "dorien"))
        .hasMessageContaining("found \"dorien\"; did you mean \"dorian\"");
  }
}
