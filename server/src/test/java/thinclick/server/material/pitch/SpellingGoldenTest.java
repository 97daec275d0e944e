package thinclick.server.material.pitch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Against a general-purpose music-theory library, npm tonal 6.4.3; the golden file says how. */
class SpellingGoldenTest {
  private static List<String[]> golden(String kind) throws IOException {
    try (InputStream in =
        Objects.requireNonNull(
            SpellingGoldenTest.class.getResourceAsStream("/material/spelling.golden.csv"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> line.startsWith(kind + ";"))
          .map(line -> line.split(";", -1))
          .toList();
    }
  }

  private static String spelled(List<PitchName> notes) {
    return notes.stream().map(PitchName::toString).collect(Collectors.joining(" "));
  }

  @Test
  void everyScaleIsSpelledAsThere() throws IOException {
    List<String[]> rows = golden("scale");
    assertThat(rows).hasSize(19 * 18);
    for (String[] row : rows) {
      PitchName root = PitchName.parse("root", row[1]);
      assertThat(spelled(Scale.find("scale", row[2]).notes(root)))
          .as("%s %s", row[1], row[2])
          .isEqualTo(row[3]);
    }
  }

  @Test
  void everyChordIsSpelledAsThere() throws IOException {
    List<String[]> rows = golden("chord");
    assertThat(rows).hasSize(25 * 18);
    for (String[] row : rows) {
      assertThat(spelled(Chord.parse("chord", row[1] + row[2]).notes()))
          .as(row[1] + row[2])
          .isEqualTo(row[3]);
    }
  }

  @Test
  void everyKeySignatureHasAsManyAccidentalsAsThere() throws IOException {
    List<String[]> rows = golden("key");
    assertThat(rows).hasSize(30);
    for (String[] row : rows) {
      Key key = new Key(PitchName.parse("root", row[1]), "minor".equals(row[2]));
      int sharps = row[3].startsWith("b") ? -row[3].length() : row[3].length();
      assertThat(key.fifths()).as("%s %s", row[1], row[2]).isEqualTo(sharps);
      assertThat(Key.ofFifths(sharps, key.minor())).isEqualTo(key);
    }
  }

  @Test
  void theSignatureAltersTheLettersOfTheScale() throws IOException {
    for (String[] row : golden("key")) {
      Key key = new Key(PitchName.parse("root", row[1]), "minor".equals(row[2]));
      for (PitchName note :
          Scale.find("scale", key.minor() ? "natural minor" : "major").notes(key.tonic())) {
        assertThat(key.alterOf(note.letter())).as(key.words()).isEqualTo(note.alter());
      }
    }
  }
}
