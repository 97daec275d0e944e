package thinclick.server.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 24 of the runs that src/bench/faults.sh makes by the hundred. */
class FaultRunsTest {
  @TempDir Path folder;

  @ParameterizedTest(name = "{0}, {1} runs")
  @CsvSource({
    "CUT, 3",
    "HALF_OPEN, 3",
    "DUPLICATES, 3",
    "REORDERED, 3",
    "HOSTILE_TEXT, 2",
    "SLOW_READER, 2",
    "CLOCK_JUMP, 3",
    "TWO_AT_ONCE, 3",
    "KILL, 1",
    "FULL_DISK, 1"
  })
  void everythingPlayedIsStoredOnceAndWhatIsAcknowledgedIsStored(Fault fault, int runs)
      throws IOException {
    assumeTrue(
        fault != Fault.FULL_DISK || Files.isExecutable(Path.of("/usr/bin/prlimit")),
        "no prlimit here: no disk can be made full");
    for (int seed = 1; seed <= runs; seed++) {
      Path place = Files.createDirectory(folder.resolve(fault + "-" + seed));
      List<String> broken = FaultRun.of(fault, seed, place, null);
      assertThat(broken).as("%s, seed %d", fault, seed).isEmpty();
    }
  }
}
