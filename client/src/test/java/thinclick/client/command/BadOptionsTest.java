package thinclick.client.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

/** Wrong options of the client's commands: one line that names option and value, exit code 2. */
class BadOptionsTest {
  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... words) {
    CommandLine line = ClientMain.commandLine();
    line.setOut(new PrintWriter(out));
    line.setErr(new PrintWriter(err));
    return line.execute(words);
  }

  private void isOneLine(String... parts) {
    assertThat(err.toString()).contains(parts).doesNotContain("\tat ", "Exception");
    assertThat(err.toString().lines()).hasSize(1);
    assertThat(out.toString()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // The option's value          | what the line must say
        "--players 0                   | --players | 1 to 24 | found 0",
        "--players 25                  | --players | 1 to 24 | found 25",
        "--tempo 20                    | --tempo | expected | 20",
        "--tempo 1000                  | --tempo | expected | 1000",
        "--bars 0                      | --bars | expected | found 0",
        "--bars 1                      | --bars | at least | found 1",
        "--seed -1                     | --seed | expected | found -1",
        "--drill Nothing-of-the-kind   | Nothing | expected | found",
        "--link nowhere                | expected | address | nowhere",
        "--link thinclick://h:1/lanima | --link | a host | a room",
        "--link ws://127.0.0.1:1 --take t.json | --take | expected none | take export",
        "--host-key twelve-letters     | --host-key | together with --link | alone",
        "--link ws://127.0.0.1:1       | no server answers | 127.0.0.1 | 1",
      })
  void valueOfRehearseIsRefusedInOneLine(String given, String what, String expected, String found) {
    assertThat(run(("rehearse " + given).split(" "))).isEqualTo(2);
    isOneLine(what, expected, found);
  }

  @ParameterizedTest
  @CsvSource({
    "--players four, '--players: expected a whole number, found \"four\"'",
    "--tempo fast, '--tempo: expected a number, found \"fast\"'",
    "--seed 1.5, '--seed: expected a whole number, found \"1.5\"'",
    "--drill Nothing, '--drill: expected a title of the stock, found \"Nothing\"'",
    "--nonsense 1, --nonsense",
    "--temp 90, '--temp: no such option; did you mean \"--tempo\"'",
  })
  void wordOfRehearseIsRefused(String given, String named) {
    assertThat(run(("rehearse " + given).split(" "))).isEqualTo(2);
    isOneLine(named);
  }

  @Test
  void takeFileThatIsThereIsNotWrittenOver() throws IOException {
    Path there = Files.writeString(folder.resolve("take.json"), "mine");
    assertThat(run("rehearse", "--take", there.toString())).isEqualTo(2);
    isOneLine("take.json");
    assertThat(there).hasContent("mine");
  }

  @Test
  void takeFileInAFolderThatIsNotThereIsRefusedBeforeAnythingIsPlayed() {
    Path nowhere = folder.resolve("no").resolve("take.json");
    assertThat(run("rehearse", "--take", nowhere.toString())).isEqualTo(2);
    isOneLine("take.json");
    assertThat(nowhere.getParent()).doesNotExist();
  }

  @ParameterizedTest
  @CsvSource({
    "--server http://127.0.0.1:1 --room lanima, expected an address",
    "--server 127.0.0.1 --room lanima, expected an address",
    "--server ws://127.0.0.1:99999 --room lanima, expected an address",
    "--server ws://127.0.0.1:1 --room lanima --count 0, --count",
    "--server ws://127.0.0.1:1 --room lanima --drops 2, expected 0 to 1",
    "--server ws://127.0.0.1:1 --room lanima --displaced 3, --displaced",
    "--server ws://127.0.0.1:1 --room lanima, no server answers at ws://127.0.0.1:1",
  })
  void standInIsRefusedInOneLine(String given, String said) {
    assertThat(run(("stand-in " + given).split(" "))).isEqualTo(2);
    isOneLine(said);
  }
}
