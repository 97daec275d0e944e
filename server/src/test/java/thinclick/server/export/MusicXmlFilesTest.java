package thinclick.server.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.engraving.Golden;
import thinclick.server.engraving.Samples;
import thinclick.server.export.ReadMusicXml.Onset;
import thinclick.server.material.Cells;
import thinclick.server.material.PartWriter;
import thinclick.server.material.Stock;
import thinclick.server.material.WrittenPart;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class MusicXmlFilesTest {
  /** Two valid files made for this project; onsets and pitches by another reader, music21. */
  @Test
  void readerOfTheseTestsReadsTheFixturesAsAnIndependentOneDid() throws Exception {
    byte[] line = fixture("syncopated_bb_dorian.musicxml");
    ReadMusicXml.validate(line);
    List<Onset> onsets = ReadMusicXml.onsets(line).get(0);
    assertThat(onsets.stream().map(onset -> Math.round(onset.at() * 600) / 1000.0))
        .containsExactly(0.0, 0.45, 0.9, 1.5, 1.8, 2.7, 3.15, 3.6, 4.05); // seconds at 100
    assertThat(onsets.stream().map(Onset::written))
        .containsExactly(70, 72, 73, 75, 77, 79, 80, 77, 73);
    assertThat(onsets.stream().map(onset -> (int) Math.round(onset.length() * 4)))
        .containsExactly(3, 3, 4, 2, 4, 3, 3, 3, 5);
    byte[] tuplets = fixture("tuplets.musicxml");
    ReadMusicXml.validate(tuplets);
    assertThat(ReadMusicXml.onsets(tuplets).get(0).stream().map(Onset::at).toList())
        .usingElementComparator((a, b) -> Math.abs(a - b) < 1e-9 ? 0 : Double.compare(a, b))
        .startsWith(0.0, 2 / 3.0, 4 / 3.0, 2.0, 2.2, 2.4, 2.6, 2.8, 3.0, 22 / 7.0);
  }

  @Test
  void lineOverAProgressionIsValidAndComesBackNoteForNote() throws Exception {
    WrittenPart part = Samples.longThrees("tenor saxophone", "Bb");
    byte[] file = written(part);
    ReadMusicXml.validate(file);
    assertThat(ReadMusicXml.onsets(file).get(0)).isEqualTo(expected(part));
    assertThat(text(file))
        .containsSubsequence(
            "<diatonic>-1</diatonic>",
            "<chromatic>-2</chromatic>",
            "<octave-change>-1</octave-change>")
        .contains("<kind text=\"m7\">minor-seventh</kind>")
        .containsSubsequence("<first>2</first>", "<second>1</second>");
  }

  @Test
  void rhythmOnOneLineNamesItsPercussionKey() throws Exception {
    byte[] file = written(Samples.andsAlone());
    ReadMusicXml.validate(file);
    assertThat(text(file))
        .contains("<midi-unpitched>40</midi-unpitched>") // 39, Hand Clap, counted from 1
        .contains("<staff-lines>1</staff-lines>")
        .contains("<sign>percussion</sign>");
    assertThat(ReadMusicXml.onsets(file).get(0).stream().map(Onset::at))
        .containsExactlyElementsOf(Stream.iterate(.5, at -> at + 1).limit(32 * 4).toList());
  }

  @ParameterizedTest
  @CsvSource({
    "flute, C, , , ", "trumpet, C, -1, -2, ", "alto saxophone, Eb, -5, -9, ",
    "baritone saxophone, F, -5, -9, -1", "tenor saxophone, F, -1, -2, -1", "horn, C, -4, -7, ",
    "guitar, G, 0, 0, -1", "bass, G, 0, 0, -1"
  })
  void writtenPitchAndTranspositionSoundTogether(
      String instrument, String key, Integer diatonic, Integer chromatic, Integer octave)
      throws Exception {
    WrittenPart part = Samples.longThrees(instrument, key);
    byte[] file = written(part);
    ReadMusicXml.validate(file);
    int semitones = (chromatic == null ? 0 : chromatic) + 12 * (octave == null ? 0 : octave);
    assertThat(ReadMusicXml.onsets(file).get(0).stream().map(on -> on.written() + semitones))
        .isEqualTo(
            Stream.generate(() -> part.notes())
                .limit(8)
                .flatMap(List::stream)
                .map(note -> note.concert().midi())
                .toList());
    if (chromatic == null) {
      assertThat(text(file)).doesNotContain("<transpose>");
    } else {
      assertThat(text(file)).contains("<diatonic>" + diatonic + "</diatonic>");
    }
  }

  /** Slash notation as W3C MusicXML 4.0 has it: element slash of measure-style, start and stop. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void slashesStandWhereThePlayerIsFree(boolean compound) throws Exception {
    WrittenPart part = Samples.tradingFours(compound);
    byte[] file = written(part);
    ReadMusicXml.validate(file);
    assertThat(ReadMusicXml.onsets(file).get(0)).isEqualTo(expected(part));
    String[] bars = text(file).split("<measure number=");
    for (int bar = 1; bar <= 16; bar++) {
      boolean begins = bar == 5 || bar == 13;
      assertThat(bars[bar].contains("<slash type=\"start\" use-stems=\"no\">"))
          .as("bar " + bar)
          .isEqualTo(begins);
      assertThat(bars[bar].contains("<slash type=\"stop\" use-stems=\"no\"/>"))
          .as("bar " + bar)
          .isEqualTo(bar == 9);
      assertThat(bars[bar].contains("<words>freely</words>")).as("bar " + bar).isEqualTo(begins);
      assertThat(bars[bar].contains("<slash-dot/>")).isEqualTo(begins && compound);
    }
  }

  @Test
  void chairsOfAnEnsembleStandInOneScore() throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    MusicXmlFiles.write(HOCKET, out);
    ReadMusicXml.validate(out.toByteArray());
    List<List<Onset>> onsets = ReadMusicXml.onsets(out.toByteArray());
    assertThat(onsets.subList(0, 3).stream().flatMap(List::stream).map(Onset::at).sorted())
        .containsExactlyElementsOf(Stream.iterate(0.0, at -> at + .25).limit(8 * 16).toList());
  }

  @Test
  void clickIsTheLastPartAndThinsAsThePlanSays() throws Exception {
    byte[] file = written(Samples.andsAlone()); // 8 bars each: all beats, two and four, one, none
    List<Onset> click = ReadMusicXml.onsets(file).get(1);
    List<Double> at = new ArrayList<>();
    for (int bar = 0; bar < 32; bar++) {
      List<Integer> beats =
          bar < 8
              ? List.of(0, 1, 2, 3)
              : bar < 16 ? List.of(1, 3) : bar < 24 ? List.of(0) : List.of();
      for (int beat : beats) {
        at.add(4.0 * bar + beat);
      }
    }
    assertThat(click.stream().map(Onset::at)).isEqualTo(at);
    assertThat(text(file))
        .containsSubsequence(
            "<part-name>click</part-name>",
            "<midi-unpitched>77</midi-unpitched>", // 76, Hi Wood Block, counted from 1
            "<midi-unpitched>78</midi-unpitched>",
            "<words>8 bars, click on all beats</words>",
            "<words>8 bars, click on two and four</words>",
            "<words>8 bars, click on the one of every bar</words>",
            "<words>8 bars, no click</words>");
  }

  @Test
  void shortAndHeldNotesCarryTheirSigns() throws Exception {
    Drill drill = Stock.find("Tresillo");
    Drill.Chair chair = drill.chairs().get(0);
    Drill.Cell cell = Cells.tenuto(Cells.staccato(chair.cell(), List.of(0)), List.of(3));
    WrittenPart part = PartWriter.write(drill, Drill.Chair.of("1", cell), 100, "");
    byte[] file = written(part);
    ReadMusicXml.validate(file);
    assertThat(text(file).split("<staccato/>", -1))
        .hasSize(part.stages().stream().mapToInt(Stage::bars).sum() + 1);
    assertThat(text(file).split("<tenuto/>", -1))
        .hasSize(part.stages().stream().mapToInt(Stage::bars).sum() + 1);
  }

  /**
   * What music21 10.5.0 read in these very files: converter.parse(file), stripTies, flatten; the
   * offset and quarterLength of each note, and pitch.midi after toSoundingPitch.
   */
  @ParameterizedTest
  @ValueSource(strings = {"long-threes", "hocket"})
  void independentReaderFindsTheSameNotes(String name) throws Exception {
    List<WrittenPart> parts =
        name.equals("hocket") ? HOCKET : List.of(Samples.longThrees("tenor saxophone", "Bb"));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    MusicXmlFiles.write(parts, out);
    Golden.check(name + ".musicxml", text(out.toByteArray()));
    JsonNode read =
        new JsonMapper()
            .readTree(
                MusicXmlFilesTest.class.getResourceAsStream("/golden/" + name + ".music21.json"));
    for (int i = 0; i < parts.size(); i++) {
      WrittenPart part = parts.get(i);
      List<Onset> expected = expected(part);
      assertThat(read.get(i).get("onsets")).hasSameSizeAs(expected);
      for (int j = 0; j < expected.size(); j++) {
        assertThat(read.get(i).get("onsets").get(j).asDouble()).isEqualTo(expected.get(j).at());
        assertThat(read.get(i).get("lengths").get(j).asDouble())
            .isEqualTo(expected.get(j).length());
        WrittenPart.Note note = part.notes().get(j % part.notes().size());
        if (note.concert() != null) {
          assertThat(read.get(i).get("sounding").get(j).asInt()).isEqualTo(note.concert().midi());
        }
      }
    }
  }

  private static final List<WrittenPart> HOCKET =
      List.of(
          Samples.kit("ride", Meter.FOUR_FOUR, 4, "0 3 6 9 12 15"),
          Samples.kit("snare drum", Meter.FOUR_FOUR, 4, "1 4 7 10 13"),
          Samples.kit("bass drum", Meter.FOUR_FOUR, 4, "2 5 8 11 14"));

  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23, 24})
  void anyPartIsValidAndComesBackWithTheSameOnsetsLengthsAndPitches(long seed) throws Exception {
    Random random = new Random(seed);
    for (int round = 0; round < 6; round++) {
      WrittenPart part = Samples.random(random);
      String what = "seed " + seed + " round " + round;
      byte[] file = written(part);
      try {
        ReadMusicXml.validate(file);
      } catch (org.xml.sax.SAXException bad) {
        throw new AssertionError(what + "\n" + text(file), bad);
      }
      assertThat(ReadMusicXml.onsets(file).get(0)).as(what).isEqualTo(expected(part));
    }
  }

  /** What the part says through its take, in quarters; a note over the last bar ends with it. */
  private static List<Onset> expected(WrittenPart part) {
    double perQuarter = part.stepsPerBeat() / (part.meter().compound() ? 1.5 : 1);
    int perBar = part.meter().stepsPerBar(part.stepsPerBeat());
    int end = part.stages().stream().mapToInt(Stage::bars).sum() * perBar;
    List<Onset> onsets = new ArrayList<>();
    for (int from = 0; from < end; from += part.bars() * perBar) {
      for (WrittenPart.Note note : part.notes()) {
        int step = from + note.step();
        int written =
            Math.min(note.lengthSteps(), part.bars() * perBar + first(part) - note.step());
        int length = Math.min(end, step + written) - step;
        int midi = note.written() == null ? -1 : note.written().midi();
        if (step < end) {
          onsets.add(new Onset(step / perQuarter, length / perQuarter, midi));
        }
      }
    }
    return onsets;
  }

  private static int first(WrittenPart part) {
    return part.notes().get(0).step();
  }

  private static byte[] written(WrittenPart part) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    MusicXmlFiles.write(List.of(part), out);
    return out.toByteArray();
  }

  private static String text(byte[] file) {
    return new String(file, StandardCharsets.UTF_8);
  }

  private static byte[] fixture(String name) throws Exception {
    return MusicXmlFilesTest.class.getResourceAsStream("/fixtures/" + name).readAllBytes();
  }
}
