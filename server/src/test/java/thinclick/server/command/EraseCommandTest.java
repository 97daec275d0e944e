package thinclick.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;
import thinclick.server.store.Backups;
import thinclick.server.store.Store;

class EraseCommandTest {
  private static final Take TAKE =
      FileCodec.readTake(
          """
          {"format": "thinclick.take", "version": 1, "title": "Ands", "meter": "4/4",
           "tempo": 120.0, "stepsPerBeat": 2, "startMicros": 3000000, "toleranceMillis": 50,
           "stages": [{"bars": 2, "everyBars": 1, "beats": [1]}],
           "parts": [{"player": "Quirin", "entryStep": 0, "attackSteps": [1, 3]},
                     {"player": "Somebody", "entryStep": 0, "attackSteps": [1, 3]}],
           "attacks": [{"player": "Quirin", "micros": 3260000}]}
          """
              .getBytes(StandardCharsets.UTF_8));

  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  private Path database;
  private Path backups;

  @BeforeEach
  void aTakeAndABackupOfIt() throws IOException {
    database = folder.resolve("room.db");
    backups = Files.createDirectory(folder.resolve("backups"));
    try (Store store = Store.open(database, InstantSource.system(), a -> {})) {
      for (int i = 0; i < 50; i++) {
        store.importTake("t" + i, TAKE).join();
      }
      new Backups(database, backups, InstantSource.fixed(Instant.EPOCH)).make();
    }
  }

  private int run(String... arguments) {
    CommandLine line = ServerMain.commandLine();
    line.setOut(new PrintWriter(out, true));
    line.setErr(new PrintWriter(err, true));
    return line.execute(arguments);
  }

  private Take take(Path file) {
    try (Store store = Store.open(file, InstantSource.system(), a -> {})) {
      return store.take("t7").join().orElseThrow();
    }
  }

  @Test
  void nameIsInNoFileAnyMoreAndTheTakesStay() throws IOException {
    assertThat(holds("Quirin")).isTrue();

    int exit = run("erase", "QUIRIN", "--db", database.toString(), "--backups", backups.toString());

    assertThat(exit).isZero();
    assertThat(out.toString())
        .contains("room.db: name replaced in 50 takes (t0, t1")
        .contains("thinclick-1970-01-01T00-00-00Z.db: name replaced in 50 takes")
        .contains("Erasing here does not reach:", "  take files, slips and pages");
    assertThat(holds("Quirin")).isFalse();
    assertThat(take(database).parts())
        .extracting(Part::player)
        .containsExactly("Somebody 2", "Somebody");
    assertThat(take(database).attacks()).containsExactly(Attack.tap("Somebody 2", 3_260_000));
  }

  private boolean holds(String name) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        if (new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1).contains(name)) {
          return true;
        }
      }
      return false;
    }
  }

  @Test
  void nameThatIsNotThereIsSaid() {
    assertThat(run("erase", "Nobody", "--db", database.toString())).isZero();
    assertThat(out.toString()).contains("the name was not in it");
  }

  @Test
  void runningHostIsNotErasedUnder() {
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(database))) {
      assertThat(host.port()).isPositive();
      assertThat(run("erase", "Quirin", "--db", database.toString())).isEqualTo(2);
    }
    assertThat(err.toString()).startsWith("--db: expected a database that no other host has");
  }

  @Test
  void backupPutInTheDatabasesPlaceIsTheDatabaseAsItWas() throws IOException {
    Take before = take(database);
    for (String file : List.of("room.db", "room.db-wal", "room.db-shm")) {
      Files.deleteIfExists(folder.resolve(file));
    }
    Files.copy(backups.resolve("thinclick-1970-01-01T00-00-00Z.db"), database);

    assertThat(take(database)).isEqualTo(before);
    try (RehearsalHost host = RehearsalHost.start(HostOptions.local(database))) {
      assertThat(host.port()).isPositive();
    }
  }

  @Test
  void newestFourteenBackupsStay() throws IOException {
    for (int day = 1; day <= 20; day++) {
      new Backups(database, backups, InstantSource.fixed(Instant.ofEpochSecond(day * 86_400L)))
          .make();
    }

    try (Stream<Path> left = Files.list(backups)) {
      assertThat(left.map(file -> file.getFileName().toString()).sorted().toList())
          .hasSize(14)
          .startsWith("thinclick-1970-01-08T00-00-00Z.db")
          .endsWith("thinclick-1970-01-21T00-00-00Z.db");
    }
  }

  @Test
  void folderForBackupsThatIsNotThereIsOneLineAndExitTwo() {
    assertThat(
            run(
                "serve",
                "--port",
                "0",
                "--db",
                database.toString(),
                "--backup-to",
                folder.resolve("none").toString()))
        .isEqualTo(2);
    assertThat(err.toString()).startsWith("--backup-to: expected a folder").hasLineCount(1);
  }
}
