package thinclick.server.material.pitch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PitchTest {
  /** f = 440 * 2^((n - 69) / 12) numbers A4 as 69 and middle C as 60; the MIDI standard. */
  @ParameterizedTest
  @CsvSource({"A,4,69", "C,4,60", "E,5,76", "Cb,4,59", "B#,3,60", "F#,2,42", "Bb,3,58"})
  void midiNotesCountFromMiddleC(String name, int octave, int midi) {
    assertThat(new Pitch(PitchName.parse("note", name), octave).midi()).isEqualTo(midi);
  }

  @Test
  void aNoteIsFoundInTheNearestOctave() {
    for (String name : "C Cb B# F# Gb A Eb".split(" ")) {
      PitchName note = PitchName.parse("note", name);
      for (int midi = 20; midi < 110; midi++) {
        int near = note.nearest(midi).midi();
        assertThat(Math.abs(near - midi)).as("%s near %d", name, midi).isLessThanOrEqualTo(6);
        assertThat(near % 12).isEqualTo(note.pitchClass());
      }
    }
  }

  @Test
  void whatIsWrittenAndWhatSoundsAreEachOthersInverse() {
    for (Instrument instrument : Instrument.all()) {
      for (int fifths : IntStream.rangeClosed(-7, 7).toArray()) {
        Key key = Key.ofFifths(fifths, false);
        Transposition transposition = instrument.transpositionFor(key);
        Pitch sounding = key.tonic().nearest(60);
        Pitch written = transposition.written(sounding);
        assertThat(transposition.sounding(written)).isEqualTo(sounding);
        assertThat(written.midi() - sounding.midi())
            .isEqualTo(-instrument.transposition().semitones());
        assertThat(Math.abs(new Key(written.name(), false).fifths()))
            .as("%s in %s", instrument.name(), key)
            .isLessThanOrEqualTo(7);
      }
    }
  }

  /** Common practice, no source: a B flat horn reads a whole tone higher, E flat a sixth. */
  @ParameterizedTest
  @CsvSource({
    "trumpet, Bb, C",
    "trumpet, B, Db",
    "tenor saxophone, Eb, F",
    "alto saxophone, Eb, C",
    "alto saxophone, A, F#",
    "alto saxophone, E, Db",
    "horn, C, G",
    "guitar, E, E",
    "flute, Gb, Gb"
  })
  void keysAreReadWithFewAccidentals(String instrument, String concert, String read) {
    Instrument on = Instrument.find("instrument", instrument);
    Key key = Key.parse("key", concert);

    assertThat(on.transpositionFor(key).written(key.tonic())).hasToString(read);
  }

  @ParameterizedTest
  @CsvSource({
    "Eb, E flat major",
    "'E flat', E flat major",
    "'G minor', G minor",
    "Cm, C minor",
    "f#, F sharp major",
    "'bb major', B flat major",
    "Bbm, B flat minor"
  })
  void keysAreReadInTheUsualWays(String typed, String words) {
    assertThat(Key.parse("key", typed).words()).isEqualTo(words);
  }

  @Test
  void aWrongKeyIsToldWhatIsExpected() {
    assertThatThrownBy(() -> Key.parse("key", "H"))
        .hasMessage("key: expected a key such as C, Eb, F# or \"G minor\", found \"H\"");
    assertThatThrownBy(() -> Key.parse("key", "D# major"))
        .hasMessageContaining("at most seven accidentals, found D# major, 9");
  }

  @Test
  void aWrongInstrumentIsToldTheNearest() {
    assertThat(Instrument.find("instrument", "Tenor-Sax").name()).isEqualTo("tenor saxophone");
    assertThatThrownBy(() -> Instrument.find("instrument", "trumpit"))
        .hasMessageContaining("found \"trumpit\"")
        .hasMessageContaining("\"trumpet\"");
  }

  @Test
  void beginnersHaveAtLeastAnOctaveInsideTheFullRange() {
    for (Instrument instrument : Instrument.all()) {
      Range all = instrument.range();
      Range few = instrument.beginners();
      if (all != null && few != null) {
        assertThat(few.width()).as(instrument.name()).isGreaterThanOrEqualTo(12);
        assertThat(all.low()).as(instrument.name()).isLessThanOrEqualTo(few.low());
        assertThat(all.high()).as(instrument.name()).isGreaterThanOrEqualTo(few.high());
      }
    }
  }

  /** General MIDI level 1 percussion keys, RP-003. */
  @ParameterizedTest
  @CsvSource({
    "ride, 51", "hi-hat, 42", "snare drum, 38", "side stick, 37", "bass drum, 36", "claves, 75",
    "cowbell, 56", "tambourine, 54", "conga, 63", "wood block, 76", "clapping, 39", "shaker, 70"
  })
  void percussionHasItsGeneralMidiKey(String name, int key) {
    DrumVoice voice = Instrument.find("instrument", name).voice();
    assertThat(voice).isNotNull();
    assertThat(voice.key()).isEqualTo(key);
  }
}
