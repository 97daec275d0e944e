package thinclick.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import thinclick.protocol.file.FileCodec;

class ServeCommandTest {
  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  private String database;

  @BeforeEach
  void name() {
    database = folder.resolve("room.db").toString();
  }

  private int run(String... arguments) {
    CommandLine line = ServerMain.commandLine();
    line.setOut(new PrintWriter(out, true));
    line.setErr(new PrintWriter(err, true));
    return line.execute(arguments);
  }

  @Test
  void addressThatIsNotThisComputersIsOneLineAndExitTwo() {
    assertThat(run("serve", "--port", "0", "--host", "192.0.2.1", "--db", database)).isEqualTo(2);
    assertThat(err.toString())
        .startsWith("--host: expected an address of this computer")
        .hasLineCount(1);
  }

  @Test
  void unknownNameIsOneLineAndExitTwo() {
    assertThat(run("serve", "--port", "0", "--host", "no such host", "--db", database))
        .isEqualTo(2);
    assertThat(err.toString()).startsWith("--host: expected").hasLineCount(1);
  }

  @Test
  void portBeyondTheRangeIsOneLineAndExitTwo() {
    assertThat(run("serve", "--port", "65536", "--db", database)).isEqualTo(2);
    assertThat(err)
        .hasToString("--port: expected 0 to 65535, found 65536" + System.lineSeparator());
  }

  @Test
  void folderThatIsNotThereIsOneLineExitTwoAndNothingIsMade() {
    String missing = folder.resolve("none").resolve("room.db").toString();

    assertThat(run("serve", "--port", "0", "--db", missing)).isEqualTo(2);
    assertThat(err.toString())
        .startsWith("--db: expected a file in a folder that exists")
        .hasLineCount(1);
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void takeGoesInAndComesOutTheSame() throws Exception {
    run("take", "--db", database, "list");
    assertThat(err.toString()).startsWith("--db: expected a host's database, found no file");
    Files.write(
        folder.resolve("in.json"),
        """
        {"format": "thinclick.take", "version": 1, "title": "Ands", "meter": "4/4", "tempo": 120.0,
         "stepsPerBeat": 2, "startMicros": 3000000, "toleranceMillis": 50,
         "stages": [{"bars": 2, "everyBars": 1, "beats": [1]}],
         "parts": [{"player": "Mina", "entryStep": 0, "attackSteps": [1, 3]}],
         "attacks": [{"player": "Mina", "micros": 3260000, "velocity": 96, "pitch": 60}]}
        """
            .getBytes(java.nio.charset.StandardCharsets.UTF_8));
    new StoreMaker(Path.of(database)).make();

    assertThat(run("take", "import", "--db", database, folder.resolve("in.json").toString()))
        .isZero();
    String id = out.toString().strip();
    assertThat(run("take", "export", "--db", database, id, folder.resolve("out.json").toString()))
        .isZero();
    assertThat(FileCodec.readTake(Files.readAllBytes(folder.resolve("out.json"))))
        .isEqualTo(FileCodec.readTake(Files.readAllBytes(folder.resolve("in.json"))));
    assertThat(run("take", "list", "--db", database)).isZero();
    assertThat(out.toString()).contains(id).contains("Ands  Mina  1 attack  finished");
  }

  @Test
  void unknownTakeIsOneLineAndExitTwo() {
    new StoreMaker(Path.of(database)).make();

    assertThat(run("take", "export", "--db", database, "t9", folder.resolve("out.json").toString()))
        .isEqualTo(2);
    assertThat(err.toString()).startsWith("ID: expected a take in").hasLineCount(1);
    assertThat(folder.resolve("out.json")).doesNotExist();
  }

  /** An empty database, as a host that has served once leaves it. */
  private record StoreMaker(Path file) {
    void make() {
      thinclick.server.store.Store.open(file, java.time.InstantSource.system(), a -> {}).close();
    }
  }
}
