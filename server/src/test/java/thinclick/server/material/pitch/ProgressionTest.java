package thinclick.server.material.pitch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProgressionTest {
  @Test
  void barsAreReadBetweenLinesWithAPercentForTheBarBefore() {
    Progression read = Progression.parse("progression", "| Dm7 | G7 C7 | % | Fmaj7/C |");

    assertThat(read).hasToString("Dm7 | G7 C7 | G7 C7 | Fmaj7/C");
  }

  @Test
  void otherWaysOfWritingAChordMeanTheSame() {
    assertThat(Progression.parse("progression", "C-7 F\u00f8 Bb\u0394 E\u266dM7 Go7"))
        .hasToString("Cm7 Fm7b5 Bbmaj7 Ebmaj7 Gdim7");
  }

  @Test
  void aComplaintNamesTheBarAndTheSymbol() {
    assertThatThrownBy(() -> Progression.parse("progression", "Dm7 | H7 | C"))
        .hasMessage("progression, bar 2: expected a chord such as Dm7, G7 or Bbmaj7, found \"H7\"");
    assertThatThrownBy(() -> Progression.parse("progression", "Dm7 | G7 | Cmaj77"))
        .hasMessageStartingWith("progression, bar 3: ")
        .hasMessageContaining("found \"maj77\" in \"Cmaj77\"; did you mean \"maj7\"");
    assertThatThrownBy(() -> Progression.parse("progression", "Dm7 | | C"))
        .hasMessage("progression, bar 2: expected a chord such as Dm7, found an empty bar");
    assertThatThrownBy(() -> Progression.parse("progression", "% | C"))
        .hasMessage("progression, bar 1: expected a chord, found \"%\" with no bar before it");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      value = {
        "Dm7 | G7 | Cmaj7 | % = C major",
        "Am7b5 | D7b9 | Gm | % = G minor",
        "F7 | Bb7 | F7 = F major",
        "Em7 A7 | Dm7 G7 = E minor"
      })
  void aProgressionComesHomeToItsLastRestfulChord(String chords, String home) {
    assertThat(Progression.parse("progression", chords).home().words()).isEqualTo(home);
  }

  @Test
  void namedProgressionsAreHadInEveryKey() {
    assertThat(Progressions.in("progression", "ii-v-i", Key.parse("key", "Bb")))
        .hasToString("Cm7 | F7 | Bbmaj7 | Bbmaj7");
    assertThat(Progressions.in("progression", "ii-V-I", Key.parse("key", "G minor")))
        .hasToString("Am7b5 | D7b9 | Gm | Gm");
    assertThat(Progressions.in("progression", "Dm7 | G7 | C", Key.parse("key", "Eb")))
        .hasToString("Fm7 | Bb7 | Eb");
    for (String name : Progressions.names()) {
      for (int fifths = -6; fifths <= 6; fifths++) {
        Key key = Key.ofFifths(fifths, Progressions.minor(name));
        Progression progression = Progressions.in("progression", name, key);
        assertThat(Progression.parse("progression", progression.toString())).isEqualTo(progression);
      }
    }
  }

  /** Common practice, no source. */
  @Test
  void theFormsHaveTheirBars() {
    assertThat(Progressions.in("progression", "12-bar blues", null).bars()).hasSize(12);
    assertThat(Progressions.in("progression", "12-bar minor blues", null).bars()).hasSize(12);
    Progression form = Progressions.in("progression", "32-bar AABA", null);
    assertThat(form.bars()).hasSize(32);
    assertThat(form.bars().subList(0, 8)).allMatch(bar -> bar.size() == 2);
    assertThat(form.bars().subList(16, 24))
        .hasToString("[[E7], [E7], [A7], [A7], [D7], [D7], [G7], [G7]]");
  }

  @Test
  void anUnknownNameIsToldTheNearest() {
    assertThatThrownBy(() -> Progressions.in("progression", "turnaruond", null))
        .hasMessageContaining("found \"turnaruond\"; did you mean \"turnaround\"");
  }

  @Test
  void aNamedProgressionIsAtHomeInItsOwnKeyWhateverChordItEndsOn() {
    assertThat(Progressions.home("p", "32-bar AABA", null)).isEqualTo(Key.parse("k", "C"));
    assertThat(Progressions.home("p", "32-bar AABA", Key.parse("k", "Db")))
        .isEqualTo(Key.parse("k", "Db"));
    assertThat(Progressions.home("p", "minor ii-V-i", Key.parse("k", "G")))
        .isEqualTo(Key.parse("k", "Gm"));
    assertThat(Progressions.home("p", "Dm7 | G7 | Cmaj7", Key.parse("k", "Bb")))
        .isEqualTo(Key.parse("k", "Bb"));
    assertThat(Progressions.home("p", "Dm7 | G7 | Cmaj7", null)).isEqualTo(Key.parse("k", "C"));
  }
}
