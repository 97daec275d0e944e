package thinclick.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.server.dealing.Dealer;
import thinclick.server.dealing.Dealing;
import thinclick.server.gathering.Smf;
import thinclick.server.material.Stock;

class GatherCommandTest {
  @TempDir Path folder;
  private Path handWorked;
  private Take take;
  private Path output;

  @BeforeEach
  void writeTheHandWorkedTakeAsMidiFiles() throws IOException {
    handWorked = folder.resolve("two_players.take.json");
    try (InputStream in =
        GatherCommandTest.class.getResourceAsStream(
            "/thinclick/server/scoring/two_players.take.json")) {
      Files.copy(in, handWorked);
    }
    take = FileCodec.readTake(Files.readAllBytes(handWorked));
    output = folder.resolve("gathered.take.json");
    Files.write(folder.resolve("ana.mid"), Smf.of(notes("Ana", 1)));
    // Ben's drum pad is on channel 10, and somebody else is on channel 1 of the same file.
    Files.write(
        folder.resolve("ben.mid"),
        Smf.of(
            Stream.concat(notes("Ben", 10).stream(), Stream.of(new Smf.Note(700, 800, 1, 40, 127)))
                .toList()));
  }

  private List<Smf.Note> notes(String player, int channel) {
    return take.attacks().stream()
        .filter(attack -> attack.player().equals(player))
        .map(
            attack ->
                new Smf.Note(
                    attack.micros() / 1_000,
                    attack.micros() / 1_000 + 110,
                    channel,
                    60,
                    attack.velocity()))
        .toList();
  }

  private String part(String name, String file) {
    return name + "=" + folder.resolve(file);
  }

  private Run gather(Object... more) {
    return Run.of(
        Stream.concat(Stream.of("gather", "--drill", handWorked, "-o", output), Stream.of(more))
            .toArray());
  }

  /** Bar 1 of the hand-worked take is two seconds after the recordings began. */
  @Test
  void theHandWorkedTakeAsTwoMidiFilesIsTheSameTake() throws IOException {
    Run run =
        gather(
            "--tempo",
            "120",
            "--part",
            part("Ana", "ana.mid"),
            "--part",
            part("Ben", "ben.mid:10"),
            "--offset-millis",
            "2000");

    assertThat(run)
        .isEqualTo(
            new Run(
                0,
                """
                %s: "Two players, worked by hand", 8 bars of 4/4 at 120, 48 attacks
                  Ana: 32 written, 31 played, the first 0.262 s after bar 1
                  Ben: 16 written, 17 played, the first 0.012 s before bar 1
                """
                    .formatted(output),
                ""));
    Take gathered = FileCodec.readTake(Files.readAllBytes(output));
    assertThat(gathered.withAttacks(List.of())).isEqualTo(take.withAttacks(List.of()));
    assertThat(gathered.attacks())
        .containsExactlyElementsOf(
            take.attacks().stream()
                .map(
                    a ->
                        new Attack(
                            a.player(), a.micros(), a.velocity(), 60, 110.0, null, false, false))
                .toList());
  }

  @Test
  void theGatheredTakeHasTheFiguresOfTheHandWorkedOne() {
    gather(
        "--tempo",
        "120",
        "--part",
        part("Ana", "ana.mid"),
        "--part",
        part("Ben", "ben.mid:10"),
        "--offset-millis",
        "2000");

    Run byHand = Run.of("review", "--json", handWorked);
    Run gathered = Run.of("review", "--json", output);
    assertThat(gathered.code()).isZero();
    assertThat(gathered.out()).contains("\"hold\" : 89.58").isEqualTo(byHand.out());
    assertThat(Run.of("review", output).out()).isEqualTo(Run.of("review", handWorked).out());
  }

  @Test
  void tempoAndOffsetLeftOutAreTheTakesOwnAndTheStart() throws IOException {
    assertThat(gather("--part", part("Uma", "ana.mid")).code()).isZero();

    Take gathered = FileCodec.readTake(Files.readAllBytes(output));
    assertThat(gathered.tempo()).isEqualTo(120);
    assertThat(gathered.startMicros()).isZero();
    assertThat(gathered.parts()).extracting(Part::player).containsExactly("Uma");
    assertThat(gathered.parts().get(0).attackSteps()).isEqualTo(take.parts().get(0).attackSteps());
  }

  @Test
  void aTempoGivenIsTheTakesTempo() throws IOException {
    gather("--tempo", "96.5", "--part", part("Ana", "ana.mid"));

    assertThat(FileCodec.readTake(Files.readAllBytes(output)).tempo()).isEqualTo(96.5);
  }

  @Nested
  class ADrill {
    @Test
    void byItsTitleIsDealtToThePlayersInOrder() throws IOException {
      Run run = gatherDrill("odds-and-evens");

      assertThat(run.err()).isEmpty();
      assertThat(run.out()).startsWith(output + ": \"Odds and evens\", ");
      Take gathered = FileCodec.readTake(Files.readAllBytes(output));
      Drill drill = Stock.find("Odds and evens");
      Dealing dealing =
          Dealer.deal(drill, List.of("Ana", "Ben"), drill.deal().seed(), 132, drill.stages());
      assertThat(gathered.parts()).isEqualTo(dealing.parts());
      assertThat(gathered.stages()).isEqualTo(drill.stages());
      assertThat(gathered.tempo()).isEqualTo(132);
      assertThat(gathered.toleranceMillis()).isEqualTo(dealing.toleranceMillis());
      assertThat(gathered.attacks()).hasSize(31 + 17);
    }

    @Test
    void ofAFileIsDealtAsOneOfTheStock() throws IOException {
      gatherDrill("Odds and evens");
      byte[] byTitle = Files.readAllBytes(output);
      Files.delete(output);
      Path file = folder.resolve("mine.json");
      Files.write(file, FileCodec.write(Stock.find("Odds and evens")));

      assertThat(gatherDrill(file.toString()).code()).isZero();
      assertThat(output).hasBinaryContent(byTitle);
    }

    @Test
    void isDealtByTheSeedThatIsGiven() throws IOException {
      gatherDrill("Charleston", "--seed", "1");
      Take one = FileCodec.readTake(Files.readAllBytes(output));
      gatherDrill("Charleston", "--seed", "1", "--replace");

      assertThat(FileCodec.readTake(Files.readAllBytes(output))).isEqualTo(one);
      Drill drill = Stock.find("Charleston");
      assertThat(one.parts())
          .isEqualTo(Dealer.deal(drill, List.of("Ana", "Ben"), 1, 132, drill.stages()).parts());
    }

    @Test
    void thatNobodyKnowsIsAnsweredWithTheNearestTitle() {
      Run run = gatherDrill("odds-and-ends");

      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err())
          .hasLineCount(1)
          .startsWith("drill: expected a title of the stock, found \"odds-and-ends\"")
          .contains("Odds and evens");
      assertThat(output).doesNotExist();
    }

    @Test
    void ofAFileThatIsNotThereIsAFileThatIsNotThere() {
      assertThat(gatherDrill("no/such.json").err())
          .isEqualTo("no/such.json: expected a file, found none\n");
    }

    private Run gatherDrill(String drill, Object... more) {
      return Run.of(
          Stream.concat(
                  Stream.of(
                      "gather",
                      "--drill",
                      drill,
                      "--tempo",
                      "132",
                      "-o",
                      output,
                      "--part",
                      part("Ana", "ana.mid"),
                      "--part",
                      part("Ben", "ben.mid:10")),
                  Stream.of(more))
              .toArray());
    }
  }

  @Nested
  class BadInput {
    @Test
    void aMissingRecordingIsNamed() {
      refused(
          folder.resolve("no.mid") + ": expected a file, found none",
          "--part",
          part("Ana", "no.mid"));
    }

    @Test
    void aFolderIsNoRecording() {
      refused(folder + ": expected a file, found a folder", "--part", "Ana=" + folder);
    }

    @Test
    void aWrongRecordingIsNamedWithItsByte() throws IOException {
      Files.writeString(folder.resolve("song.mid"), "not a song at all");
      refused(
          folder.resolve("song.mid")
              + ": byte 0: expected MThd, which begins a Standard MIDI File, found 6e 6f 74 20",
          "--part",
          part("Ana", "song.mid"));
    }

    @Test
    void aCutRecordingIsNamedWithItsTrack() throws IOException {
      byte[] whole = Files.readAllBytes(folder.resolve("ana.mid"));
      Files.write(folder.resolve("cut.mid"), Arrays.copyOf(whole, 100));
      refused(
          folder.resolve("cut.mid")
              + ": track 1, byte 14: expected a chunk of %d bytes, found 78"
                  .formatted(whole.length - 22),
          "--part",
          part("Ana", "cut.mid"));
    }

    @Test
    void aChannelWithoutNotesIsRefusedWithThoseThatHaveSome() {
      refused(
          folder.resolve("ben.mid") + ": expected notes on channel 9, found them on 1, 10",
          "--part",
          part("Ben", "ben.mid:9"));
    }

    @Test
    void aRecordingWithoutNotesIsRefused() throws IOException {
      Files.write(folder.resolve("silence.mid"), Smf.of(List.of()));
      refused(
          folder.resolve("silence.mid") + ": expected notes, found none",
          "--part",
          part("Ben", "silence.mid"));
    }

    @Test
    void aChannelIsOneToSixteen() {
      refused(
          "--part: expected a channel from 1 to 16, found 17", "--part", part("A", "ana.mid:17"));
      refused("--part: expected a channel from 1 to 16, found 0", "--part", part("A", "ana.mid:0"));
    }

    @Test
    void aPartIsANameAndAFile() {
      for (String wrong : List.of("ana.mid", "=ana.mid", "Ana=", " =ana.mid")) {
        refused(
            "--part: expected NAME=FILE or NAME=FILE:CHANNEL, found \"" + wrong + "\"",
            "--part",
            wrong);
      }
    }

    @Test
    void aPlayerComesOnce() {
      refused(
          "--part: expected a player not named before, found \"Ana\" again",
          "--part",
          part("Ana", "ana.mid"),
          "--part",
          part("Ana", "ben.mid"));
    }

    @Test
    void morePlayersThanPartsAreRefused() {
      refused(
          "--part: expected at most 2 of them, found 3",
          "--part",
          part("Ana", "ana.mid"),
          "--part",
          part("Ben", "ben.mid"),
          "--part",
          part("Cai", "ben.mid"));
    }

    @Test
    void aWrongTempoIsRefused() {
      refused(
          "tempo: expected 30 to 320, found 29", "--tempo", "29", "--part", part("Ana", "ana.mid"));
      Run run = gather("--tempo", "fast", "--part", part("Ana", "ana.mid"));
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err())
          .isEqualTo(
              "--tempo: expected a number, found \"fast\"; see thinclick-server gather --help\n");
    }

    @Test
    void aWrongTakeIsNamedWithItsField() throws IOException {
      Files.writeString(
          handWorked,
          Files.readString(handWorked).replace("\"tempo\": 120.0", "\"tempo\": \"120\""));
      refused(
          handWorked + ": tempo: expected a number, found \"120\"",
          "--part",
          part("Ana", "ana.mid"));
    }

    @Test
    void missingAndUnknownOptionsAreOneLine() {
      Run missing = Run.of("gather", "--drill", handWorked, "-o", output);
      assertThat(missing.code()).isEqualTo(2);
      assertThat(missing.err())
          .isEqualTo(
              "Missing required option: '--part=NAME=FILE[:CHANNEL]'; see thinclick-server gather --help\n");
      assertThat(Run.of("gather", "--tmepo", "120").err()).hasLineCount(1);
    }

    @Test
    void anOutputThatIsThereStaysUnlessItMayBeReplaced() throws IOException {
      Files.writeString(output, "mine");
      refused(
          output + ": expected no file of this name, found one; --replace writes over it",
          "--part",
          part("Ana", "ana.mid"));
      assertThat(output).hasContent("mine");

      assertThat(gather("--replace", "--part", part("Ana", "ana.mid")).code()).isZero();
      assertThat(FileCodec.readTake(Files.readAllBytes(output)).parts()).hasSize(1);
    }

    @Test
    void anOutputInNoFolderIsRefused() {
      output = folder.resolve("nowhere").resolve("take.json");
      refused(
          output + ": expected a folder to write into, found none",
          "--part",
          part("Ana", "ana.mid"));
    }

    /** One line, exit code 2, and nothing written, half or whole. */
    private void refused(String says, Object... more) {
      List<Path> before = files();
      Run run = gather(more);

      assertThat(run).isEqualTo(new Run(2, "", says + "\n"));
      assertThat(files()).isEqualTo(before);
    }

    private List<Path> files() {
      try (Stream<Path> all = Files.walk(folder)) {
        return all.sorted().toList();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
