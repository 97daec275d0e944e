package thinclick.client.log;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Five files of a megabyte, whatever is written. */
class OwnLogTest {
  private static final Logger LOG = LoggerFactory.getLogger(OwnLogTest.class);
  private static final ch.qos.logback.classic.Logger ROOT =
      (ch.qos.logback.classic.Logger) LoggerFactory.getLogger(Logger.ROOT_LOGGER_NAME);

  @TempDir Path folder;

  private final Level before = ROOT.getLevel();

  /** As a window is started, so that the terminal stays still. */
  @BeforeEach
  void quiet() {
    ROOT.setLevel(Level.WARN);
  }

  @AfterEach
  void asBefore() {
    ROOT.setLevel(before);
  }

  @Test
  void fiveFilesOfAMegabyteAreKeptTheNewestWithoutANumber() throws IOException {
    OwnLog log = OwnLog.into(folder);
    String line = "x".repeat(180);
    for (int i = 0; i < 40_000; i++) {
      LOG.info("line {} {}", i, line);
    }
    LOG.debug("not asked for");
    LOG.info("the last line");
    log.close();
    LOG.info("after it was closed");
    List<Path> files;
    try (Stream<Path> all = Files.list(folder)) {
      files = all.filter(file -> file.toString().endsWith(".log")).sorted().toList();
    }
    assertThat(files)
        .extracting(file -> file.getFileName().toString())
        .containsExactly(
            "thinclick.1.log",
            "thinclick.2.log",
            "thinclick.3.log",
            "thinclick.4.log",
            OwnLog.NAME);
    for (Path file : files) {
      assertThat(Files.size(file)).as("%s", file).isLessThan(OwnLog.MOST_BYTES + 1_000);
    }
    assertThat(Files.readString(folder.resolve(OwnLog.NAME)))
        .contains("says=\"the last line\"")
        .doesNotContain("not asked for", "after it was closed");
  }

  @Test
  void ofTwoWindowsTheFirstWritesAndTheNextOneOnceItHasGone() throws IOException {
    OwnLog first = OwnLog.into(folder);
    OwnLog second = OwnLog.into(folder);
    LOG.info("once");
    second.close();
    first.close();
    assertThat(Files.readAllLines(folder.resolve(OwnLog.NAME))).hasSize(1);
    OwnLog third = OwnLog.into(folder);
    LOG.info("again");
    third.close();
    assertThat(Files.readAllLines(folder.resolve(OwnLog.NAME))).hasSize(2);
  }

  @Test
  void aFolderThatCannotBeWrittenCostsTheLogAlone() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "no folder");
    OwnLog log = OwnLog.into(file.resolve("log"));
    LOG.info("into nowhere");
    log.close();
    assertThat(file).hasContent("no folder");
    assertThat(ROOT.getLevel()).isEqualTo(Level.WARN);
  }
}
