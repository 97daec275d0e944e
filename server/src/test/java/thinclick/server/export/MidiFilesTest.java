package thinclick.server.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;
import thinclick.server.engraving.Samples;
import thinclick.server.material.WrittenPart;

class MidiFilesTest {
  /** Worked examples of Standard MIDI Files 1.0 (RP-001, rev. 1996), from a transcription. */
  @Nested
  class TheSpecificationsOwnExample {
    private static final String FORMAT_0 =
        """
        4D 54 68 64 00 00 00 06 00 00 00 01 00 60
        4D 54 72 6B 00 00 00 3B
        00 FF 58 04 04 02 18 08  00 FF 51 03 07 A1 20  00 C0 05  00 C1 2E  00 C2 46
        00 92 30 60  00 3C 60  60 91 43 40  60 90 4C 20  81 40 82 30 40  00 3C 40
        00 81 43 40  00 80 4C 40  00 FF 2F 00
        """;
    private static final String FORMAT_1 =
        """
        4D 54 68 64 00 00 00 06 00 01 00 04 00 60
        4D 54 72 6B 00 00 00 14  00 FF 58 04 04 02 18 08  00 FF 51 03 07 A1 20  83 00 FF 2F 00
        4D 54 72 6B 00 00 00 10  00 C0 05  81 40 90 4C 20  81 40 4C 00  00 FF 2F 00
        4D 54 72 6B 00 00 00 0F  00 C1 2E  60 91 43 40  82 20 43 00  00 FF 2F 00
        4D 54 72 6B 00 00 00 15  00 C2 46  00 92 30 60  00 3C 60  83 00 30 00  00 3C 00  00 FF 2F 00
        """;

    @ParameterizedTest
    @ValueSource(strings = {FORMAT_0, FORMAT_1})
    void isReadAsTheSpecificationSays(String hex) throws Exception {
      byte[] file = bytes(hex);
      assertThat(file).hasSize(hex.equals(FORMAT_0) ? 81 : 118);
      ReadMidi read = ReadMidi.of(file);
      assertThat(read.division()).isEqualTo(96);
      assertThat(read.onsets().stream().map(MidiFilesTest::brief))
          .containsExactlyInAnyOrder("0 2 48 96", "0 2 60 96", "96 1 67 64", "192 0 76 32");
      assertThat(read.onsets()).allMatch(onset -> onset.offTick() == 384);
      assertThat(read.lengthMillis()).isEqualTo(2000.0);
    }
  }

  /** Variable-length quantities of RP-001, written as the time of one event. */
  @ParameterizedTest
  @CsvSource({
    "0, 00",
    "40, 40",
    "7F, 7F",
    "80, 8100",
    "2000, C000",
    "3FFF, FF7F",
    "4000, 818000",
    "100000, C08000",
    "1FFFFF, FFFF7F",
    "200000, 81808000",
    "8000000, C0808000"
  })
  void timesAreWrittenAsTheSpecificationSays(String ticks, String hex) throws Exception {
    Sequence sequence = new Sequence(Sequence.PPQ, 96);
    Track track = sequence.createTrack();
    ShortMessage on = new ShortMessage(ShortMessage.NOTE_ON, 0, 60, 64);
    track.add(new MidiEvent(on, Long.parseLong(ticks, 16)));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    MidiSystem.write(sequence, 0, out);
    String written = HexFormat.of().withUpperCase().formatHex(out.toByteArray());
    assertThat(written.substring(2 * 22)).startsWith(hex + "903C40");
  }

  /** A file of this project: 120 to 60 at beat 4, onsets worked by hand. */
  @Test
  void tempoChangeIsReadAtItsTick() throws Exception {
    byte[] file = getClass().getResourceAsStream("/fixtures/tempo_change.mid").readAllBytes();
    assertThat(ReadMidi.of(file).onsets().stream().map(ReadMidi.Onset::millis))
        .containsExactly(0.0, 1500.0, 4000.0);
  }

  @ParameterizedTest
  @CsvSource({
    "4/4, 2, 120, 1.0",
    "4/4, 4, 90, 1.0",
    "7/4, 3, 200, 1.0",
    "12/8, 3, 66, 1.0",
    "6/8, 6, 100, 1.0",
    "4/4, 2, 132, 2.0",
    "4/4, 2, 132, 3.0",
    "3/4, 4, 80, 2.0"
  })
  void everyStepBeginsExactlyOnItsTick(String meter, int stepsPerBeat, double tempo, double swing)
      throws Exception {
    StepGrid grid = new StepGrid(Meter.parse(meter), stepsPerBeat, tempo, Swing.of(swing), 0);
    List<MidiNote> notes =
        IntStream.range(0, 4 * grid.stepsPerBar())
            .mapToObj(i -> new MidiNote(i, 1, false, 60, 80))
            .toList();
    ReadMidi read = written(grid, 4, 0, List.of(), new MidiPart("Ana", 0, false, notes));
    double beatTicks = grid.meter().compound() ? 1440 : 960;
    for (int i = 0; i < notes.size(); i++) {
      ReadMidi.Onset onset = read.onsets().get(i);
      assertThat((double) onset.tick())
          .isCloseTo(grid.swungStep(i) * beatTicks / grid.stepsPerBeat(), within(1e-9));
      // the format keeps a tempo in whole microseconds a quarter, so a beat is at most 1 us off
      double beats = grid.swungStep(i) / stepsPerBeat;
      assertThat(onset.millis()).isCloseTo(grid.microsAt(i) / 1000, within(beats * .001 + 1e-9));
    }
  }

  @Test
  void anySwingIsKeptToHalfATick() throws Exception {
    for (double ratio : new double[] {1.3, 1.62, 2.4, 3.7}) {
      StepGrid grid = new StepGrid(Meter.FOUR_FOUR, 2, 120, Swing.of(ratio), 0);
      ReadMidi read =
          written(
              grid,
              1,
              0,
              List.of(),
              MidiPart.percussion("a", List.of(new MidiNote(1, 1, false, 38, 80))));
      assertThat(read.onsets().get(0).millis())
          .isCloseTo(grid.microsAt(1) / 1000, within(.5 * 500 / 960));
    }
  }

  @Test
  void thinnedClickHasATrackOfItsOwnAfterTheCountIn() throws Exception {
    StepGrid grid = new StepGrid(Meter.FOUR_FOUR, 2, 120, Swing.STRAIGHT, 0);
    ClickPlan plan =
        new ClickPlan(
            List.of(
                Stage.ofBeats(1, 1, 1, 2, 3, 4),
                Stage.ofBeats(1, 1, 1, 3),
                Stage.ofSteps(1, 1, 7)));
    MidiPart part = MidiPart.percussion("Ben", List.of(new MidiNote(3, 1, false, 38, 80)));
    ReadMidi read = written(grid, 3, 1, plan.stages(), part);
    assertThat(read.tracks()).containsExactly("A drill", "click", "Ben");
    assertThat(read.ticks(1))
        .containsExactly(
            0L,
            960L,
            1920L,
            2880L, // count-in
            3840L,
            4800L,
            5760L,
            6720L, // all beats
            7680L,
            9600L, // one and three
            11520L + 7 * 480); // the last and
    assertThat(read.ticks(2)).containsExactly(3840L + 3 * 480);
    assertThat(read.onsets().stream().filter(on -> on.track() == 1).map(ReadMidi.Onset::key))
        .startsWith(76, 77, 77, 77, 76);
    assertThat(read.onsets()).allMatch(onset -> onset.channel() == 9);
    assertThat(read.lengthMillis()).isEqualTo(8000.0);
  }

  @Test
  void meterAndTempoStandAtTheBeginning() throws Exception {
    StepGrid grid = new StepGrid(new Meter(6, 8), 3, 100, Swing.STRAIGHT, 0);
    Track conductor =
        MidiFiles.sequence(new MidiScore("A drill", grid, 1, 0, List.of(), List.of()))
            .getTracks()[0];
    List<String> metas = new ArrayList<>();
    for (int i = 0; i < conductor.size(); i++) {
      MetaMessage meta = (MetaMessage) conductor.get(i).getMessage();
      metas.add(
          Integer.toHexString(meta.getType()) + ":" + HexFormat.of().formatHex(meta.getData()));
    }
    // 6/8, a metronome click every 36 clocks; a dotted quarter at 100 is a quarter of 400,000 us
    assertThat(metas).contains("58:06032408", "51:061a80");
  }

  /** A marker is meta event FF 06 and belongs on the first track (Standard MIDI Files 1.0). */
  @Test
  void freeBarsAreMarkedOnTheFirstTrack() throws Exception {
    WrittenPart part = Samples.tradingFours(false);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    MidiFiles.write(MidiScore.of(List.of(part), 1), out);
    Track first =
        MidiSystem.getSequence(new ByteArrayInputStream(out.toByteArray())).getTracks()[0];
    List<String> markers = new ArrayList<>();
    for (int i = 0; i < first.size(); i++) {
      if (first.get(i).getMessage() instanceof MetaMessage meta && meta.getType() == 0x06) {
        long bar = first.get(i).getTick() / (4 * 960); // the count-in is bar 0
        markers.add(bar + " " + new String(meta.getData(), StandardCharsets.UTF_8));
      }
    }
    assertThat(markers)
        .containsExactly("5 Ilse, snare drum: freely, 5-8", "13 Ilse, snare drum: freely, 13-16");
  }

  @Test
  void twentyFourChairsHaveChannelsAndNoneTakesThePercussionChannel() throws Exception {
    StepGrid grid = new StepGrid(Meter.FOUR_FOUR, 2, 120, Swing.STRAIGHT, 0);
    List<MidiPart> parts =
        IntStream.range(0, 24)
            .mapToObj(
                i ->
                    new MidiPart(
                        "c" + i, i % 20, false, List.of(new MidiNote(i % 8, 1, false, 60 + i, 80))))
            .toList();
    ReadMidi read = written(grid, 1, 0, List.of(), parts.toArray(MidiPart[]::new));
    assertThat(read.onsets()).hasSize(24).noneMatch(onset -> onset.channel() == 9);
    List<Integer> channels = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      int track = i + 2;
      channels.add(
          read.onsets().stream().filter(on -> on.track() == track).findFirst().get().channel());
    }
    assertThat(channels.subList(0, 15)).doesNotHaveDuplicates();
    assertThat(channels.get(20)).as("program 0 again").isEqualTo(channels.get(0));
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13})
  void randomPartsComeBackWithTheSameStepsLengthsAndKeys(long seed) throws Exception {
    Random random = new Random(seed);
    for (int round = 0; round < 50; round++) {
      StepGrid grid =
          new StepGrid(
              Meter.FOUR_FOUR,
              List.of(2, 3, 4, 6).get(random.nextInt(4)),
              30 + random.nextInt(290),
              Swing.STRAIGHT,
              0);
      List<MidiNote> notes = new ArrayList<>();
      for (int at = random.nextInt(5); at < 4 * grid.stepsPerBar() - 4; ) {
        int length = 1 + random.nextInt(4);
        notes.add(
            new MidiNote(
                at,
                length,
                random.nextInt(4) == 0,
                40 + random.nextInt(40),
                random.nextBoolean() ? 80 : 108));
        at += length + random.nextInt(3);
      }
      ReadMidi read = written(grid, 4, 0, List.of(), new MidiPart("Ana", 66, false, notes));
      long stepTicks = 960 / grid.stepsPerBeat();
      assertThat(read.onsets().stream().map(MidiFilesTest::brief))
          .as("seed %d round %d", seed, round)
          .isEqualTo(
              notes.stream()
                  .map(note -> note.step() * stepTicks + " 0 " + note.key() + " " + note.velocity())
                  .toList());
      for (int i = 0; i < notes.size(); i++) {
        ReadMidi.Onset on = read.onsets().get(i);
        long length = notes.get(i).length() * stepTicks;
        assertThat(on.offTick() - on.tick())
            .as("seed %d round %d note %d", seed, round, i)
            .isEqualTo(notes.get(i).staccato() ? length / 2 : length);
      }
    }
  }

  @Test
  void partIsPlayedThroughAllStagesAtConcertPitch() throws Exception {
    WrittenPart part = Samples.longThrees("tenor saxophone", "Bb");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    MidiFiles.write(MidiScore.of(List.of(part, Samples.andsAlone()), 2), out);
    ReadMidi read = ReadMidi.of(out.toByteArray());
    List<String> expected = new ArrayList<>();
    for (int period = 0; period < 8; period++) {
      for (WrittenPart.Note note : part.notes()) {
        int step = note.step() + 32 * period;
        int tick = 2 * 3840 + step / 2 * 960 + step % 2 * 640; // swung 2:1 after two bars
        expected.add(tick + " " + note.concert().midi() + (note.accent() ? " 108" : " 80"));
      }
    }
    assertThat(
            read.onsets().stream()
                .filter(on -> on.track() == 2)
                .map(on -> on.tick() + " " + on.key() + " " + on.velocity()))
        .isEqualTo(expected);
    assertThat(read.onsets().stream().filter(on -> on.track() == 3))
        .allMatch(on -> on.channel() == 9 && on.key() == 39)
        .hasSize(32 * 4);
    assertThat(read.ticks(1)).as("count-in, 8 x 4, 8 x 2, 8 x 1, none").hasSize(8 + 32 + 16 + 8);
  }

  @ParameterizedTest
  @ValueSource(longs = {31, 32, 33})
  void anyPartComesBackWithTheOnsetsOfItsTake(long seed) throws Exception {
    Random random = new Random(seed);
    for (int round = 0; round < 60; round++) {
      WrittenPart part = Samples.random(random);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      MidiFiles.write(MidiScore.of(List.of(part), 0), out);
      ReadMidi read = ReadMidi.of(out.toByteArray());
      long stepTicks = (part.meter().compound() ? 1440 : 960) / part.stepsPerBeat();
      int period = part.bars() * part.meter().stepsPerBar(part.stepsPerBeat());
      int bars = part.stages().stream().mapToInt(Stage::bars).sum();
      int end = bars * part.meter().stepsPerBar(part.stepsPerBeat());
      List<Long> expected = new ArrayList<>();
      for (int from = 0; from < end; from += period) {
        for (WrittenPart.Note note : part.notes()) {
          if (from + note.step() < end) {
            expected.add((from + note.step()) * stepTicks);
          }
        }
      }
      assertThat(read.ticks(2)).as("seed %d round %d", seed, round).isEqualTo(expected);
    }
  }

  private static ReadMidi written(
      StepGrid grid, int bars, int countIn, List<Stage> stages, MidiPart... parts)
      throws Exception {
    var clicks =
        stages.isEmpty()
            ? List.<thinclick.protocol.music.Click>of()
            : new ClickPlan(stages).clicks(grid);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    MidiFiles.write(new MidiScore("A drill", grid, bars, countIn, clicks, List.of(parts)), out);
    return ReadMidi.of(out.toByteArray());
  }

  private static String brief(ReadMidi.Onset onset) {
    return onset.tick() + " " + onset.channel() + " " + onset.key() + " " + onset.velocity();
  }

  private static byte[] bytes(String hex) throws IOException {
    return HexFormat.of().parseHex(hex.replaceAll("\\s+", ""));
  }
}
